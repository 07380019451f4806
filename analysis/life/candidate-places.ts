import type { CriterionResult, Evidence, UtilisationStrip } from '../criteria/criterion.ts';
import { measureOver } from '../criteria/evaluate-criteria.ts';
import type { Clause } from '../criteria/rule-set.ts';
import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import { yearOfDate } from './dates.ts';
import type { SeriesPoint } from '../growth/place.ts';

/** A fixed length of rope and what every inspection measured over it. */
export interface MeasuredWindow {
  readonly where: Interval<'rope'>;
  readonly series: readonly MeasuredPoint[];
}

export interface MeasuredPoint extends SeriesPoint {
  /** Nothing but chance separates it from its mean: a count without a range. */
  readonly exact: boolean;
}

/** Places learned from for one clause besides the governing one. */
const MOST_PLACES = 9;
/** Positions tried for the worst window inside one place. */
const TRIES = 25;
const STRIP_PEAKS = 5;
/** A strip peak below this share of the limit is not a place. */
const WORTH_A_LOOK = 0.15;

/**
 * The places at which a clause is forecast: its governing place, every place where growth was looked at, and the highest peaks along
 * the rope, each as one fixed window. Inside a place the window is put where the mean of all inspections is worst, not where the
 * newest happens to read highest, so that the noise of one inspection does not choose.
 */
export function candidatePlaces(clause: Clause, result: CriterionResult, evidence: Evidence, strip: UtilisationStrip | null): MeasuredWindow[] {
  const governing = measureWindow(clause, evidence, result.where);
  const width = result.where.to - result.where.from;
  const others = [...placesOf(evidence, result), ...stripPeaks(strip, width)].map((where) => worstWindow(clause, evidence, where, width));
  const kept: MeasuredWindow[] = [governing];
  const now = Math.max(...evidence.surveys.map((survey) => yearOfDate(survey.date)));
  for (const each of others.filter((other) => other.series.length > 0).sort((a, b) => weightOf(b, now) - weightOf(a, now))) {
    if (kept.length > MOST_PLACES) break;
    if (!kept.some((other) => overlap(other.where, each.where) > 0.5)) kept.push(each);
  }
  return kept;
}

/** Windows nearer than this many of their widths (of a metre at least) tell of the same damage. */
const NEIGHBOURS = 2;
/** Places of one clause that are forecast and shown. All candidates are learned from. */
const MOST_SHOWN = 3;

/**
 * The windows worth a forecast of their own: the governing one, then the most pressing ones that stand on other damage. Two windows on
 * one zone, or side by side, would tell the same story twice. Indices into `windows`, which come governing first.
 */
export function distinctPlaces(windows: readonly MeasuredWindow[], zones: readonly Interval<'rope'>[]): number[] {
  const shown: number[] = [];
  const middle = ({ where }: MeasuredWindow) => (where.from + where.to) / 2;
  const zoneOf = (window: MeasuredWindow) => zones.findIndex((zone) => zone.from <= middle(window) && middle(window) < zone.to);
  const near = (a: MeasuredWindow, b: MeasuredWindow) => Math.abs(middle(a) - middle(b)) < NEIGHBOURS * Math.max(1, a.where.to - a.where.from);
  const alike = (a: MeasuredWindow, b: MeasuredWindow) => near(a, b) || (zoneOf(a) >= 0 && zoneOf(a) === zoneOf(b));
  for (let i = 0; i < windows.length && shown.length < MOST_SHOWN; i += 1) {
    if (!shown.some((other) => alike(windows[other], windows[i]))) shown.push(i);
  }
  return shown;
}

function placesOf(evidence: Evidence, result: CriterionResult): Interval<'rope'>[] {
  const subjects = result.measure.startsWith('broken-wires') ? ['fault'] : ['zone'];
  return evidence.places.filter((place) => subjects.includes(place.subject)).map((place) => place.where);
}

export function measureWindow(clause: Clause, evidence: Evidence, where: Interval<'rope'>): MeasuredWindow {
  const series: MeasuredPoint[] = [];
  for (const survey of evidence.surveys) {
    const found = measureOver(clause, evidence, survey, where);
    if (found === null || !Number.isFinite(found.value)) continue;
    series.push({ inspection: survey.id, date: survey.date, trips: survey.trips, value: found.value, uncertainty: found.uncertainty ?? 0, exact: found.uncertainty === null });
  }
  return { where, series };
}

/** The window of the clause's own width inside (or about) a place whose mean over all inspections is worst. */
function worstWindow(clause: Clause, evidence: Evidence, place: Interval<'rope'>, width: number): MeasuredWindow {
  const room = place.to - place.from - width;
  if (room <= 0 || width === 0) {
    const from = (place.from + place.to - width) / 2;
    const within = evidence.loopLength === null ? Math.max(0, Math.min(from, (evidence.ropeLength ?? Infinity) - width)) : from;
    return measureWindow(clause, evidence, { from: ropePosition(within), to: ropePosition(within + width) });
  }
  const tries = Math.min(TRIES, Math.max(2, Math.ceil(room / (width / 2)) + 1));
  let best: MeasuredWindow | null = null;
  for (let k = 0; k < tries; k += 1) {
    const from = place.from + (room * k) / (tries - 1);
    const each = measureWindow(clause, evidence, { from: ropePosition(from), to: ropePosition(from + width) });
    if (best === null || meanOf(each) > meanOf(best)) best = each;
  }
  return best!;
}

function meanOf(window: MeasuredWindow): number {
  return window.series.length === 0 ? -Infinity : window.series.reduce((sum, point) => sum + point.value, 0) / window.series.length;
}

/** What makes a place pressing: its newest level and what it gained, carried on to `now` where it was not seen since. */
function weightOf({ series }: MeasuredWindow, now: number): number {
  const first = series[0];
  const last = series[series.length - 1];
  const span = yearOfDate(last.date) - yearOfDate(first.date);
  const unseen = span > 0 ? (now - yearOfDate(last.date)) / span : 0;
  return last.value + Math.max(0, last.value - first.value) * (1 + unseen);
}

function stripPeaks(strip: UtilisationStrip | null, width: number): Interval<'rope'>[] {
  if (strip === null || !(width > 0)) return [];
  const order = strip.values.map((value, i) => ({ value: value ?? 0, at: strip.positions[i] })).filter((each) => each.value > WORTH_A_LOOK).sort((a, b) => b.value - a.value);
  const peaks: number[] = [];
  for (const { at } of order) {
    if (peaks.length >= STRIP_PEAKS) break;
    if (peaks.every((other) => Math.abs(other - at) > 2 * width)) peaks.push(at);
  }
  return peaks.map((at) => ({ from: ropePosition(at - width / 2), to: ropePosition(at + width / 2) }));
}

/** Common length as a share of the shorter of the two; points count as the same within a centimetre. */
function overlap(a: Interval<'rope'>, b: Interval<'rope'>): number {
  const shorter = Math.min(a.to - a.from, b.to - b.from);
  if (shorter < 0.01) return Math.abs(a.from - b.from) < 0.5 ? 1 : 0;
  return (Math.min(a.to, b.to) - Math.max(a.from, b.from)) / shorter;
}
