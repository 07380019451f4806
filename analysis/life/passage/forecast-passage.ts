import { bandOf } from './band.ts';
import type { BandPoint } from './band.ts';
import { describeModel, reasonOf } from './describe.ts';
import { drawPassages, quantileOf } from './draw-passages.ts';
import type { PassageDraws } from './draw-passages.ts';
import { expectedWidth } from './expected-width.ts';
import { learnRope } from './learn-rope.ts';
import type { LearnedRope } from './learn-rope.ts';
import { scaleRope } from './series.ts';
import type { ScaledRope, SeriesLike } from './series.ts';
import { SHAPES } from './settings.ts';

export interface PassageOptions {
  readonly seed: number;
  /** Longest time after the last reading, in the unit of t, over which anything is said; left out: twenty times the span of the readings. */
  readonly horizon?: number;
  /** What t counts, for the words: 'years', 'trips', 'hours'. */
  readonly timeUnit?: string;
}

export interface PassageDiagnostics {
  readonly readings: number;
  readonly places: number;
  /** Probability that the place grows at all. */
  readonly growing: number;
  /** Probability of each shape of growth (see growth-law.ts). */
  readonly shapes: readonly { readonly shape: number; readonly probability: number }[];
  readonly irregularity: number;
  readonly noiseScale: number;
}

export interface PassageForecast {
  /** 'none' where refused; 'reached' where the limit has been reached. */
  readonly model: string;
  /** 10, 50 and 90 % points of the first passage on the axis of t; null where they cannot be given. */
  readonly low: number | null;
  readonly median: number | null;
  readonly high: number | null;
  /** The limit is not reached before this, at 90 %; null where nothing can be said. */
  readonly notBefore: number | null;
  readonly reason: string;
  readonly band: readonly BandPoint[];
  /** Probability that the limit is reached by t; null where refused. */
  readonly probabilityBy: ((t: number) => number) | null;
  /** Expected width of the interval after one more reading at t with noise `sigma`; Infinity for no reading. Null where refused. */
  readonly expectedWidth: ((t: number, sigma: number) => number) | null;
  readonly diagnostics: PassageDiagnostics | null;
}

const HORIZON_SPANS = 20;
/** Growth less likely than this is not forecast: only a bound is given. */
const GROWTH_NEEDED = 0.5;

/**
 * When each place of one rope reaches `limit` for the first time, all places learned from together: growth law averaged over linear,
 * accelerating and slowing shapes, rates pooled between places, noise of reading, irregular growth. t, value and limit in any unit.
 * Deterministic for a given seed. Refuses a place with fewer than two readings.
 */
export function forecastPassages(series: readonly SeriesLike[], limit: number, options: PassageOptions): PassageForecast[] {
  return forecastSome(series, series.map((_, index) => index), limit, options);
}

/** The same for some of the places, given by their indices; the others are learned from only. */
export function forecastSome(series: readonly SeriesLike[], targets: readonly number[], limit: number, options: PassageOptions): PassageForecast[] {
  const rope = scaleRope(series, limit);
  let learned: LearnedRope | null = null;
  return targets.map((index) => {
    const early = withoutModel(series[index], limit, rope, index);
    if (early !== null) return early;
    learned ??= learnRope(rope!);
    const draws = drawPassages(learned, index, options.seed);
    if (draws === null || draws.times.length < 50) return refused('the growth model cannot account for these readings');
    return forecastOf(series[index], rope!, draws, limit, options);
  });
}

/** The same for one place. */
export function forecastPassage(series: readonly SeriesLike[], target: number, limit: number, options: PassageOptions): PassageForecast {
  return forecastSome(series, [target], limit, options)[0];
}

function refused(reason: string): PassageForecast {
  return { model: 'none', low: null, median: null, high: null, notBefore: null, reason, band: [], probabilityBy: null, expectedWidth: null, diagnostics: null };
}

function withoutModel(each: SeriesLike, limit: number, rope: ScaledRope | null, index: number): PassageForecast | null {
  const points = each.points.filter((point) => Number.isFinite(point.value)).sort((a, b) => a.t - b.t);
  if (points.length === 0) return refused('not measured at this place');
  const direction = rope?.direction ?? 1;
  const isPast = (value: number) => direction * value >= direction * limit;
  if (isPast(points[points.length - 1].value)) {
    const first = points.find((point) => isPast(point.value))!;
    return { ...refused('the limit has been reached: the newest reading is at or past it'), model: 'reached', low: first.t, median: first.t, high: first.t };
  }
  if (points.length < 2) return refused('one reading only: growth needs at least two inspections of this place');
  if (rope === null || !rope.places.some((place) => place.index === index)) return refused('no time passed between the readings');
  return null;
}

function forecastOf(each: SeriesLike, rope: ScaledRope, draws: PassageDraws, limit: number, options: PassageOptions): PassageForecast {
  const points = [...each.points].sort((a, b) => a.t - b.t);
  const last = points[points.length - 1].t;
  const horizon = options.horizon ?? HORIZON_SPANS * rope.span;
  const at = (share: number): number => last + quantileOf(draws.times, share) * rope.span;
  const diagnostics: PassageDiagnostics = {
    readings: points.length, places: rope.places.length, growing: draws.growing, irregularity: draws.irregularity, noiseScale: draws.noiseScale,
    shapes: SHAPES.map(({ shape }, i) => ({ shape, probability: draws.shapeProbability[i] })),
  };
  const share = 0.1 / draws.growing;
  const bound = share < 1 ? Math.min(at(share), last + horizon) : last + horizon;
  const found = draws.growing >= GROWTH_NEEDED;
  const given = found && at(0.1) <= last + horizon;
  const within = (value: number): number | null => (value <= last + 2 * horizon ? value : null);
  const [low, median, high] = given ? [at(0.1), within(at(0.5)), within(at(0.9))] : [null, null, null];
  return {
    model: given ? describeModel(draws, each.counts === true, rope.places.length) : 'none', low, median, high,
    notBefore: given ? null : bound,
    reason: reasonOf({ points, rope, draws, given, found, median, high, limit, timeUnit: options.timeUnit ?? '' }),
    band: given ? bandOf(rope, draws, points[0].t, last, Math.min(high ?? last + horizon, last + horizon), limit) : [],
    probabilityBy: (t) => (t < last ? 0 : draws.growing * shareBelow(draws.times, (t - last) / rope.span)),
    expectedWidth: (t, sigma) => expectedWidth(rope, draws, (t - last) / rope.span, sigma / rope.reference),
    diagnostics,
  };
}

function shareBelow(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] <= value) low = middle + 1;
    else high = middle;
  }
  return sorted.length === 0 ? 0 : low / sorted.length;
}
