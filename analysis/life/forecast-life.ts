import { findClause } from '../criteria/rule-set.ts';
import type { Clause, Measure, RuleSet } from '../criteria/rule-set.ts';
import type { CriterionResult, Evidence, NotEvaluated, UtilisationStrip } from '../criteria/criterion.ts';
import type { Checkpoint } from '../rope/checkpoint.ts';
import { candidatePlaces, distinctPlaces } from './candidate-places.ts';
import type { MeasuredWindow } from './candidate-places.ts';
import { dateOfYear, yearOfDate } from './dates.ts';
import type { Forecast, LifeOutcome } from './forecast.ts';
import { nextInspection } from './next-inspection.ts';
import { crossingOf, straightLine } from './statistics/straight-line.ts';
import type { PressingPlace } from './next-inspection.ts';
import { forecastSome } from './passage/forecast-passage.ts';
import type { PassageForecast } from './passage/forecast-passage.ts';
import type { SeriesLike } from './passage/series.ts';

export interface LifeOptions {
  readonly sets: readonly RuleSet[];
  /** ISO date of the judgement: that of the newest inspection. */
  readonly asOf: string;
  /** Share of the time to the low bound after which the next inspection is due. */
  readonly intervalFactor: number;
  readonly seed: number;
  readonly checkpoint: Checkpoint;
}

export interface JudgedCriteria {
  readonly results: readonly CriterionResult[];
  readonly notEvaluated: readonly NotEvaluated[];
  readonly strips?: readonly UtilisationStrip[];
}

/** Measures that grow by degrees and are read over a fixed length. The others are there or not. */
const TRENDABLE: ReadonlySet<Measure> = new Set<Measure>([
  'area-reduction', 'strength-loss', 'broken-wire-area', 'broken-wires', 'broken-wires-in-strand', 'broken-wires-side-by-side', 'broken-wires-in-valley', 'broken-wires-at-termination',
  'diameter-reduction', 'outer-wire-wear', 'lay-length-change',
]);

/** Years ahead over which a date is given; later ones are left as a bound. */
const HORIZON_YEARS = 50;

/**
 * When each criterion would be reached, at its governing place and at up to two more that stand on other damage. Series are read on
 * fixed windows at every inspection; all places of a clause that may grow are learned from together. Seeded: the same evidence gives the same dates.
 */
export async function forecastLife(evidence: Evidence, outcome: JudgedCriteria, options: LifeOptions): Promise<LifeOutcome> {
  const forecasts: Forecast[] = [];
  const pressing: PressingPlace[] = [];
  const zones = evidence.places.filter((place) => place.subject === 'zone').map((place) => place.where);
  for (const [index, result] of outcome.results.entries()) {
    await options.checkpoint(result.clause, index / outcome.results.length);
    const clause = findClause(options.sets, result.ruleSet, result.clause);
    if (clause === null || !TRENDABLE.has(clause.measure) || result.comparator.startsWith('<')) continue;
    const strip = outcome.strips?.find((each) => each.ruleSet === result.ruleSet && each.clause === result.clause) ?? null;
    const windows = candidatePlaces(clause, result, evidence, strip);
    for (const made of forecastClause(clause, result, windows, distinctPlaces(windows, zones), options)) {
      forecasts.push(made.forecast);
      pressing.push(made);
    }
  }
  return { forecasts, nextInspection: nextInspection(evidence, outcome.results, pressing, options) };
}

function forecastClause(clause: Clause, result: CriterionResult, windows: readonly MeasuredWindow[], shown: readonly number[], options: LifeOptions): PressingPlace[] {
  const counted = clause.measure.startsWith('broken-wires') || clause.measure === 'broken-wire-area';
  const limit = counted && clause.unit !== '%' ? (result.comparator === '>' ? Math.floor(result.limit) + 1 : Math.ceil(result.limit)) : result.limit;
  const calendar = forecastSome(windows.map((each) => seriesBy(each, (point) => yearOfDate(point.date), counted)), shown, limit, { seed: options.seed, horizon: HORIZON_YEARS, timeUnit: 'years' });
  const byTrips = windows.every((each) => tripsRecorded(each))
    ? forecastSome(windows.map((each) => seriesBy(each, (point) => point.trips!, counted)), shown, limit, { seed: options.seed, timeUnit: 'trips' }) : null;
  return shown.map((index, i) => ({ forecast: forecastOf(result, windows[index], calendar[i], byTrips?.[i] ?? null, options.asOf), passage: calendar[i], window: windows[index] }));
}

