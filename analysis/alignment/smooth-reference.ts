import { solveToeplitz } from '../signal/solve-toeplitz.ts';
import { NORMAL_MAD, madInPlace } from '../signal/mad.ts';
import { layOn } from './scatter.ts';
import { someOf } from './some-of.ts';
import type { Laid } from './texture-bands.ts';

/** Bins to either side that a smoothed bin is made of. */
const TAPS = 4;
/** So many bins settle a correlation; they are taken in blocks of this many, evenly spread. */
const ENOUGH = 16_000;
const BLOCK = 400;
/** Values are held at so many deviations: a broken wire must not say what texture is like, and a beat of it may. */
const HELD = 12;

/**
 * The reference as it is best expected in the scan: a reference is a scan itself, and its own noise, other than its texture,
 * does not repeat. Symmetric least-squares filter (Wiener 1949) from the reference's autocovariance and its covariance with
 * the scan where `places` lay the one on the other; null where it explains no more of the scan than it does of noise,
 * or follows it with the opposite sign where `eitherSign` is false.
 */
export function smoothReference(own: Laid, other: Laid, places: Float64Array, around: boolean, eitherSign: boolean): Laid | null {
  const pieces = spreadPieces(places.length);
  const laid = layOn(cut(places, pieces), around, other);
  const filter = wienerFilter(cutLaid(own, pieces), laid, cutLaid(other, spreadPieces(other.values.length)), pieces.whole);
  if (filter === null || (!eitherSign && !(filter[TAPS] > 0))) return null;
  const size = other.values.length;
  const padded = new Float64Array(size + 2 * TAPS);
  for (let i = 0; i < size; i += 1) if (other.seen[i] === 1) padded[i + TAPS] = other.values[i];
  if (around) {
    padded.copyWithin(0, size, size + TAPS);
    padded.copyWithin(size + TAPS, TAPS, 2 * TAPS);
  }
  return { values: symmetricSums(padded, filter, size), seen: other.seen };
}

function symmetricSums(padded: Float64Array, filter: Float64Array, size: number): Float64Array {
  const out = new Float64Array(size);
  const middle = filter[TAPS];
  for (let i = 0; i < size; i += 1) {
    let sum = middle * padded[i + TAPS];
    for (let k = 1; k <= TAPS; k += 1) sum += filter[TAPS + k] * (padded[i + TAPS - k] + padded[i + TAPS + k]);
    out[i] = sum;
  }
  return out;
}

/** Pieces of a signal, each `length` bins long, and how much longer the signal is than all of them. */
interface Pieces {
  readonly starts: readonly number[];
  readonly length: number;
  readonly whole: number;
}

/** A short signal whole; of a long one blocks that are enough of it, evenly spread. */
function spreadPieces(count: number): Pieces {
  const every = Math.floor(count / ENOUGH);
  if (every < 2) return { starts: [0], length: count, whole: 1 };
  return { starts: Array.from({ length: Math.floor(count / (every * BLOCK)) }, (_, k) => k * every * BLOCK), length: BLOCK, whole: every };
}

/** Pieces of a signal one after the other, with so many places between them that none meets the next. */
function cut<T extends Float64Array | Uint8Array>(signal: T, { starts, length }: Pieces): T {
  const out = new (signal.constructor as new (length: number) => T)(starts.length * (length + 2 * TAPS));
  starts.forEach((start, k) => out.set(signal.subarray(start, start + length), k * (length + 2 * TAPS)));
  return out;
}

const cutLaid = ({ values, seen }: Laid, pieces: Pieces): Laid => ({ values: cut(values, pieces), seen: cut(seen, pieces) });

/**
 * `laid` says what scan and reference share; the reference's own covariance is that of its bins as they are, since laying
 * them between bins has smoothed them already. `whole`: times that the scan is longer than what was cut from it.
 */
function wienerFilter(own: Laid, laid: Laid, other: Laid, whole: number): Float64Array | null {
  for (let i = 0; i < laid.seen.length; i += 1) laid.seen[i] &= own.seen[i];
  const [scan, shared, reference] = [held(own), held(laid), held(other)];
  const column = Float64Array.from({ length: 2 * TAPS + 1 }, (_, lag) => covariance(reference, reference, lag));
  if (!(column[0] > 0)) return null;
  // What is estimated from a limited length is not quite a covariance; a thousandth of white noise makes it one.
  column[0] *= 1.001;
  const half = Float64Array.from({ length: TAPS + 1 }, (_, lag) => (covariance(scan, shared, lag) + covariance(shared, scan, lag)) / 2);
  const right = Float64Array.from({ length: 2 * TAPS + 1 }, (_, k) => half[Math.abs(k - TAPS)]);
  const filter = solveToeplitz(column, right);
  return filter !== null && saysMore(filter, right, scan, shared, whole) ? filter : null;
}

/** Mean product of a signal and another `lag` bins on, where both were seen. */
function covariance(a: Laid, b: Laid, lag: number): number {
  let sum = 0, count = 0;
  for (let i = 0; i + lag < a.values.length; i += 1) {
    sum += a.values[i] * b.values[i + lag];
    count += a.seen[i] & b.seen[i + lag];
  }
  return count > 0 ? sum / count : 0;
}

/** Explained share times bins: a filter of five free weights explains as much of noise alone once in eight hundred times. */
const BY_CHANCE = 20;

/** Whether a filter explains more of the scan than chance would. */
function saysMore(filter: Float64Array, right: Float64Array, scan: Laid, shared: Laid, whole: number): boolean {
  let explained = 0;
  for (let k = 0; k < filter.length; k += 1) explained += filter[k] * right[k];
  let both = 0;
  for (let i = 0; i < scan.seen.length; i += 1) both += scan.seen[i] & shared.seen[i];
  return explained * both * whole >= BY_CHANCE * covariance(scan, scan, 0);
}

/** Within bounds, and 0 where nothing was seen. */
function held({ values, seen }: Laid): Laid {
  const some = someOf(values, seen, ENOUGH);
  const size = HELD * NORMAL_MAD * madInPlace(some, 0, some.length) || Infinity;
  const out = new Float64Array(values.length);
  for (let i = 0; i < out.length; i += 1) if (seen[i] === 1) out[i] = values[i] > size ? size : values[i] < -size ? -size : values[i];
  return { values: out, seen };
}
