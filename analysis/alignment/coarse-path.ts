import { correlatorFor } from './correlate-window.ts';
import type { Character } from './character.ts';
import { COARSE_BINS_ALIKE, textureEvidence } from './likelihood.ts';
import type { AlignmentParameters } from './parameters.ts';

/** The best way of one scan through its reference: for the centre of each window (bins of the scan) the lag in bins. */
export interface CoarsePath {
  readonly centres: readonly number[];
  readonly lags: readonly number[];
  /** Total evidence of the path, nats. */
  readonly evidence: number;
}

/**
 * Finds start and scale at once: the evidence of `windows` windows spread over the scan at every lag, and the path over
 * them that gathers most of it while the lag changes no faster than scale errors and slips allow (dynamic programming).
 * A window costs two transforms of the reference's length and a pass over all lags, however far the next one is.
 */
export function coarsePath(scan: Character, reference: Character, around: boolean, lagPrior: (lag: number) => number, windows: number, parameters: AlignmentParameters): CoarsePath {
  const width = coarseWidth(scan, parameters);
  const starts = windowStarts(scan.length, width, windows);
  const lowest = around ? 0 : -scan.length + 1;
  const count = around ? reference.length : scan.length + reference.length - 1;
  let best: Float64Array = Float64Array.from({ length: count }, (_, l) => lagPrior((lowest + l) * scan.bin));
  const from: Int32Array[] = [];
  const evidenceOf = evidenceAtAllLags(scan, reference, width, lowest, count, around);
  starts.forEach((start, w) => {
    const evidence = evidenceOf(start, start + width);
    const { free, slip } = lagChange((start - (starts[w - 1] ?? start)) * scan.bin, scan.bin, parameters);
    const step = bestPredecessors(best, free, slip, parameters.slipCost, around);
    from.push(step.index);
    for (let l = 0; l < count; l += 1) evidence[l] += step.value[l];
    best = evidence;
  });
  return trace(starts.map((start) => start + width / 2), from, best, lowest);
}

export function coarseWidth(scan: Character, parameters: AlignmentParameters): number {
  return Math.min(scan.length, Math.max(8, Math.round(parameters.coarseWindow / scan.bin)));
}

/** How many windows cover a scan half over half. */
export function allWindows(scan: Character, parameters: AlignmentParameters): number {
  const hop = Math.max(1, Math.round(parameters.coarseHop / scan.bin));
  return Math.max(1, Math.ceil((scan.length - coarseWidth(scan, parameters)) / hop) + 1);
}

/** First bins of windows spread evenly from the first to the last. */
export function windowStarts(length: number, width: number, windows: number): number[] {
  if (windows < 2 || length <= width) return [0];
  return Array.from({ length: windows }, (_, w) => Math.round((w * (length - width)) / (windows - 1)));
}

/** Bins by which the lag may change over `distance` metres by scale alone, and with slips. */
export function lagChange(distance: number, bin: number, parameters: AlignmentParameters): { free: number; slip: number } {
  const free = Math.ceil((parameters.maxSlope * distance) / bin) + 1;
  return { free, slip: free + Math.ceil((parameters.maxSlip * (1 + Math.floor(distance / SLIP_DISTANCE))) / bin) };
}

/** One more slip is allowed for every so many metres between two windows. */
const SLIP_DISTANCE = 150;

type WindowEvidence = (from: number, end: number) => Float64Array;

