import { createSortedWindow, insertInto, removeFrom } from './sorted-window.ts';

/** What stands beyond the ends: nothing (the window shrinks), the end value repeated, or zeros. */
export type Edge = 'shrink' | 'nearest' | 'zero';

/**
 * Order statistic at `share` (0..1) over a centred window of `width` samples (odd): the value of rank floor(share * size),
 * as the rank filters of scipy take it; for share 0.5 and odd windows the median. For signals without gaps: where there
 * are some, use slidingMedian with a mask. Cost: length times window for the shifts, quick up to some hundreds.
 */
export function slidingQuantile(values: Float64Array, width: number, share: number, edge: Edge): Float64Array {
  const count = values.length;
  const half = (width - 1) >> 1;
  const window = createSortedWindow(width + 1);
  const at = (i: number): number | null => {
    if (i >= 0 && i < count) return values[i];
    if (edge === 'shrink') return null;
    if (edge === 'zero') return 0;
    return i < 0 ? values[0] : values[count - 1];
  };
  const out = new Float64Array(count);
  for (let i = -half; i < half; i += 1) enter(i);
  for (let i = 0; i < count; i += 1) {
    enter(i + half);
    const rank = Math.min(window.size - 1, Math.floor(share * window.size));
    const evenMedian = share === 0.5 && window.size % 2 === 0;
    out[i] = evenMedian ? (window.sorted[rank - 1] + window.sorted[rank]) / 2 : window.sorted[rank];
    const leaving = at(i - half);
    if (leaving !== null) removeFrom(window, leaving);
  }
  return out;

  function enter(i: number): void {
    const value = at(i);
    if (value !== null) insertInto(window, value);
  }
}
