import type { Segmentation } from './change-points.ts';

/**
 * What changePoints finds with weightedErrorCost, by functional pruning (Maidstone, Hocking, Rigaill and Fearnhead 2017): for every
 * level that the present segment may have, only the start that is cheapest there is kept, so that long lengths without
 * change cost no more than short ones. Weights are inverse variances, 0 where nothing was measured. Exact; some ten
 * operations a value. `penalty` is added for every change.
 */
export function levelChanges(values: ArrayLike<number>, weights: ArrayLike<number>, penalty: number): Segmentation {
  const count = values.length;
  const sums = sumsOf(values, weights);
  const best = new Float64Array(count + 1);
  const previous = new Int32Array(count + 1);
  best[0] = -penalty;
  let ranges: Ranges = { count: 0, start: new Int32Array(16), from: new Float64Array(17) };
  let spare: Ranges = { count: 0, start: new Int32Array(16), from: new Float64Array(17) };
  for (let end = 1; end <= count; end += 1) {
    [ranges, spare] = [beginAt(ranges, spare, end - 1, best, sums), ranges];
    best[end] = Infinity;
    for (let k = 0; k < ranges.count; k += 1) {
      const start = ranges.start[k];
      const cost = best[start] + penalty + least(sums, start, end, ranges.from[k], ranges.from[k + 1]);
      if (cost >= best[end]) continue;
      best[end] = cost;
      previous[end] = start;
    }
  }
  const starts: number[] = [];
  for (let end = previous[count]; end > 0; end = previous[end]) starts.push(end);
  return { starts: starts.reverse(), objective: best[count] };
}

/** Levels from[k] to from[k + 1] for which the present segment is cheapest when it begins at start[k]. */
interface Ranges { count: number; start: Int32Array; from: Float64Array }

interface Sums { readonly weight: Float64Array; readonly first: Float64Array; readonly second: Float64Array; readonly low: number; readonly high: number }

function sumsOf(values: ArrayLike<number>, weights: ArrayLike<number>): Sums {
  const count = values.length;
  const sums = { weight: new Float64Array(count + 1), first: new Float64Array(count + 1), second: new Float64Array(count + 1), low: Infinity, high: -Infinity };
  for (let i = 0; i < count; i += 1) {
    const weight = weights[i] > 0 ? weights[i] : 0;
    const value = weight > 0 ? values[i] : 0;
    if (weight > 0) {
      sums.low = Math.min(sums.low, value);
      sums.high = Math.max(sums.high, value);
    }
    sums.weight[i + 1] = sums.weight[i] + weight;
    sums.first[i + 1] = sums.first[i] + weight * value;
    sums.second[i + 1] = sums.second[i] + weight * value * value;
  }
  return sums.low <= sums.high ? sums : { ...sums, low: 0, high: 0 };
}

/** Least squared error of the values from `start` to `end` about a level between two bounds. */
function least({ weight, first, second }: Sums, start: number, end: number, from: number, to: number): number {
  const mass = weight[end] - weight[start];
  if (mass <= 0) return 0;
  const sum = first[end] - first[start];
  const level = Math.min(to, Math.max(from, sum / mass));
  return Math.max(0, second[end] - second[start] - 2 * level * sum + mass * level * level);
}

/** The ranges when a segment may also begin at `at`: there it costs best[at] and the penalty whatever its level. Written into `into`. */
function beginAt(ranges: Ranges, into: Ranges, at: number, best: Float64Array, sums: Sums): Ranges {
  const out = roomFor(into, 3 * ranges.count + 1);
  out.count = 0;
  if (ranges.count === 0) {
    append(out, at, sums.low, sums.high);
    return out;
  }
  for (let k = 0; k < ranges.count; k += 1) {
    const start = ranges.start[k];
    const from = ranges.from[k];
    const to = ranges.from[k + 1];
    const mass = sums.weight[at] - sums.weight[start];
    const sum = sums.first[at] - sums.first[start];
    // Levels for which the older start is not dearer: where its parabola lies below the new constant.
    const room = best[at] - best[start] - (sums.second[at] - sums.second[start]);
    const middle = mass > 0 ? sum / mass : 0;
    const square = mass > 0 ? room / mass + middle * middle : room >= 0 ? Infinity : -1;
    const half = square >= 0 ? Math.sqrt(square) : -1;
    const left = half < 0 ? to : Math.max(from, Math.min(to, middle - half));
    const right = half < 0 ? to : Math.max(from, Math.min(to, middle + half));
    if (left > from || half < 0) append(out, at, from, left);
    if (right > left) append(out, start, left, right);
    if (to > right) append(out, at, right, to);
  }
  return out;
}

function append(ranges: Ranges, start: number, from: number, to: number): void {
  if (ranges.count > 0 && ranges.start[ranges.count - 1] === start) {
    ranges.from[ranges.count] = to;
    return;
  }
  ranges.start[ranges.count] = start;
  ranges.from[ranges.count] = from;
  ranges.count += 1;
  ranges.from[ranges.count] = to;
}

function roomFor(ranges: Ranges, count: number): Ranges {
  return ranges.start.length >= count ? ranges : { count: 0, start: new Int32Array(2 * count), from: new Float64Array(2 * count + 1) };
}
