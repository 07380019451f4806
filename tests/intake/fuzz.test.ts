import { expect, it } from 'vitest';
import { fuzzOne } from '../bench/fuzz.ts';

/** The first of the ten thousand damaged files of `npm run fuzz`: none crashes, hangs or is read silently wrong. */
it.each(Array.from({ length: 6 }, (_, i) => 1 + 50 * i))('fifty damaged files from number %i on are refused with a reason or read right', async (first) => {
  const failed = [];
  for (let seed = first; seed < first + 50; seed += 1) {
    const outcome = await fuzzOne(seed);
    if (outcome.result === 'failed' || outcome.milliseconds > 5000) failed.push(outcome);
  }
  expect(failed).toEqual([]);
});
