import { slidingMean } from '../signal/sliding-mean.ts';

/** Loss of one extent: mean over it, highest over an averaging length, and the whole of it in percent times metres. */
export interface ZoneLoss {
  readonly mean: number;
  readonly peak: number;
  readonly total: number;
}

/**
 * Measures the loss between `from` and `to` (m from the first sample). The instrument spreads a loss half its averaging
 * length beyond either edge: what lies there belongs to the zone. Null where nothing valid was measured.
 */
export function measureLoss(values: Float64Array, mask: Uint8Array, step: number, from: number, to: number, averaging: number): ZoneLoss | null {
  const first = Math.max(0, Math.round((from - averaging / 2) / step));
  const end = Math.min(values.length, Math.round((to + averaging / 2) / step) + 1);
  let sum = 0;
  let members = 0;
  for (let i = first; i < end; i += 1) {
    if (mask[i] !== 1) continue;
    sum += values[i];
    members += 1;
  }
  if (members === 0) return null;
  const span = end - first;
  const total = sum * step * (span / members);
  const width = 2 * Math.round(Math.max(averaging, 0.25) / step / 2) + 1;
  const smooth = slidingMean(values.subarray(first, end), mask.subarray(first, end), width);
  let peak = -Infinity;
  const edge = Math.min(width >> 1, (span - 1) >> 1);
  for (let i = edge; i < span - edge; i += 1) if (smooth.valid[i] === 1 && smooth.values[i] > peak) peak = smooth.values[i];
  const mean = total / Math.max(to - from, step);
  return { mean, peak: peak === -Infinity ? mean : peak, total };
}
