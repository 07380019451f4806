import { medianInPlace } from './median.ts';

/** Factor that makes the median absolute deviation of normal noise equal its standard deviation: 1 / 0.67449. */
export const NORMAL_MAD = 1 / 0.674489750196081743;

/**
 * Median absolute deviation about the median, times `scale`. With NORMAL_MAD it estimates the standard deviation of
 * noise in which up to half the values may be foreign. Throws RangeError on no values.
 */
export function medianAbsoluteDeviation(values: ArrayLike<number>, scale = 1): number {
  return madInPlace(Float64Array.from(values), 0, values.length) * scale;
}

/** The same without scale on scratch[from..end), which is overwritten by deviations. */
export function madInPlace(scratch: Float64Array, from: number, end: number): number {
  const centre = medianInPlace(scratch, from, end);
  for (let i = from; i < end; i += 1) scratch[i] = Math.abs(scratch[i] - centre);
  return medianInPlace(scratch, from, end);
}
