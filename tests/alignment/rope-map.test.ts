import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitSegments, shiftOn } from '../../analysis/alignment/fit-segments.ts';
import { ALIGNMENT } from '../../analysis/alignment/parameters.ts';
import type { RopeMap } from '../../analysis/alignment/rope-map.ts';
import { interpolate, toMeasured, toRope, uncertaintyAt, wrap } from '../../analysis/alignment/rope-map.ts';
import { honourTiePoints } from '../../analysis/alignment/tie-points.ts';
import { measuredPosition, ropePosition } from '../../analysis/rope/units.ts';

const rising = fc.array(fc.tuple(fc.double({ min: 0.1, max: 50, noNaN: true }), fc.double({ min: 0.1, max: 50, noNaN: true })), { minLength: 2, maxLength: 8 });

function mapOf(steps: readonly (readonly [number, number])[], reversed: boolean): RopeMap {
  let [measured, rope] = [0, 0];
  const knots = steps.map(([dm, dr]) => {
    measured += dm;
    rope += reversed ? -dr : dr;
    return { measured: measuredPosition(measured), rope: ropePosition(rope) };
  });
  return { knots, reversed, uncertainty: knots.map((knot, i) => ({ measured: knot.measured, value: 0.01 * (i + 1) })), confidence: 1, basis: '', loopLength: null, slips: [], remarks: [] };
}

describe('rope maps', () => {
  it('lead from the file to the rope and back', () => {
    fc.assert(fc.property(rising, fc.boolean(), fc.double({ min: 0, max: 1, noNaN: true }), (steps, reversed, share) => {
      const map = mapOf(steps, reversed);
      const last = map.knots[map.knots.length - 1].measured;
      const place = measuredPosition(map.knots[0].measured + share * (last - map.knots[0].measured));
      expect(toMeasured(map, toRope(map, place))).toBeCloseTo(place, 6);
    }));
  });

  it('go straight on beyond their ends, hold the bound there, and wrap on a loop', () => {
    const map = mapOf([[1, 1], [10, 20]], false);
    expect(toRope(map, measuredPosition(12))).toBeCloseTo(23, 12);
    expect(uncertaintyAt(map, measuredPosition(500))).toBe(0.02);
    expect(toRope({ ...map, loopLength: 7 }, measuredPosition(12))).toBeCloseTo(2, 12);
    expect(wrap(-1, 7)).toBe(6);
  });
});

describe('tie points set by hand', () => {
  it('are passed through exactly and spread straight between each other', () => {
    const map = mapOf([[1, 1], [99, 99]], false);
    const tied = honourTiePoints(map, [{ measured: 20, rope: 20.5 }, { measured: 60, rope: 60.1 }]);
    expect(toRope(tied, measuredPosition(20))).toBeCloseTo(20.5, 12);
    expect(toRope(tied, measuredPosition(60))).toBeCloseTo(60.1, 12);
    expect(toRope(tied, measuredPosition(40))).toBeCloseTo(40.3, 12);
    expect(toRope(tied, measuredPosition(90))).toBeCloseTo(90.1, 12);
    expect(tied.remarks.length).toBe(2);
  });

  it('that would turn the rope round are refused in words', () => {
    const map = mapOf([[1, 1], [99, 99]], false);
    const tied = honourTiePoints(map, [{ measured: 20, rope: 60 }, { measured: 21, rope: 40 }]);
    expect(tied.knots).toEqual(map.knots);
    expect(tied.remarks.join()).toContain('contradict');
  });
});

describe('straight lines through shifts', () => {
  it('find the partition that every other partition costs more than', () => {
    const point = fc.tuple(fc.double({ min: -0.2, max: 0.2, noNaN: true }), fc.double({ min: 0.005, max: 0.05, noNaN: true }));
    fc.assert(fc.property(fc.array(point, { minLength: 4, maxLength: 8 }), (drawn) => {
      const points = drawn.map(([shift, sigma], i) => ({ at: 3 * i, shift, sigma }));
      const found = fitSegments(points, 0, 0.006, ALIGNMENT);
      const cost = (cuts: readonly number[]): number => cuts.slice(1).reduce((sum, end, k) => sum + ALIGNMENT.breakCost + slowCost(points.slice(cuts[k], end), 0.006), -ALIGNMENT.breakCost);
      const best = cost([0, ...found.map((segment) => segment.end)]);
      for (const cuts of everyPartition(points.length)) expect(best).toBeLessThanOrEqual(cost(cuts) + 1e-6);
    }), { numRuns: 60 });
  });

  it('tell a slip from a change of scale', () => {
    const points = Array.from({ length: 60 }, (_, i) => ({ at: 3 * i, shift: 0.001 * i * 3 + (i >= 30 ? 0.3 : 0), sigma: 0.01 }));
    const segments = fitSegments(points, 0, 0.006, ALIGNMENT);
    expect(segments.length).toBe(2);
    expect(segments[0].to).toBeCloseTo(88.5, 9);
    expect(shiftOn(segments[1], 88.5) - shiftOn(segments[0], 88.5)).toBeCloseTo(0.3, 2);
  });
});

/** Half of the least chi-square over level and slope, by the normal equations written out. */
function slowCost(points: readonly { at: number; shift: number; sigma: number }[], spread: number): number {
  const weighted = (f: (p: (typeof points)[number]) => number): number => points.reduce((sum, p) => sum + f(p) / p.sigma ** 2, 0);
  const [w, x, y, xx, xy] = [weighted(() => 1), weighted((p) => p.at), weighted((p) => p.shift), weighted((p) => p.at ** 2), weighted((p) => p.at * p.shift)];
  const prior = 1 / spread ** 2;
  const slope = (w * xy - x * y) / (w * (xx + prior) - x * x);
  const level = (y - slope * x) / w;
  return (weighted((p) => (p.shift - level - slope * p.at) ** 2) + prior * slope ** 2) / 2;
}

/** Cuts 0 = c0 < c1 < ... = count with at least two points between neighbours. */
function everyPartition(count: number): number[][] {
  const out: number[][] = [];
  const grow = (cuts: number[]): void => {
    const last = cuts[cuts.length - 1];
    if (last === count) out.push(cuts);
    else for (let next = last + 2; next <= count; next += 1) if (next === count || count - next >= 2) grow([...cuts, next]);
  };
  grow([0]);
  return out;
}

it('interpolates straight between points', () => {
  expect(interpolate([0, 1, 3], [0, 2, 4], 2)).toBe(3);
});
