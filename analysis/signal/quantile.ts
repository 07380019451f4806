import { selectInPlace } from './select.ts';

/**
 * The quantile at `share` (0..1) with linear interpolation between order statistics (type 7 of Hyndman and Fan 1996,
 * the default of R and numpy). The input is left as it is. Linear time. Throws RangeError on no values.
 */
export function quantile(values: ArrayLike<number>, share: number): number {
  return quantileInPlace(Float64Array.from(values), share);
}

/** The same on values[from..end), whose order is lost: for loops that own a scratch array. */
export function quantileInPlace(values: Float64Array, share: number, from = 0, end = values.length): number {
  const count = end - from;
  if (count <= 0) throw new RangeError('a quantile needs at least one value');
  const rank = (count - 1) * share;
  const below = Math.floor(rank);
  const lower = selectInPlace(values, below, from, end);
  if (rank === below) return lower;
  // After the selection every value behind the rank is at least as large: the next order statistic is their minimum.
  let upper = Infinity;
  for (let i = from + below + 1; i < end; i += 1) if (values[i] < upper) upper = values[i];
  return lower + (rank - below) * (upper - lower);
}
