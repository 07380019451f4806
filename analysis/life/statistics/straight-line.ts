import { leastSquares } from './least-squares.ts';
import { studentQuantile } from './student-t.ts';

export interface LinePoint {
  readonly t: number;
  readonly value: number;
}

/** Ordinary least-squares line through one series alone: the yardstick beside which a forecast is shown, never the forecast. */
export interface StraightLine {
  readonly slope: number;
  /** One sigma of the slope from the scatter about the line; NaN with two points. */
  readonly slopeError: number;
  readonly residualSd: number;
  readonly meanT: number;
  readonly meanValue: number;
  readonly count: number;
}

/** Null with fewer than two points or no time between them. Centred on the mean time, so that dates as large numbers cost no digits. */
export function straightLine(points: readonly LinePoint[]): StraightLine | null {
  if (points.length < 2) return null;
  const meanT = points.reduce((sum, each) => sum + each.t, 0) / points.length;
  const fit = leastSquares(points.map(({ t }) => [1, t - meanT]), points.map(({ value }) => value));
  if (fit === null) return null;
  return { slope: fit.coefficients[1], slopeError: fit.standardErrors[1], residualSd: fit.residualSd, meanT, meanValue: fit.coefficients[0], count: points.length };
}

/**
 * Where the line meets `limit`, with the calibration interval of `share`: the times at which the prediction band of a new reading
 * crosses it (Draper and Smith, Applied Regression Analysis, on inverse regression). Ends are null where the band never crosses;
 * all null with a level line.
 */
export function crossingOf(line: StraightLine, limit: number, share: number): { at: number | null; low: number | null; high: number | null } {
  const { slope, slopeError, residualSd, meanT, meanValue, count } = line;
  const none = { at: null, low: null, high: null };
  if (slope === 0) return none;
  const missing = limit - meanValue;
  const at = meanT + missing / slope;
  if (count < 3) return { ...none, at };
  const quantile = studentQuantile(share, count - 2);
  // (slope z - missing)^2 = quantile^2 (residualSd^2 (1 + 1/n) + slopeError^2 z^2), z from the mean time
  const a = slope ** 2 - (quantile * slopeError) ** 2;
  const c = missing ** 2 - (quantile * residualSd) ** 2 * (1 + 1 / count);
  const root = (slope * missing) ** 2 - a * c;
  if (!(a > 0) || !(root >= 0)) return { ...none, at };
  const ends = [-1, 1].map((side) => meanT + (slope * missing + side * Math.sqrt(root)) / a);
  return { at, low: Math.min(...ends), high: Math.max(...ends) };
}
