import fc from 'fast-check';
import { expect, it } from 'vitest';
import { levelAfter, pathAt, pathOver, timeToReach } from '../../analysis/life/passage/growth-law.ts';
import { SHAPES } from '../../analysis/life/passage/settings.ts';

const shape = fc.constantFrom(...SHAPES.map((each) => each.shape));
const positive = (max: number) => fc.double({ min: 0.02, max, noNaN: true });

it('gives over many times what it gives one by one', () => {
  fc.assert(fc.property(shape, positive(5), positive(3), (law, level, rate) => {
    const u = Float64Array.from([-1, -0.7, -0.31, -0.05, 0]);
    const levels = new Float64Array(5);
    const byLevel = new Float64Array(5);
    pathOver(level, rate, law, u, levels, byLevel);
    const point = { level: 0, rate: 0, byLevel: 0 };
    u.forEach((at, i) => {
      pathAt(level, rate, law, at, point);
      expect(Math.abs(levels[i] - point.level)).toBeLessThanOrEqual(1e-9 * (1 + point.level));
      expect(Math.abs(byLevel[i] - point.byLevel)).toBeLessThanOrEqual(1e-7 * (1 + point.byLevel));
    });
  }), { seed: 1 });
});

it('reaches a level at the time that brings the path there', () => {
  fc.assert(fc.property(shape, positive(5), positive(3), positive(4), (law, level, rate, more) => {
    const limit = level * (1 + more);
    const time = timeToReach(limit, level, rate, law);
    if (Number.isFinite(time)) expect(levelAfter(level, rate, law, time) / limit).toBeCloseTo(1, 6);
  }), { seed: 2 });
});

it('solves dy/dt = r y^(1 - shape): Paris and Erdogan with m = 4 (shape -1), level 1, rate 0.5, is at 2 after one', () => {
  expect(levelAfter(1, 0.5, -1, 1)).toBeCloseTo(2, 12);
  expect(timeToReach(2, 1, 0.5, 0)).toBeCloseTo(Math.log(2) / 0.5, 12);
  expect(timeToReach(3, 1, 0.5, 1)).toBeCloseTo(4, 12);
});
