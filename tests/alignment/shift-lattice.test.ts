import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beliefsOf } from '../../analysis/alignment/shift-lattice.ts';
import type { Motion, ShiftLattice } from '../../analysis/alignment/shift-lattice.ts';

function latticeOf(rows: readonly (readonly number[])[], first: readonly number[], step = 0.05): ShiftLattice {
  const from = new Int32Array(rows.length + 1);
  rows.forEach((row, b) => {
    from[b + 1] = from[b] + row.length;
  });
  return { at: Float64Array.from(rows, (_, b) => b), step, first: Int32Array.from(first), from, evidence: Float64Array.from(rows.flat()) };
}

/** Every path through the lattice, one by one: its probability by drift and slip, and the evidence it meets. */
function slowPosterior(rows: readonly (readonly number[])[], first: readonly number[], step: number, motion: Motion): number[][] {
  const posterior = rows.map((row) => row.map(() => 0));
  const aside = (motion.drift / step) ** 2 / 2;
  const reach = Math.round(motion.largestSlip / step);
  const change = (d: number): number => (1 - motion.slipChance) * (d === 0 ? 1 - 2 * aside : Math.abs(d) === 1 ? aside : 0) + (Math.abs(d) <= reach ? motion.slipChance / (2 * reach + 1) : 0);
  const walk = (b: number, path: number[], chance: number): void => {
    if (b === rows.length) {
      path.forEach((k, at) => {
        posterior[at][k] += chance;
      });
      return;
    }
    rows[b].forEach((evidence, k) => {
      const moved = b === 0 ? 1 : change(first[b] + k - first[b - 1] - path[b - 1]);
      walk(b + 1, [...path, k], chance * moved * Math.exp(evidence));
    });
  };
  walk(0, [], 1);
  return posterior.map((row) => {
    const sum = row.reduce((a, b) => a + b, 0);
    return row.map((value) => value / sum);
  });
}

function quantileOf(posterior: readonly number[], first: number, step: number, share: number): number {
  let sum = 0;
  for (let k = 0; k < posterior.length; k += 1) {
    if (sum + posterior[k] >= share) return (first + k - 0.5 + (share - sum) / posterior[k]) * step;
    sum += posterior[k];
  }
  return Number.NaN;
}

const MOTION: Motion = { drift: 0.02, slipChance: 0.02, largestSlip: 0.15 };

describe('sums over all paths', () => {
  it('agree with every path walked one by one, rows of any length and offset', () => {
    const row = fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 2, maxLength: 5 });
    fc.assert(fc.property(fc.array(fc.tuple(row, fc.integer({ min: -1, max: 1 })), { minLength: 2, maxLength: 5 }), (drawn) => {
      const rows = drawn.map(([values]) => values);
      const first = drawn.map(([, offset]) => offset);
      const slow = slowPosterior(rows, first, 0.05, MOTION);
      beliefsOf(latticeOf(rows, first), [MOTION]).forEach((belief, b) => {
        expect(belief.middle).toBeCloseTo(quantileOf(slow[b], first[b], 0.05, 0.5), 9);
        expect(belief.low).toBeCloseTo(quantileOf(slow[b], first[b], 0.05, 0.025), 9);
        expect(belief.high).toBeCloseTo(quantileOf(slow[b], first[b], 0.05, 0.975), 9);
      });
    }), { numRuns: 60 });
  });

  it('leave a place open where nothing was seen, and keep it open on both sides of a silence', () => {
    const silent = Array.from({ length: 40 }, () => new Array<number>(21).fill(0));
    const rows = [[...silent[0]], ...silent, [...silent[0]]];
    rows[0][10] = 30;
    rows[rows.length - 1][10] = 30;
    const beliefs = beliefsOf(latticeOf(rows, rows.map(() => -10)), [{ drift: 0.02, slipChance: 0.001, largestSlip: 0.5 }]);
    const width = (b: number): number => beliefs[b].high - beliefs[b].low;
    expect(width(0)).toBeLessThan(0.06);
    expect(width(20)).toBeGreaterThan(3 * width(0));
  });

  it('place a slip where the evidence changes, and pay for it once', () => {
    const rows = Array.from({ length: 60 }, (_, b) => Array.from({ length: 21 }, (__, k) => (k === (b < 30 ? 5 : 15) ? 2 : 0)));
    const beliefs = beliefsOf(latticeOf(rows, rows.map(() => -10)), [{ drift: 0.005, slipChance: 0.001, largestSlip: 0.7 }]);
    expect(beliefs[25].middle).toBeCloseTo(-0.25, 1);
    expect(beliefs[35].middle).toBeCloseTo(0.25, 1);
  });

  it('chooses the motion under which the evidence is likeliest', () => {
    const wandering = Array.from({ length: 80 }, (_, b) => Array.from({ length: 41 }, (__, k) => -0.5 * ((k - 20 - 12 * Math.sin(b / 8)) / 1.5) ** 2));
    const straight: Motion = { drift: 0.001, slipChance: 1e-9, largestSlip: 0.1 };
    const loose: Motion = { drift: 0.06, slipChance: 1e-9, largestSlip: 0.1 };
    const lattice = latticeOf(wandering, wandering.map(() => -20));
    expect(beliefsOf(lattice, [straight, loose])).toEqual(beliefsOf(lattice, [loose]));
    expect(beliefsOf(lattice, [straight])).not.toEqual(beliefsOf(lattice, [loose]));
  });
});
