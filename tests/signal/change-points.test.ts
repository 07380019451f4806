import { describe, expect, it } from 'vitest';
import { changePoints } from '../../analysis/signal/change-points.ts';
import { levelChanges } from '../../analysis/signal/level-changes.ts';
import { poissonCost } from '../support/poisson-cost.ts';
import { squaredErrorCost, weightedErrorCost } from '../../analysis/signal/segment-cost.ts';
import type { SegmentCost } from '../../analysis/signal/segment-cost.ts';
import { labRandom } from '../support/lab-random.ts';

/** Every start for every end is tried: slow and obvious. */
function slowTwin(count: number, cost: SegmentCost, penalty: number, least: number): number {
  const best = new Float64Array(count + 1).fill(Infinity);
  best[0] = -penalty;
  for (let end = least; end <= count; end += 1) for (let start = 0; start <= end - least; start += 1) best[end] = Math.min(best[end], best[start] + cost(start, end) + penalty);
  return best[count];
}

describe('change points', () => {
  it('reach the least objective that a search without pruning finds, whatever the series, penalty and least length', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const random = labRandom(seed);
      const count = 5 + Math.floor(random.uniform() * 90);
      let level = 0;
      const values = Float64Array.from({ length: count }, () => {
        if (random.uniform() < 0.08) level = random.between(-4, 4);
        return level + random.normal();
      });
      const weights = values.map(() => (random.uniform() < 0.15 ? 0 : random.uniform()));
      const counts = values.map((value) => Math.max(0, Math.round(3 + value)));
      const penalty = random.pick([0.5, 3, 12, 60]);
      const least = random.pick([1, 1, 2, 5]);
      for (const cost of [squaredErrorCost(values), weightedErrorCost(values, weights), poissonCost(counts)]) {
        const found = changePoints(count, cost, penalty, least);
        expect(found.objective).toBeCloseTo(slowTwin(count, cost, penalty, least), 8);
        const bounds = [0, ...found.starts, count];
        const stated = bounds.slice(1).reduce((sum, end, i) => sum + cost(bounds[i], end), penalty * found.starts.length);
        expect(found.objective).toBeCloseTo(stated, 8);
        for (let i = 1; i < bounds.length; i += 1) expect(bounds[i] - bounds[i - 1]).toBeGreaterThanOrEqual(least);
      }
    }
  });
  it('level changes by functional pruning reach the same objective with the same weights, gaps and all', () => {
    for (let seed = 101; seed <= 200; seed += 1) {
      const random = labRandom(seed);
      const count = 1 + Math.floor(random.uniform() * 300);
      let level = random.between(-50, 50);
      const values = Float64Array.from({ length: count }, () => {
        if (random.uniform() < 0.03) level += random.between(-6, 6);
        return level + random.normal();
      });
      const weights = values.map(() => (random.uniform() < 0.1 ? 0 : random.uniform() < 0.7 ? 1 : random.uniform()));
      const gap = Math.floor(random.uniform() * count);
      weights.fill(0, gap, gap + Math.floor(random.uniform() * 40));
      values.forEach((_, i) => { if (weights[i] === 0) values[i] = Number.NaN; });
      const cost = weightedErrorCost(values, weights);
      const penalty = random.pick([0.5, 3, 12, 60]);
      const found = levelChanges(values, weights, penalty);
      expect(found.objective).toBeCloseTo(slowTwin(count, cost, penalty, 1), 7);
      const bounds = [0, ...found.starts, count];
      expect(bounds.slice(1).reduce((sum, end, i) => sum + cost(bounds[i], end), penalty * found.starts.length)).toBeCloseTo(found.objective, 7);
    }
  });
  it('level changes of a constant series, of nothing measured and of one value are none', () => {
    expect(levelChanges(new Float64Array(50).fill(3), new Float64Array(50).fill(1), 1).starts).toEqual([]);
    expect(levelChanges([1, 9], [0, 0], 1).starts).toEqual([]);
    expect(levelChanges([5], [1], 1)).toEqual({ starts: [], objective: 0 });
  });
  it('finds no change in a constant series and none in a series too short for two segments', () => {
    expect(changePoints(50, squaredErrorCost(new Float64Array(50).fill(3)), 1).starts).toEqual([]);
    expect(changePoints(3, squaredErrorCost([0, 9, 9]), 0.1, 2).starts).toEqual([]);
  });
});

describe('segment costs', () => {
  it('are the sum of squares about the mean, by hand, also far from zero', () => {
    const values = Float64Array.from([1, 4, 2, 8, 5], (value) => value + 1e6);
    const byHand = (from: number, end: number) => {
      const part = [...values.slice(from, end)];
      const mean = part.reduce((sum, value) => sum + value, 0) / part.length;
      return part.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    };
    for (let from = 0; from < 5; from += 1) for (let end = from + 1; end <= 5; end += 1) expect(squaredErrorCost(values)(from, end)).toBeCloseTo(byHand(from, end), 6);
  });
  it('take nothing from values of weight 0, whatever stands there', () => {
    const cost = weightedErrorCost([1, 1e9, Number.NaN, 3], [1, 0, 0, 1]);
    expect(cost(0, 4)).toBeCloseTo(2, 9);
    expect(cost(1, 3)).toBe(0);
  });
});
