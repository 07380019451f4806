import { createSortedWindow, insertInto, removeFrom } from './sorted-window.ts';

/**
 * Median over a centred window of `width` samples (odd) of valid samples only. Where the window holds none the result is
 * masked: a gap stays a gap. Windows shrink at the ends. Cost: length times window for shifts, quick up to some hundreds.
 */
export function slidingMedian(values: Float64Array, valid: Uint8Array, width: number): { values: Float64Array; valid: Uint8Array } {
  const count = values.length;
  const half = (width - 1) >> 1;
  const window = createSortedWindow(width + 1);
  const medians = new Float64Array(count);
  const known = new Uint8Array(count);
  for (let i = -half; i < count; i += 1) {
    const enters = i + half;
    if (enters < count && valid[enters] === 1) insertInto(window, values[enters]);
    const leaves = i - half - 1;
    if (leaves >= 0 && valid[leaves] === 1) removeFrom(window, values[leaves]);
    if (i < 0 || window.size === 0) continue;
    const upper = window.size >> 1;
    medians[i] = window.size % 2 === 1 ? window.sorted[upper] : (window.sorted[upper - 1] + window.sorted[upper]) / 2;
    known[i] = 1;
  }
  return { values: medians, valid: known };
}
