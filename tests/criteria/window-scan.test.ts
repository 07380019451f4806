import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateCriteria } from '../../analysis/criteria/evaluate-criteria.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { shippedSet } from './judge.ts';
import { evidenceOf, surveyOf } from './rope-for-tests.ts';

/** Against a slow, obvious twin: every window on its own, every sample and every break looked at. */
const STEP = 0.05;
const SHARE = 1.5;

interface Rope { losses: number[]; valid: boolean[]; breaks: number[]; loop: boolean }

const ropes: fc.Arbitrary<Rope> = fc.record({
  losses: fc.array(fc.double({ min: -1, max: 12, noNaN: true }), { minLength: 40, maxLength: 120 }),
  loop: fc.boolean(),
  seed: fc.array(fc.nat(99), { minLength: 120, maxLength: 120 }),
  breaks: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 12 }),
}).map(({ losses, loop, seed, breaks }) => ({ losses, loop, valid: losses.map((_, i) => seed[i] > 15), breaks: breaks.map((share) => share * losses.length * STEP) }));

function slowWorst({ losses, valid, breaks, loop }: Rope, width: number): number | null {
  const n = losses.length;
  const span = Math.min(n, Math.max(1, Math.round(width / STEP)));
  const length = n * STEP;
  let worst: number | null = null;
  for (let first = 0; first < (loop ? n : n - span + 1); first += 1) {
    const inside = Array.from({ length: span }, (_, k) => (first + k) % n).filter((i) => valid[i]);
    if (inside.length < 0.5 * span) continue;
    const mean = inside.reduce((sum, i) => sum + losses[i], 0) / inside.length;
    const from = first * STEP;
    const to = from + span * STEP;
    const holds = (x: number) => x >= from - 1e-9 && x <= to + 1e-9;
    const within = breaks.filter((x) => holds(x) || (loop && holds(x + length)));
    const value = Math.max(0, mean) + SHARE * within.length;
    if (worst === null || value > worst) worst = value;
  }
  return worst;
}

describe('every window of a rope', () => {
  it('gives the worst that a slow search gives', async () => {
    await fc.assert(fc.asyncProperty(ropes, async (rope) => {
      const n = rope.losses.length;
      const blind = rope.valid.flatMap((ok, i): [number, number][] => (ok ? [] : [[i * STEP, (i + 1) * STEP]]));
      const survey = surveyOf({ step: STEP, length: n * STEP, loss: (x) => rope.losses[Math.floor(x / STEP)], blind, notes: rope.breaks.map((from) => ({ kind: 'broken-wires', from, value: 1 })), noLf: true });
      // Notes closer than 5 cm would be taken as one place with a repeated total, which adds up the same.
      const evidence = evidenceOf({ diameter_mm: 20, length_m: n * STEP, loop: rope.loop }, [survey]);
      const outcome = await evaluateCriteria({ ...evidence, geometry: { ...evidence.geometry, outerWireSharePercent: SHARE } }, [shippedSet('ropeway-area-italy-2016')], noCheckpoint);
      for (const [clause, width] of [['area-6d', 0.12], ['area-30d', 0.6], ['area-500d', 10]] as const) {
        const slow = slowWorst(rope, width);
        const found = outcome.results.find((each) => each.clause === clause);
        if (slow === null) expect(found).toBeUndefined();
        else expect(found!.value).toBeCloseTo(slow, 6);
      }
    }), { numRuns: 200 });
  });
});
