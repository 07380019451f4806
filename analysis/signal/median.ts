import { quantileInPlace } from './quantile.ts';

/** Median; the mean of the middle two for an even count. The input is left as it is. Throws RangeError on no values. */
export function median(values: ArrayLike<number>): number {
  return quantileInPlace(Float64Array.from(values), 0.5);
}

/** The same on scratch[from..end), whose order is lost. */
export function medianInPlace(scratch: Float64Array, from = 0, end = scratch.length): number {
  return quantileInPlace(scratch, 0.5, from, end);
}
