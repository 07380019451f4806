/**
 * The k-th smallest (from 0) of values[from..end), found by partitioning that stretch in place: order within it is lost.
 * Linear time on average. The values must be numbers; a NaN would break the order.
 */
export function selectInPlace(values: Float64Array, k: number, from = 0, end = values.length): number {
  let low = from;
  let high = end - 1;
  const target = from + k;
  while (high > low) {
    // The median of three as pivot keeps sorted and reversed stretches from costing quadratic time.
    const middle = (low + high) >> 1;
    if (values[middle] < values[low]) swap(values, middle, low);
    if (values[high] < values[low]) swap(values, high, low);
    if (values[high] < values[middle]) swap(values, high, middle);
    const pivot = values[middle];
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i] < pivot) i += 1;
      while (values[j] > pivot) j -= 1;
      if (i <= j) {
        swap(values, i, j);
        i += 1;
        j -= 1;
      }
    }
    if (target <= j) high = j;
    else if (target >= i) low = i;
    else return values[target];
  }
  return values[target];
}

function swap(values: Float64Array, a: number, b: number): void {
  const held = values[a];
  values[a] = values[b];
  values[b] = held;
}