function evidenceAtAllLags(scan: Character, reference: Character, width: number, lowest: number, count: number, around: boolean): WindowEvidence {
  const squares = runningSquares(reference);
  const textureProducts = correlatorFor(reference.texture, width, around);
  const eventProducts = correlatorFor(reference.events, width, around);
  const size = reference.length;
  return (from, end) => {
    const products = textureProducts(scan.texture, from, end);
    const events = eventProducts(scan.events, from, end);
    let tt = 0;
    for (let i = from; i < end; i += 1) tt += scan.texture[i] ** 2;
    const evidence = new Float64Array(count);
    for (let l = 0; l < count; l += 1) {
      const first = from + lowest + l;
      const last = first + end - from;
      const overlap = around ? end - from : Math.min(size, last) - Math.max(0, first);
      if (overlap * 2 < end - from) continue;
      const rr = around ? squares.around(first, last) : squares.between(Math.max(0, first), Math.min(size, last));
      const at = around ? ((first % size) + size) % size : first;
      evidence[l] = textureEvidence(tt, rr, products(at), overlap) / COARSE_BINS_ALIKE + COARSE_EVENT_WEIGHT * events(at);
    }
    return evidence;
  };
}

/** Evidence per squared deviation of an LF event in coarse bins, where two events meet by chance more easily. */
const COARSE_EVENT_WEIGHT = 0.05;

function runningSquares(reference: Character): { between(from: number, end: number): number; around(from: number, end: number): number } {
  const size = reference.length;
  const sums = new Float64Array(size + 1);
  for (let i = 0; i < size; i += 1) sums[i + 1] = sums[i] + reference.texture[i] ** 2;
  const upTo = (i: number): number => Math.floor(i / size) * sums[size] + sums[((i % size) + size) % size];
  return { between: (from, end) => sums[end] - sums[from], around: (from, end) => upTo(end) - upTo(from) };
}

/** For every lag the best lag of the window before: near ones are free, farther ones cost a slip. Linear in lags. */
function bestPredecessors(best: Float64Array, free: number, slip: number, cost: number, around: boolean): { value: Float64Array; index: Int32Array } {
  const near = slidingMost(best, free, around);
  const far = slidingMost(best, slip, around);
  const value = new Float64Array(best.length);
  const index = new Int32Array(best.length);
  for (let l = 0; l < best.length; l += 1) {
    const slipped = best[far[l]] - cost > best[near[l]];
    // Among equals the lag stays: where a window says nothing the path must not wander.
    index[l] = slipped ? far[l] : best[l] >= best[near[l]] ? l : near[l];
    value[l] = best[index[l]] - (slipped ? cost : 0);
  }
  return { value, index };
}

/** Index of the largest value within `reach` of each place, by a queue of falling candidates. */
function slidingMost(values: Float64Array, reach: number, around: boolean): Int32Array {
  const count = values.length;
  const half = Math.min(reach, around ? (count - 1) >> 1 : count - 1);
  const at = (i: number): number => (i < 0 ? i + count : i >= count ? i - count : i);
  const [first, end] = around ? [-half, count + half] : [0, count];
  const queue = new Int32Array(end - first);
  const out = new Int32Array(count);
  let head = 0;
  let tail = 0;
  for (let i = first; i < end + half; i += 1) {
    if (i < end) {
      while (tail > head && values[at(queue[tail - 1])] <= values[at(i)]) tail -= 1;
      queue[tail++] = i;
    }
    const centre = i - half;
    if (centre < 0) continue;
    if (centre >= count) break;
    while (queue[head] < centre - half) head += 1;
    out[centre] = at(queue[head]);
  }
  return out;
}

function trace(centres: number[], from: Int32Array[], best: Float64Array, lowest: number): CoarsePath {
  let at = 0;
  for (let l = 1; l < best.length; l += 1) if (best[l] > best[at]) at = l;
  const evidence = best[at];
  const lags = new Array<number>(centres.length);
  for (let w = centres.length - 1; w >= 0; w -= 1) {
    lags[w] = lowest + at;
    at = from[w][at];
  }
  return { centres, lags: unwrapLags(lags, best.length), evidence };
}

/** On a loop a lag just below zero is shown near the loop's end; neighbours are brought together again. */
function unwrapLags(lags: number[], count: number): number[] {
  for (let w = 1; w < lags.length; w += 1) {
    while (lags[w] - lags[w - 1] > count / 2) lags[w] -= count;
    while (lags[w] - lags[w - 1] < -count / 2) lags[w] += count;
  }
  return lags;
}
