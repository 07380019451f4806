import { slidingMean } from './sliding-mean.ts';

/** Root mean square over a centred window of `width` samples (odd) of valid samples; see slidingMean for gaps and ends. */
export function slidingRms(values: Float64Array, valid: Uint8Array, width: number): { values: Float64Array; valid: Uint8Array } {
  const squares = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) squares[i] = values[i] * values[i];
  const mean = slidingMean(squares, valid, width);
  // Cancellation in the running sum can leave a trace below zero.
  for (let i = 0; i < squares.length; i += 1) mean.values[i] = Math.sqrt(Math.max(0, mean.values[i]));
  return mean;
}
