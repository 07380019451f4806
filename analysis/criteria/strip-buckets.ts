import type { Along } from './judged.ts';

/** Enough for a screen and small enough to send; each bucket keeps its worst value. */
const BUCKETS = 1500;

export interface WindowValues {
  readonly start: number;
  readonly step: number;
  readonly samples: number;
  /** Running count of inspected samples. */
  readonly seen: Float64Array;
  /** One value per window, by its first sample; negative where the window cannot be judged. */
  readonly values: Float64Array;
  /** Samples from the first to the middle of a window. */
  readonly offset: number;
  readonly loop: boolean;
}

/**
 * The worst value in each of at most 1500 equal lengths of the rope. A bucket is null where none of its own samples was inspected
 * or no window there could be judged. Towards an open end the last whole window stands for the rest.
 */
export function bucketed({ start, step, samples, seen, values, offset, loop }: WindowValues): Along {
  const size = Math.max(1, Math.ceil(samples / BUCKETS));
  const positions: number[] = [];
  const worstOf: (number | null)[] = [];
  const last = values.length - 1;
  for (let from = 0; from < samples; from += size) {
    const end = Math.min(samples, from + size);
    positions.push(start + ((from + end - 1) / 2) * step);
    let worst = -1;
    if (seen[end] > seen[from]) {
      for (let i = from; i < end; i += 1) {
        const at = i - offset;
        const value = values[loop ? (at + samples) % samples : at < 0 ? 0 : at > last ? last : at];
        if (value > worst) worst = value;
      }
    }
    worstOf.push(worst < 0 ? null : worst);
  }
  return { positions, values: worstOf };
}
