import { describe, expect, it } from 'vitest';
import { rateByTrips } from '../../analysis/growth/judgement.ts';
import { judgeGrowth } from '../../analysis/growth/judge-growth.ts';
import { drawNormal, seededRandom } from '../../analysis/life/statistics/random.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import type { Survey } from '../../analysis/rope/survey.ts';
import { surveyOf } from '../support/survey-of.ts';

const STEP = 0.02;
const LENGTH = 400;

interface Scan { readonly date: string; readonly loss: (at: number) => number; readonly gain?: number; readonly zero?: number; readonly zones?: [number, number, number][]; readonly faults?: [number, number][]; readonly unseen?: [number, number] }

/** Scans of one rope: permanent texture, noise per scan, and what `loss` adds. */
function surveys(seed: number, scans: readonly Scan[]): Survey[] {
  const random = seededRandom(seed);
  const count = LENGTH / STEP;
  const texture = new Float64Array(count);
  for (let i = 1; i < count; i += 1) texture[i] = 0.96 * texture[i - 1] + 0.04 * drawNormal(random);
  return scans.map((scan) => {
    const loss = Float64Array.from(texture, (own, i) => (scan.gain ?? 1) * (own + scan.loss(i * STEP)) + (scan.zero ?? 0) + 0.1 * drawNormal(random));
    return surveyOf({ id: scan.date, date: scan.date, step: STEP, loss, unseen: scan.unseen, zones: scan.zones, faults: scan.faults });
  });
}

const inside = (at: number, from: number, to: number): boolean => at >= from && at < to;
const judge = (given: readonly Survey[]) => judgeGrowth(given, { diameterMm: 30, loopLength: null }, noCheckpoint);

describe('growth of zones', () => {
  it('tells a growing zone from a steady one, with the rate of the growing one inside its interval', async () => {
    const scans = [0, 1, 2, 3].map((year) => ({
      date: `202${year}-06-01`, loss: (at: number) => (inside(at, 50, 70) ? 2 + 0.5 * year : inside(at, 200, 230) ? 3 : 0),
      zones: [[50, 70, 2 + 0.5 * year], [200, 230, 3]] as [number, number, number][],
    }));
    const [growing, steady] = await judge(surveys(1, scans));
    expect(growing.state).toBe('growing');
    expect(growing.rateLow!).toBeLessThan(0.5);
    expect(growing.rateHigh!).toBeGreaterThan(0.5);
    expect(steady.state).toBe('stable');
  });

  it('calls nothing new or growing on a rope of which only gain and zero of the scans changed', async () => {
    for (let seed = 1; seed <= 10; seed += 1) {
      const gains = [1, 1.15, 0.88, 1.1];
      const scans = gains.map((gain, year) => ({
        date: `202${year}-06-01`, gain, zero: 0.3 * (year % 2), loss: (at: number) => (inside(at, 50, 70) ? 4 : inside(at, 200, 230) ? 2 : 0),
        zones: [[50, 70, 4 * gain], [200, 230, 2 * gain]] as [number, number, number][],
      }));
      const states = (await judge(surveys(seed, scans))).map((place) => place.state);
      expect(states).toEqual(['stable', 'stable']);
    }
  });

  it('says new, not inspected and not found for what they are', async () => {
    const zone = (from: number, to: number): [number, number, number] => [from, to, 2];
    const given = surveys(3, [
      { date: '2020-06-01', loss: (at) => (inside(at, 50, 60) || inside(at, 300, 320) ? 2 : 0), zones: [zone(50, 60), zone(300, 320)] },
      { date: '2021-06-01', loss: (at) => (inside(at, 150, 170) || inside(at, 300, 320) ? 2 : 0), zones: [zone(150, 170)], unseen: [290, 330] },
    ]);
    expect((await judge(given)).map((place) => place.state)).toEqual(['not-found', 'new', 'not-inspected']);
  });
});

describe('a length that was cut off', () => {
  it('is not called uninspected rope', async () => {
    const given = surveys(6, [
      { date: '2020-06-01', loss: () => 0, faults: [[2, 10], [100, 10]] },
      { date: '2021-06-01', loss: () => 0, faults: [[100, 10]], unseen: [0, 5] },
    ]);
    const cutOffs = [{ date: '2020-09-01', where: { from: 0, to: 5 } as never }];
    const [gone, there] = await judgeGrowth(given, { diameterMm: 30, loopLength: null, cutOffs }, noCheckpoint);
    expect(gone).toMatchObject({ state: 'not-inspected', reason: expect.stringContaining('cut off on 2020-09-01') });
    expect(there.state).toBe('stable');
    expect((await judge(given))[0].reason).toMatch(/did not see/);
  });
});

describe('growth of faults', () => {
  it('calls a break that is merely still there stable, one that was not there before new, one that became a cluster growing', async () => {
    const given = surveys(4, [
      { date: '2020-06-01', loss: () => 0, faults: [[100, 10], [200, 10]] },
      { date: '2021-06-01', loss: () => 0, faults: [[100, 10], [200, 10]] },
      { date: '2022-06-01', loss: () => 0, faults: [[100, 10], [200, 10], [200.06, 10], [200.12, 10], [300, 10]] },
    ]);
    expect((await judge(given)).map((place) => place.state)).toEqual(['stable', 'growing', 'new']);
  });

  it('does not call a break new that an earlier scan shows below its detector\'s threshold', async () => {
    const given = surveys(5, [{ date: '2020-06-01', loss: () => 0, faults: [] }, { date: '2021-06-01', loss: () => 0, faults: [[100, 6]] }]);
    const buried = given[0].rope.fault!.values;
    for (let i = Math.round(99.98 / STEP); i <= Math.round(100.02 / STEP); i += 1) buried[i] += 5;
    expect((await judge(given))[0].state).toBe('stable');
  });

  it('gives no rate to what was found once, and none to what is not found', async () => {
    const given = surveys(7, [
      { date: '2020-06-01', loss: () => 0, faults: [[50, 10]] },
      { date: '2021-06-01', loss: () => 0, faults: [] },
      { date: '2022-06-01', loss: () => 0, faults: [[300, 10]] },
    ]);
    const places = await judge(given);
    expect(places.map((place) => [place.state, place.ratePerYear])).toEqual([['not-found', null], ['new', null]]);
  });
});

describe('rates by trips', () => {
  const point = (trips: number | null, value: number) => ({ inspection: '', date: '2020-01-01', trips, value, uncertainty: 0.1 });

  it('are the slope over a thousand trips with its 95 % interval, over the points that have trips', () => {
    // Straight line by weighted least squares, by hand: slope 0.02 per 1000 trips, sum of squares of t about its mean 800: 0.1 / sqrt(800).
    const rate = rateByTrips([point(10_000, 1), point(null, 9), point(30_000, 1.4), point(50_000, 1.8)])!;
    expect(rate.perThousand).toBeCloseTo(0.02, 12);
    expect(rate.high - rate.perThousand).toBeCloseTo((1.959964 * 0.1) / Math.sqrt(800), 9);
    expect(rate.perThousand - rate.low).toBeCloseTo((1.959964 * 0.1) / Math.sqrt(800), 9);
  });

  it('are not said where trips are not on record', () => {
    expect(rateByTrips([point(null, 1), point(10, 2)])).toBeNull();
  });
});
