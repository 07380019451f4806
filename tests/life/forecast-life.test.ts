import { expect, it } from 'vitest';
import type { Evidence } from '../../analysis/criteria/criterion.ts';
import { evaluateCriteria } from '../../analysis/criteria/evaluate-criteria.ts';
import { forecastLife } from '../../analysis/life/index.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { ropePosition } from '../../analysis/rope/units.ts';
import { shippedSet } from '../criteria/judge.ts';
import { evidenceOf, surveyOf } from '../criteria/rope-for-tests.ts';

const haul = { diameter_mm: 30, construction: '6x19S-FC', lay: 'lang' as const, application: 'funicular haul rope', length_m: 100 };
/** Four zones of 4 m that lose 0.5, 0.4, 0.3 and 0.2 points a year; the rest is sound. */
const lossAt = (years: number) => (at: number) => [[10, 0.5], [30, 0.4], [50, 0.3], [70, 0.2]].reduce((loss, [from, rate]) => (at >= from && at < from + 4 ? 1 + rate * years : loss), 0);
const survey = (years: number, blind: [number, number][] = []) => surveyOf({ id: `i${years}`, date: `${2018 + years}-05-01`, length: 100, loss: lossAt(years), repeatability: 0.1, blind });

async function forecast(surveys: ReturnType<typeof survey>[], places: Evidence['places'] = []) {
  const sets = [shippedSet('ropeway-area-italy-2016')];
  const evidence = evidenceOf(haul, surveys, { places });
  const outcome = await evaluateCriteria(evidence, sets, noCheckpoint);
  return forecastLife(evidence, outcome, { sets, asOf: surveys[surveys.length - 1].date, intervalFactor: 0.5, seed: 1, checkpoint: noCheckpoint });
}

it('forecasts every clause at most three times, at places without a common length, the worst first', async () => {
  const { forecasts, nextInspection } = await forecast([0, 2, 4, 6].map((years) => survey(years)));
  const clauses = [...new Set(forecasts.map((each) => each.clause))];
  expect(clauses.length).toBeGreaterThan(1);
  for (const clause of clauses) {
    const places = forecasts.filter((each) => each.clause === clause).map((each) => each.where).sort((a, b) => a.from - b.from);
    expect(places.length).toBeLessThanOrEqual(3);
    places.slice(1).forEach((place, i) => expect(place.from).toBeGreaterThanOrEqual(places[i].to - 0.01));
  }
  // 6 % of a window of 0.18 m is reached ten years after the first inspection where 0.5 points a year are lost.
  const worst = forecasts.find((each) => each.clause === 'area-6d' && each.where.from >= 10 && each.where.to <= 14)!;
  expect(worst.date.low! < '2028-05-01').toBe(true);
  expect(worst.date.high! > '2028-05-01').toBe(true);
  expect(Math.abs(Date.parse(worst.date.median!) - Date.parse('2028-05-01')) / 3.156e10).toBeLessThan(1);
  expect(worst.reason).toMatch(/straight line through this place alone meets the limit on 2028-0[45]-/);
  expect(nextInspection.by! > '2024-05-01').toBe(true);
  expect(nextInspection.advice).toMatch(/further inspection|Repeat runs/);
}, 60_000);

const zone: Evidence['places'][number] = {
  id: 'Z1', subject: 'zone', where: { from: ropePosition(10), to: ropePosition(14) }, members: [], series: [], state: 'not-inspected', ratePerYear: null, tripRate: null, rateLow: null, rateHigh: null, pValue: null, reason: '',
};

it('explains a date that has passed: the place was not seen since', async () => {
  const { forecasts } = await forecast([survey(0), survey(2), surveyOf({ id: 'late', date: '2030-05-01', length: 100, loss: lossAt(12), repeatability: 0.1, blind: [[8, 16]] })], [zone]);
  const passed = forecasts.filter((each) => each.date.low !== null && each.date.low < '2030-05-01');
  expect(passed.length).toBeGreaterThan(0);
  for (const each of passed) expect(each.reason).toContain('was last read on 2020-05-01');
}, 60_000);

it('refuses after one inspection, and says what would help', async () => {
  const { forecasts, nextInspection } = await forecast([survey(0)]);
  expect(forecasts.length).toBeGreaterThan(0);
  for (const each of forecasts) expect(each).toMatchObject({ model: 'none', date: { low: null, median: null, high: null }, notBefore: null });
  expect(nextInspection.advice).toContain('second inspection');
});
