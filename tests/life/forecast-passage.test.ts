import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecastPassage, forecastPassages } from '../../analysis/life/index.ts';
import type { SeriesLike } from '../../analysis/life/index.ts';
import { drawNormal, seededRandom } from '../../analysis/life/statistics/random.ts';

const series = (values: readonly (readonly [number, number])[], uncertainty: number | null = 0.1, counts = false): SeriesLike => ({ counts, points: values.map(([t, value]) => ({ t, value, uncertainty })) });
const alone = (given: SeriesLike, limit: number, horizon = 50) => forecastPassage([given], 0, limit, { seed: 1, horizon, timeUnit: 'years' });

describe('what is refused, and why', () => {
  it('says nothing of a place never measured, or measured once', () => {
    expect(alone(series([]), 10)).toMatchObject({ model: 'none', low: null, median: null, high: null, notBefore: null, reason: 'not measured at this place' });
    expect(alone(series([[0, 3]]), 10)).toMatchObject({ model: 'none', low: null, median: null, high: null, reason: expect.stringContaining('at least two inspections') });
  });

  it('says nothing where no time passed between the readings', () => {
    expect(alone(series([[1, 3], [1, 4]]), 10)).toMatchObject({ model: 'none', low: null, reason: expect.stringContaining('no time passed') });
  });

  it('finds no growth in a level place: a bound at 90 %, finite, and no dates', () => {
    const found = alone(series([[0, 2.02], [1, 1.95], [2, 2.05], [3, 1.98], [4, 2.0], [5, 2.01]]), 10);
    expect(found).toMatchObject({ model: 'none', low: null, median: null, high: null });
    expect(found.notBefore).toBeGreaterThan(5);
    expect(found.notBefore).toBeLessThanOrEqual(55);
    expect(found.reason).toContain('bound only');
  });

  it('gives a bound only where the limit lies beyond what the readings can speak of', () => {
    const found = alone(series([[0, 1.0], [1, 1.1], [2, 1.2], [3, 1.3]], 0.01), 200, 20);
    expect(found.low).toBeNull();
    expect(found.notBefore).toBe(23);
    expect(found.reason).toContain('beyond the time over which readings of this length can speak');
  });

  it('says reached where the newest reading is at the limit, with the first time it was', () => {
    expect(alone(series([[0, 3], [1, 10], [2, 11]]), 10)).toMatchObject({ model: 'reached', low: 1, median: 1, high: 1 });
  });
});

describe('few readings', () => {
  it('with two readings says so, and is wider than with four of the same growth', () => {
    const two = alone(series([[0, 2], [3, 3.5]]), 10);
    const four = alone(series([[0, 2], [1, 2.5], [2, 3], [3, 3.5]]), 10);
    expect(two.reason).toContain('two readings: the interval is wide');
    expect(two.high! - two.low!).toBeGreaterThan(four.high! - four.low!);
    expect(two.high! - two.low!).toBeGreaterThan(0.5 * (two.median! - 3));
  });

  it('does not take places of one age that grow in a straight line for exponential growth', () => {
    const places = [0.4, 0.7, 1, 1.3, 1.6, 1.9].map((factor) => series([[0, 2 * factor], [2, 3 * factor]], 0.02));
    const [found] = forecastPassages(places, 10, { seed: 1, horizon: 50 });
    const accelerating = found.diagnostics!.shapes.filter(({ shape }) => shape <= 0.6).reduce((sum, each) => sum + each.probability, 0);
    expect(accelerating).toBeLessThan(0.65); // before any reading: 0.53
  });

  it('learns from the other places: an accelerating rope shortens the life of a place with two readings', () => {
    const grows = (level: number) => series([0, 1, 2, 3, 4].map((t) => [t, level * Math.exp(0.3 * t)] as const), 0.03);
    const short = series([[3, Math.exp(0.9)], [4, Math.exp(1.2)]], 0.03);
    const together = forecastPassages([short, grows(1.2), grows(0.8), grows(1.5), grows(0.6)], 10, { seed: 1, horizon: 50 })[0];
    const single = alone(short, 10);
    const truth = Math.log(10) / 0.3;
    expect(together.low).toBeLessThan(truth);
    expect(together.high).toBeGreaterThan(truth);
    expect(together.high! - together.low!).toBeLessThan(0.7 * ((single.high ?? 100) - single.low!));
    expect(together.model).toContain('exponential');
  });
});