function seriesBy(window: MeasuredWindow, axis: (point: MeasuredWindow['series'][number]) => number, counted: boolean): SeriesLike {
  const exact = window.series.every((point) => point.exact);
  const rising = window.series.every((point, i) => Number.isInteger(point.value) && (i === 0 || point.value >= window.series[i - 1].value));
  const counts = counted && exact && rising;
  return {
    counts,
    // A count that fell, or was read off a signal, scatters about its mean as well.
    points: window.series.map((point) => ({ t: axis(point), value: point.value, uncertainty: counts ? null : counted ? Math.hypot(point.uncertainty, 0.4 * Math.sqrt(Math.max(1, point.value))) : point.uncertainty })),
  };
}

function tripsRecorded({ series }: MeasuredWindow): boolean {
  return series.length >= 2 && series.every((point, i) => point.trips !== null && (i === 0 || point.trips > series[i - 1].trips!));
}

function forecastOf(result: CriterionResult, window: MeasuredWindow, calendar: PassageForecast, byTrips: PassageForecast | null, asOf: string): Forecast {
  const date = (t: number | null): string | null => (t === null ? null : dateOfYear(t));
  const trips = (t: number | null | undefined): number | null => (t === null || t === undefined ? null : Math.round(t));
  return {
    ruleSet: result.ruleSet, clause: result.clause, where: window.where, model: calendar.model, basis: byTrips !== null && byTrips.median !== null ? 'trips' : 'calendar',
    inspectionsUsed: window.series.length,
    date: { low: date(calendar.low), median: date(calendar.median), high: date(calendar.high) },
    trips: { low: trips(byTrips?.low), median: trips(byTrips?.median), high: trips(byTrips?.high) },
    notBefore: date(calendar.notBefore), reason: [calendar.reason, ...pastInWords(calendar, window, asOf), ...lineInWords(calendar, window, result.limit)].join('; '),
    series: window.series.map(({ inspection, date: at, trips: count, value, uncertainty }) => ({ inspection, date: at, trips: count, value, uncertainty })),
    limit: result.limit, unit: result.unit, chance: chanceOf(calendar, yearOfDate(window.series[window.series.length - 1]?.date ?? '')),
    band: calendar.band.map((point) => ({ date: dateOfYear(point.t), low: point.low, median: point.median, high: point.high })),
  };
}

/** Dates that lie before the newest inspection are explained: nobody should read them as a forecast. */
function pastInWords({ model, low }: PassageForecast, { series }: MeasuredWindow, asOf: string): string[] {
  if (low === null || dateOfYear(low) > asOf.slice(0, 10)) return [];
  if (model === 'reached') return [`first read at or past it on ${dateOfYear(low)}`];
  return [`this place was last read on ${series[series.length - 1].date.slice(0, 10)}: its early date has passed, and the limit may have been reached since, unseen`];
}

/** The straight line through one place alone, beside the forecast for comparison: a hostile reader will draw it. */
function lineInWords({ model, low }: PassageForecast, { series }: MeasuredWindow, limit: number): string[] {
  const line = model === 'reached' || low === null ? null : straightLine(series.map((point) => ({ t: yearOfDate(point.date), value: point.value })));
  if (line === null || !(line.slope > 0)) return [];
  const { at, low: early, high: late } = crossingOf(line, limit, 0.8);
  // Calendars end; a line that is all but level meets nothing of interest.
  const day = (t: number | null) => (t === null || t > MOST_DISTANT ? null : dateOfYear(t));
  const [middle, from, to] = [day(at), day(early), day(late)];
  if (middle === null) return [];
  return [`for comparison, a straight line through this place alone meets the limit on ${middle}${from !== null && to !== null ? ` (80 %: ${from} to ${to})` : ''}`];
}

const MOST_DISTANT = 1000; // years since 1970

/** Steps of probability in the table of dates, and halvings that find each to within a day. */
const CHANCE_STEPS = 50;
const HALVINGS = 17;

/** Where dates are given they assume that the growth goes on, and so does the table: its 10 % stands at the date of 10 %. */
function chanceOf({ probabilityBy, low, diagnostics }: PassageForecast, last: number): Forecast['chance'] {
  if (probabilityBy === null || !Number.isFinite(last)) return [];
  const given = low === null || diagnostics === null ? 1 : diagnostics.growing;
  const by = (t: number): number => Math.min(1, probabilityBy(t) / given);
  // Dates are given as far as twice the horizon.
  const end = last + 2 * HORIZON_YEARS;
  const found = Array.from({ length: CHANCE_STEPS }, (_, i) => (i + 0.5) / CHANCE_STEPS).filter((share) => share < by(end)).map((share) => earliest(by, share, last, end));
  return [last, ...found, end].map((t) => ({ date: dateOfYear(t), share: by(t) }));
}

function earliest(by: (t: number) => number, share: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (by(middle) >= share) high = middle;
    else low = middle;
  }
  return high;
}
