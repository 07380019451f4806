import type { Along } from './judged.ts';

/** Enough for a screen and small enough to send; each bucket keeps its worst value. */
const BUCKETS = 1500;

/**
 * The worst value in each of at most 1500 equal lengths of the rope. A bucket is null where none of its own samples was inspected
 * or no window there could be judged. `seen` is the running count of inspected samples; `valueAt` gives NaN where there is none.
 */
export function bucketed(start: number, step: number, samples: number, seen: Float64Array, valueAt: (index: number) => number): Along {
  const size = Math.max(1, Math.ceil(samples / BUCKETS));
  const positions: number[] = [];
  const values: (number | null)[] = [];
  for (let from = 0; from < samples; from += size) {
    const end = Math.min(samples, from + size);
    positions.push(start + ((from + end - 1) / 2) * step);
    let worst = NaN;
    if (seen[end] > seen[from]) {
      for (let i = from; i < end; i += 1) {
        const value = valueAt(i);
        if (!(value <= worst)) worst = Number.isNaN(value) ? worst : value;
      }
    }
    values.push(Number.isNaN(worst) ? null : worst);
  }
  return { positions, values };
}
