import type { Character } from './character.ts';
import { evidenceOfWindows, placesOf } from './coarse-reference.ts';
import type { CoarseReference } from './coarse-reference.ts';
import type { AlignmentParameters } from './parameters.ts';
import { modulo } from '../signal/modulo.ts';

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
 * Two windows cost two transforms of the reference's length and passes over all lags, however far the next ones are.
 */
export function coarsePath(scan: Character, reference: CoarseReference, lagPrior: (lag: number) => number, windows: number, parameters: AlignmentParameters): CoarsePath {
  const { around, width, character: { length } } = reference;
  const starts = windowStarts(scan.length, width, windows);
  const lowest = around ? 0 : -scan.length + 1;
  const count = around ? length : scan.length + length - 1;
  const change = (w: number): LagChange => lagChange((starts[w] - starts[w - 1]) * scan.bin, scan.bin, parameters);
  const evidence = evidenceOfWindows(scan, reference, starts);
  const best: Float64Array[] = [];
  for (let w = 0; w < starts.length; w += 1) {
    const carried = w === 0 ? new Float64Array(count) : carry(best[w - 1], change(w), parameters.slipCost, around);
    if (w === 0) for (let l = 0; l < count; l += 1) carried[l] = lagPrior((lowest + l) * scan.bin);
    addAt(carried, evidence[w], placesOf(reference).low - starts[w] - lowest, around);
    best.push(carried);
  }
  return trace(starts.map((start) => start + width / 2), best, lowest, (w, at) => predecessor(best[w - 1], at, change(w), parameters.slipCost, around));
}

/** Adds a row to the lags from `first` on. */
function addAt(lags: Float64Array, row: Float64Array, first: number, around: boolean): void {
  if (!around) {
    for (let k = 0; k < row.length; k += 1) lags[first + k] += row[k];
    return;
  }
  let l = modulo(first, lags.length);
  for (let k = 0; k < row.length; k += 1) {
    lags[l] += row[k];
    l = l + 1 === lags.length ? 0 : l + 1;
  }
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

export interface LagChange { readonly free: number; readonly slip: number }

/** Bins by which the lag may change over `distance` metres by scale alone, and with slips. */
export function lagChange(distance: number, bin: number, parameters: AlignmentParameters): LagChange {
  const free = Math.ceil((parameters.maxSlope * distance) / bin) + 1;
  return { free, slip: free + Math.ceil((parameters.maxSlip * (1 + Math.floor(distance / SLIP_DISTANCE))) / bin) };
}

/** One more slip is allowed for every so many metres between two windows. */
const SLIP_DISTANCE = 150;

/** For every lag the most that a lag of the window before brings to it: near ones are free, farther ones cost a slip. Linear in lags. */
function carry(best: Float64Array, { free, slip }: LagChange, cost: number, around: boolean): Float64Array {
  const out = new Float64Array(best.length).fill(Number.NEGATIVE_INFINITY);
  raiseToMost(out, best, free, 0, around);
  raiseToMost(out, best, slip, cost, around);
  return out;
}

/** The lag that `carry` came from. Among equals the lag stays: where a window says nothing the path must not wander. */
function predecessor(best: Float64Array, at: number, { free, slip }: LagChange, cost: number, around: boolean): number {
  const near = mostWithin(best, at, free, around);
  const far = mostWithin(best, at, slip, around);
  return best[far] - cost > best[near] ? far : near;
}

function mostWithin(best: Float64Array, at: number, reach: number, around: boolean): number {
  let most = at;
  for (let k = at - reach; k <= at + reach; k += 1) {
    const l = around ? modulo(k, best.length) : k;
    if (best[l] > best[most]) most = l;
  }
  return most;
}

/**
 * Raises each place to the largest value within `reach` of it less `cost`. Cut into stretches as long as the window, each window
 * is the end of one stretch and the beginning of the next (van Herk 1992; Gil and Werman 1993): three comparisons a place,
 * whatever the reach.
 */
function raiseToMost(out: Float64Array, values: Float64Array, reach: number, cost: number, around: boolean): void {
  const count = values.length;
  const half = Math.min(reach, around ? (count - 1) >> 1 : count - 1);
  const window = 2 * half + 1;
  const valueAt = (i: number): number => (i >= 0 && i < count ? values[i] : around ? values[i < 0 ? i + count : i - count] : Number.NEGATIVE_INFINITY);
  const ahead = new Float64Array(window);
  for (let from = 0; from < count; from += window) {
    let most = Number.NEGATIVE_INFINITY;
    for (let k = window - 1; k >= 0; k -= 1) {
      most = Math.max(most, valueAt(from + k - half));
      ahead[k] = most;
    }
    let behind = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < window && from + k < count; k += 1) {
      // The window of this place reaches k places into the next stretch.
      if (k > 0) behind = Math.max(behind, valueAt(from + k + half));
      out[from + k] = Math.max(out[from + k], Math.max(ahead[k], behind) - cost);
    }
  }
}

function trace(centres: number[], best: readonly Float64Array[], lowest: number, before: (w: number, at: number) => number): CoarsePath {
  const last = best[centres.length - 1];
  let at = 0;
  for (let l = 1; l < last.length; l += 1) if (last[l] > last[at]) at = l;
  const lags = new Array<number>(centres.length);
  for (let w = centres.length - 1, l = at; w >= 0; w -= 1) {
    lags[w] = lowest + l;
    if (w > 0) l = before(w, l);
  }
  return { centres, lags: unwrapLags(lags, last.length), evidence: last[at] };
}

/** On a loop a lag just below zero is shown near the loop's end; neighbours are brought together again. */
function unwrapLags(lags: number[], count: number): number[] {
  for (let w = 1; w < lags.length; w += 1) {
    while (lags[w] - lags[w - 1] > count / 2) lags[w] -= count;
    while (lags[w] - lags[w - 1] < -count / 2) lags[w] += count;
  }
  return lags;
}