describe('the law of growth', () => {
  const readings = (path: (t: number) => number, noise: number) => {
    const random = seededRandom(5);
    return series(Array.from({ length: 8 }, (_, t) => [t, path(t) + noise * drawNormal(random)] as const), noise);
  };

  it('names straight growth straight, exponential growth accelerating, and warns of the straight line', () => {
    const straight = alone(readings((t) => 1 + 0.4 * t, 0.02), 10);
    const rising = alone(readings((t) => Math.exp(0.25 * t), 0.03), 20);
    expect(straight.reason).toContain('straight in time');
    expect(rising.reason).toContain('a straight line would overstate the life left');
    expect(Math.abs(straight.median! - 22.5)).toBeLessThan(1.5);
    expect(Math.abs(rising.median! - Math.log(20) / 0.25)).toBeLessThan(0.8);
  });

  it('notices growth by fits and starts and widens', () => {
    const random = seededRandom(9);
    const walk = (step: number) => { let level = 0; return series(Array.from({ length: 9 }, (_, t) => { if (t > 0) level += Math.max(0, 0.5 + step * drawNormal(random)); return [t, level] as const; }), 0.01); };
    const even = forecastPassages(Array.from({ length: 6 }, () => walk(0.01)), 10, { seed: 1 })[0];
    const irregular = forecastPassages(Array.from({ length: 6 }, () => walk(0.25)), 10, { seed: 1 })[0];
    expect(irregular.reason).toContain('irregular or readings hang together');
    expect(even.reason).not.toContain('irregular');
    expect(irregular.high! - irregular.low!).toBeGreaterThan(1.3 * (even.high! - even.low!));
  });

  it('forecasts a quantity that falls to its limit as it does its mirror image', () => {
    const up = alone(series([[0, 2], [1, 3], [2, 4.2], [3, 5]]), 10);
    const down = alone(series([[0, 18], [1, 17], [2, 15.8], [3, 15]]), 10);
    expect(down.low).toBeGreaterThan(3);
    expect(Math.abs(down.median! - up.median!)).toBeLessThan(4);
  });

  it('counts of broken wires: 2, 3, 5 at three inspections reach 6 within a few years', () => {
    const found = alone(series([[0, 2], [1, 3], [2, 5]], null, true), 6);
    expect(found.model).toContain('Poisson counts');
    expect(found.low).toBeGreaterThanOrEqual(2);
    expect(found.median).toBeLessThan(5);
  });
});

describe('properties of every forecast', () => {
  const readings = fc.array(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 2, maxLength: 6 });

  it('has rising quantiles after the last reading, a rising probability, and the same answer twice', () => {
    fc.assert(fc.property(fc.array(readings, { minLength: 1, maxLength: 3 }), fc.double({ min: 0.02, max: 0.5, noNaN: true }), (places, uncertainty) => {
      const given = places.map((values) => series(values.map((value, t) => [t, value] as const), uncertainty));
      const found = forecastPassages(given, 10, { seed: 3, horizon: 50 });
      expect(forecastPassages(given, 10, { seed: 3, horizon: 50 }).map(({ low, median, high }) => [low, median, high])).toEqual(found.map(({ low, median, high }) => [low, median, high]));
      found.forEach((each, i) => {
        const last = places[i].length - 1;
        if (each.low !== null) {
          expect(each.low).toBeGreaterThanOrEqual(last);
          expect(each.median ?? Infinity).toBeGreaterThanOrEqual(each.low);
          expect(each.high ?? Infinity).toBeGreaterThanOrEqual(each.median ?? each.low);
        } else if (each.notBefore !== null) {
          expect(each.notBefore).toBeGreaterThanOrEqual(last);
          expect(each.notBefore).toBeLessThanOrEqual(last + 50);
        }
        const chances = [0, 1, 3, 10, 30].map((ahead) => each.probabilityBy?.(last + ahead) ?? 0);
        chances.forEach((chance, k) => {
          expect(chance).toBeGreaterThanOrEqual(k === 0 ? 0 : chances[k - 1]);
          expect(chance).toBeLessThanOrEqual(1);
        });
      });
    }), { numRuns: 15, seed: 20260101 });
  }, 60_000);

  it('does not depend on the unit of value or the zero of time', () => {
    const one = alone(series([[0, 1], [1, 1.6], [2, 2.1], [3, 2.9]], 0.1), 10);
    const other = forecastPassage([series([[2020, 10], [2021, 16], [2022, 21], [2023, 29]], 1)], 0, 100, { seed: 1, horizon: 50 });
    expect(other.low! - 2020).toBeCloseTo(one.low!, 6);
    expect(other.median! - 2020).toBeCloseTo(one.median!, 6);
    expect(other.high! - 2020).toBeCloseTo(one.high!, 6);
  });
});
