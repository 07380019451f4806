import { correlatorFor } from './correlate-window.ts';
import type { Character } from './character.ts';
import { textureEvidence } from './likelihood.ts';
import type { AlignmentParameters } from './parameters.ts';

/** The best way of one scan through its reference: for the centre of each window (bins of the scan) the lag in bins. */
export interface CoarsePath {
  readonly centres: readonly number[];
  readonly lags: readonly number[];
  /** Total evidence of the path, nats. */
  readonly evidence: number;
}

/**
 * Finds start and scale at once: the evidence of every window at every lag, and the path over windows that gathers most of
 * it while the lag changes no faster than scale errors and slips allow (dynamic programming, linear in windows times lags).
 */
export function coarsePath(scan: Character, reference: Character, around: boolean, lagPrior: (lag: number) => number, parameters: AlignmentParameters): CoarsePath {
  const width = Math.min(scan.length, Math.max(8, Math.round(parameters.coarseWindow / scan.bin)));
  const hop = Math.max(1, Math.min(width, Math.round(parameters.coarseHop / scan.bin)));
  const starts: number[] = [];
  for (let from = 0; from + width <= scan.length; from += hop) starts.push(from);
  if (starts.length > 0 && starts[starts.length - 1] + width < scan.length) starts.push(scan.length - width);
  const lowest = around ? 0 : -scan.length + 1;
  const count = around ? reference.length : scan.length + reference.length - 1;
  const free = Math.ceil((parameters.maxSlope * hop * scan.bin) / scan.bin) + 1;
  const slip = free + Math.ceil(parameters.maxSlip / scan.bin);
  let best = Float64Array.from({ length: count }, (_, l) => lagPrior((lowest + l) * scan.bin));
  const from: Int32Array[] = [];
  const evidenceOf = evidenceAtAllLags(scan, reference, width, lowest, count, around);
  for (const start of starts) {
    const evidence = evidenceOf(start, start + width);
    const step = bestPredecessors(best, free, slip, parameters.slipCost, around);
    from.push(step.index);
    best = step.value.map((value, l) => value + evidence[l]);
  }
  return trace(starts.map((start) => start + width / 2), from, best, lowest);
}

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
      // Neighbouring bins of LMA are not independent (the channel averages 0.3 m): a third of the count is.
      evidence[l] = textureEvidence(tt, rr, products(at), overlap) / 3 + COARSE_EVENT_WEIGHT * events(at);
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

/** For every lag the best lag of the window before: near ones are free, farther ones cost a slip. */
function bestPredecessors(best: Float64Array, free: number, slip: number, cost: number, around: boolean): { value: Float64Array; index: Int32Array } {
  const count = best.length;
  const value = new Float64Array(count);
  const index = new Int32Array(count);
  for (let l = 0; l < count; l += 1) {
    let most = Number.NEGATIVE_INFINITY;
    let chosen = l;
    for (let d = -slip; d <= slip; d += 1) {
      let k = l + d;
      if (around) k = ((k % count) + count) % count;
      else if (k < 0 || k >= count) continue;
      // The tiny slope prefers the smaller change among equals.
      const candidate = best[k] - (Math.abs(d) > free ? cost : 0) - 0.05 * Math.abs(d);
      if (candidate > most) {
        most = candidate;
        chosen = k;
      }
    }
    value[l] = most;
    index[l] = chosen;
  }
  return { value, index };
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
