import { GROWTH } from './parameters.ts';
import type { GrowthState, Place, SeriesPoint } from './place.ts';
import { newestAgainstEarlier, twoSidedP, weightedTrend } from './weighted-trend.ts';
import type { TrendPoint } from './weighted-trend.ts';

/** A place measured over the inspections, not yet judged. Points are ordered by date; `last` says if the newest inspection is among them. */
export interface MeasuredPlace {
  readonly place: Omit<Place, 'state' | 'reason' | 'ratePerYear' | 'rateLow' | 'rateHigh' | 'pValue' | 'tripRate'>;
  readonly points: readonly TrendPoint[];
  /** Points from which growth and its rate count: for a fault, since it first appeared. */
  readonly growthPoints: readonly TrendPoint[];
  readonly seenByNewest: boolean;
  /** Shown by the newest inspection: found by its detector, or measured there below its threshold. */
  readonly shownByNewest: boolean;
  readonly shownEarlier: boolean;
  readonly coveredEarlier: boolean;
  /** Date on which this length was cut off the rope; null: it is still there. */
  readonly cutOff: string | null;
  readonly smallestChange: number;
  /** Chance that noise gives an indication as strong anywhere on the rope, where the newest inspection alone shows the place; null: not known, or shown before. */
  readonly chanceOfNoise: number | null;
  /** Claimed 95 % bound of position between the newest inspection and the least sure of the others, m. */
  readonly bound: number;
  /** What keeps "not there before" from being sure, in words; empty where nothing does. */
  readonly doubt: string;
}

/** Evidence of change before the number of places is taken into account. */
export interface Change {
  readonly size: number;
  readonly pValue: number | null;
  readonly rate: { readonly perYear: number; readonly low: number; readonly high: number } | null;
}

/** 97.5 % point of the standard normal. */
const TWO_SIGMA = 1.959964;

/**
 * Slope over all points and newest against earlier: the smaller of the two p-values, doubled because there were two chances.
 * The size is the larger change of the two that has the sign of the more certain one.
 */
export function changeOf(measured: MeasuredPlace): Change {
  const points = measured.shownEarlier ? measured.growthPoints : measured.points;
  const trend = weightedTrend(points);
  const step = newestAgainstEarlier(points);
  if (trend === null || step === null) return { size: 0, pValue: null, rate: null };
  const grown = points === measured.growthPoints ? trend : weightedTrend(measured.growthPoints);
  const over = trend.slope * (points[points.length - 1].t - points[0].t);
  return {
    size: trend.pValue <= step.pValue ? over : step.change,
    pValue: Math.min(1, 2 * Math.min(trend.pValue, step.pValue)),
    rate: grown === null ? null : { perYear: grown.slope, low: grown.slope - TWO_SIGMA * grown.slopeUncertainty, high: grown.slope + TWO_SIGMA * grown.slopeUncertainty },
  };
}

/** The same trend by trips, a thousand at a time; null where fewer than two of the points have their trips on record. */
export function rateByTrips(series: readonly SeriesPoint[]): Place['tripRate'] {
  const trend = weightedTrend(series.flatMap(({ trips, value, uncertainty }) => (trips === null ? [] : [{ t: trips / 1000, value, uncertainty }])));
  return trend === null ? null : { perThousand: trend.slope, low: trend.slope - TWO_SIGMA * trend.slopeUncertainty, high: trend.slope + TWO_SIGMA * trend.slopeUncertainty };
}

/** The state of a place, given whether its change stands out among all places looked at. */
export function stateOf(measured: MeasuredPlace, change: Change, significant: boolean): { state: GrowthState; reason: string } {
  if (!measured.seenByNewest && measured.cutOff !== null) return { state: 'not-inspected', reason: `this length was cut off on ${measured.cutOff.slice(0, 10)} and is no longer part of the rope` };
  if (!measured.seenByNewest) return { state: 'not-inspected', reason: 'the newest inspection did not see this length' };
  if (measured.bound > GROWTH.widestBound && measured.coveredEarlier) {
    const reason = `not compared: positions of the inspections agree here to ${measured.bound.toFixed(0)} m only, so that this place cannot be told from others. Pin tie points, or state start and direction in the record`;
    return { state: measured.shownByNewest ? 'stable' : 'not-found', reason };
  }
  if (!measured.shownByNewest) return { state: 'not-found', reason: 'an earlier inspection shows it, the newest saw this length and does not; that is no repair' };
  if (!measured.coveredEarlier) return { state: 'new', reason: 'first seen: no earlier inspection saw this length, so nothing can be said of its growth' };
  if (!measured.shownEarlier && measured.chanceOfNoise !== null && measured.chanceOfNoise > GROWTH.chanceOfFalseNew) {
    return { state: 'stable', reason: `found by the newest inspection only, no stronger than noise alone gives somewhere on a rope of this length (chance ${(100 * measured.chanceOfNoise).toFixed(0)} %): look there or repeat the run before it is called new` };
  }
  const material = significant && Math.abs(change.size) >= measured.smallestChange;
  if (!measured.shownEarlier) {
    return material && change.size > 0
      ? { state: 'new', reason: `not there at any earlier inspection that saw this length${measured.doubt}` }
      : { state: 'stable', reason: 'found by the newest inspection only, but what earlier ones measured there does not differ beyond their uncertainty' };
  }
  if (material) {
    return change.size > 0
      ? { state: 'growing', reason: 'the change exceeds what noise, alignment and instrument scale explain' }
      : { state: 'receding', reason: 'the signal fell beyond what noise, alignment and instrument scale explain; steel does not grow back: look for the cause' };
  }
  if (significant) return { state: 'stable', reason: 'a change is measurable but smaller than the smallest that is called growth' };
  return { state: 'stable', reason: 'no change beyond what noise, alignment and instrument scale explain' };
}

/** True where a value stands out of its own uncertainty: one-sided, one in a thousand. */
export function standsOut(value: number, uncertainty: number): boolean {
  return value > 0 && twoSidedP(value / uncertainty) < 0.002;
}
