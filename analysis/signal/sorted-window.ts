/** A sorted window of numbers with insertion and removal by shifting: quickest for windows up to some hundreds. */
export interface SortedWindow {
  readonly sorted: Float64Array;
  size: number;
}

export function createSortedWindow(capacity: number): SortedWindow {
  return { sorted: new Float64Array(capacity), size: 0 };
}

/** First place whose value is at least `value`. */
function placeOf(window: SortedWindow, value: number): number {
  let low = 0;
  let high = window.size;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (window.sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

export function insertInto(window: SortedWindow, value: number): void {
  const place = placeOf(window, value);
  window.sorted.copyWithin(place + 1, place, window.size);
  window.sorted[place] = value;
  window.size += 1;
}

/** Removes one occurrence of a value that was inserted. */
export function removeFrom(window: SortedWindow, value: number): void {
  const place = placeOf(window, value);
  window.sorted.copyWithin(place, place + 1, window.size);
  window.size -= 1;
}
