import { errorFunction } from 'simple-statistics';

export interface TrendPoint {
  readonly t: number;
  readonly value: number;
  readonly uncertainty: number; // one sigma
}

export interface WeightedTrend {
  readonly slope: number;
  readonly slopeUncertainty: number; // one sigma
  /** Two-sided, of a slope of zero. */
  readonly pValue: number;
}

/**
 * Straight line through points of known uncertainty (weighted least squares). Where the points scatter more than their
 * uncertainties say, the slope's uncertainty is widened by the root of chi-square over its degrees of freedom; never narrowed.
 * Null with fewer than two points or no spread in time.
 */
export function weightedTrend(points: readonly TrendPoint[]): WeightedTrend | null {
  if (points.length < 2) return null;
  let weight = 0, meanT = 0, meanV = 0;
  for (const { t, value, uncertainty } of points) {
    const w = 1 / uncertainty ** 2;
    weight += w;
    meanT += w * t;
    meanV += w * value;
  }
  meanT /= weight;
  meanV /= weight;
  let stt = 0, stv = 0;
  for (const { t, value, uncertainty } of points) {
    const w = 1 / uncertainty ** 2;
    stt += w * (t - meanT) ** 2;
    stv += w * (t - meanT) * (value - meanV);
  }
  if (!(stt > 0)) return null;
  const slope = stv / stt;
  const chiSquare = points.reduce((sum, { t, value, uncertainty }) => sum + ((value - meanV - slope * (t - meanT)) / uncertainty) ** 2, 0);
  const widen = points.length > 2 ? Math.max(1, Math.sqrt(chiSquare / (points.length - 2))) : 1;
  const slopeUncertainty = widen / Math.sqrt(stt);
  return { slope, slopeUncertainty, pValue: twoSidedP(slope / slopeUncertainty) };
}

/** Difference of the last point from the weighted mean of the earlier ones, with its two-sided p-value. Null with fewer than two points. */
export function newestAgainstEarlier(points: readonly TrendPoint[]): { change: number; pValue: number } | null {
  if (points.length < 2) return null;
  const earlier = points.slice(0, -1);
  const newest = points[points.length - 1];
  const weight = earlier.reduce((sum, p) => sum + 1 / p.uncertainty ** 2, 0);
  const mean = earlier.reduce((sum, p) => sum + p.value / p.uncertainty ** 2, 0) / weight;
  const change = newest.value - mean;
  return { change, pValue: twoSidedP(change / Math.sqrt(newest.uncertainty ** 2 + 1 / weight)) };
}

/** Two-sided p-value of a standard normal deviate. */
export function twoSidedP(deviate: number): number {
  return Math.max(0, 1 - errorFunction(Math.abs(deviate) / Math.SQRT2));
}
