import { describe, expect, it } from 'vitest';
import { evenTails } from '../../analysis/condition/even-tails.ts';
import { noiseCorrelation } from '../../analysis/condition/noise-correlation.ts';
import { noiseLevels } from '../../analysis/condition/noise-levels.ts';
import { labRandom } from '../support/lab-random.ts';

const STEP = 0.005;
const BLOCK = 200;

/** SYNTHETIC: a first-order process of the given memory, its second half `louder`, with a pulse of 30 every 7 m or so. */
function noise(memory: number, louder: number, pulses: boolean): { values: Float64Array; mask: Uint8Array } {
  const random = labRandom(7);
  const values = new Float64Array(60_000);
  let state = 0;
  for (let i = 0; i < values.length; i += 1) {
    state = memory * state + Math.sqrt(1 - memory * memory) * random.normal();
    values[i] = state * (i < values.length / 2 ? 1 : louder);
  }
  if (pulses) for (let at = 700; at < values.length - 10; at += 1400 + Math.floor(random.uniform() * 99)) for (let k = -6; k <= 6; k += 1) values[at + k] += 30 / (1 + k * k / 4);
  return { values, mask: new Uint8Array(values.length).fill(1) };
}

describe('correlation of a rope\'s own noise', () => {
  it.each([0, 0.5, 0.8])('of a first-order process with memory %d falls as its powers, on quiet and loud lengths alike, pulses left out', (memory) => {
    const { values, mask } = noise(memory, 3, true);
    const found = noiseCorrelation(values, mask, STEP, noiseLevels(values, mask, BLOCK, 12)!, BLOCK, 8);
    for (let lag = 1; lag <= 8; lag += 1) expect(Math.abs(found[lag] / found[0] - memory ** lag)).toBeLessThan(0.03);
    // Pulses left in would more than double it.
    expect(Math.abs(found[0] - 1)).toBeLessThan(0.1);
  });
  it('nothing under the mask enters', () => {
    const { values, mask } = noise(0.5, 1, false);
    const levels = noiseLevels(values, mask, BLOCK, 12)!;
    for (let i = 0; i < values.length; i += 1) {
      if (Math.floor(i / 50) % 3 !== 0) continue;
      mask[i] = 0;
      values[i] = 1e9;
    }
    const found = noiseCorrelation(values, mask, STEP, levels, BLOCK, 4);
    for (let lag = 1; lag <= 4; lag += 1) expect(Math.abs(found[lag] / found[0] - 0.5 ** lag)).toBeLessThan(0.03);
  });
});

describe('scores of one meaning over all widths', () => {
  it('a width whose noise has heavier tails counts its scores for less, until both pass a level as seldom', () => {
    const random = labRandom(11);
    const count = 200_000;
    const filter = Uint8Array.from({ length: count }, () => (random.uniform() < 0.5 ? 0 : 1));
    // Maxima of noise: half the square is exponential (Rice 1945); those of the first width 1.3 times as high.
    const score = Float64Array.from(filter, (each) => Math.sqrt(5 - 2 * Math.log(1 - random.uniform())) * (each === 0 ? 1.3 : 1));
    const index = Float64Array.from({ length: count }, (_, i) => 100 * i);
    const parts = (width: number) => ({ width, shape: 'bell' as const, sigma: Float64Array.of(2), phase: 0 as const, half: Float64Array.of(1) });
    const even = evenTails({ count, index, score, filter, noise: [parts(0.01), parts(0.03)] }, 10, STEP, count * 100 * STEP, 0.1);
    const above = (which: number) => even.score.reduce((sum, each, k) => sum + (filter[k] === which && each > 4.2 ? 1 : 0), 0);
    expect(above(1)).toBeGreaterThan(100);
    expect(Math.abs(Math.log(above(0) / above(1)))).toBeLessThan(0.35);
    expect(even.noise[0].sigma[0] / even.noise[1].sigma[0]).toBeGreaterThan(1.2);
    // The heights themselves stay what they were.
    even.score.forEach((each, k) => expect(each * even.noise[filter[k]].sigma[0]).toBeCloseTo(score[k] * 2, 9));
  });
});
