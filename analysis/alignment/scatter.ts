import { madInPlace, NORMAL_MAD } from '../signal/mad.ts';
import { medianInPlace } from '../signal/median.ts';
import { solveToeplitz } from '../signal/solve-toeplitz.ts';
import { someOf } from './some-of.ts';
import type { Laid } from './texture-bands.ts';
import { modulo } from '../signal/modulo.ts';

/** A reference signal as the scan's bins meet it. */
export function layOn(places: Float64Array, around: boolean, { values, seen }: Laid): Laid {
  const out = { values: new Float64Array(places.length), seen: new Uint8Array(places.length) };
  const size = values.length;
  for (let i = 0; i < places.length; i += 1) {
    let low = Math.floor(places[i]);
    const share = places[i] - low;
    let high = low + 1;
    if (around) {
      low = modulo(low, size);
      high = (low + 1) % size;
    } else if (low < 0 || high >= size) continue;
    if (seen[low] === 0 || seen[high] === 0) continue;
    out.values[i] = values[low] + share * (values[high] - values[low]);
    out.seen[i] = 1;
  }
  return out;
}

/** What is left of a signal without `gain` times the other that is laid on it, where `both` were seen; `power` is the mean square of the other. */
export interface Scatter {
  readonly gain: number;
  readonly power: number;
  readonly scatter: Float64Array;
  readonly both: Uint8Array;
}

/** How a signal follows another; the arrays of `laid` are used up for the result. Null where too little of both was seen. */
export function scatterOf({ values: own, seen }: Laid, laid: Laid, eitherSign: boolean): Scatter | null {
  const { values: scatter, seen: both } = laid;
  let products = 0, squares = 0, count = 0;
  for (let i = 0; i < own.length; i += 1) {
    both[i] &= seen[i];
    if (both[i] === 0) continue;
    products += own[i] * scatter[i];
    squares += scatter[i] * scatter[i];
    count += 1;
  }
  if (count < 50 || !(squares > 0)) return null;
  const gain = eitherSign ? products / squares : Math.max(0, products / squares);
  for (let i = 0; i < own.length; i += 1) scatter[i] = both[i] === 1 ? own[i] - gain * scatter[i] : 0;
  return { gain, power: squares / count, scatter, both };
}

const ORDER = 6;

/** The filter that leaves of each bin what those before it do not foretell (robust autocorrelation); null where nothing scatters. */
export function whiteningFilter(scatter: Float64Array, both: Uint8Array): Float64Array | null {
  const correlation = autocorrelation(scatter, both, ORDER);
  const column = correlation.slice(0, ORDER);
  column[0] *= 1.001;
  const foretold = solveToeplitz(column, correlation.subarray(1));
  return foretold && Float64Array.of(1, ...foretold.map((share) => -share));
}

/** So many products settle a correlation, and so many values the scale that bounds them. */
const ENOUGH = 20_000;

/** At lags 0, `every`, 2 `every`, ... `lags` of them after the first, large scatter bounded. */
function autocorrelation(scatter: Float64Array, both: Uint8Array, lags: number, every = 1): Float64Array {
  const bounded = boundedScatter(scatter, both);
  const out = new Float64Array(lags + 1);
  const stride = Math.max(1, Math.floor(bounded.length / ENOUGH));
  for (let k = 0; k <= lags; k += 1) {
    const apart = k * every;
    let sum = 0, count = 0;
    for (let i = apart; i < bounded.length; i += stride) {
      sum += bounded[i] * bounded[i - apart];
      count += both[i] & both[i - apart];
    }
    out[k] = count > 0 ? sum / count : 0;
  }
  return out;
}

function boundedScatter(scatter: Float64Array, both: Uint8Array): Float64Array {
  const some = someOf(scatter, both, ENOUGH);
  const size = 3 * NORMAL_MAD * madInPlace(some, 0, some.length) || 1;
  const bounded = new Float64Array(scatter.length);
  for (let i = 0; i < scatter.length; i += 1) {
    const value = scatter[i];
    bounded[i] = value > size ? size : value < -size ? -size : value;
  }
  return bounded;
}

/** A filtered bin counts as seen where all bins that it is made of are. */
export function filtered({ values, seen }: Laid, filter: Float64Array, around: boolean): Laid {
  const size = values.length;
  const before = filter.length - 1;
  const out = { values: new Float64Array(size), seen: new Uint8Array(size) };
  let inRow = 0;
  if (around) for (let i = size - before; i < size; i += 1) inRow = seen[i] === 1 ? inRow + 1 : 0;
  for (let i = 0; i < size; i += 1) {
    inRow = seen[i] === 1 ? inRow + 1 : 0;
    if (inRow <= before) continue;
    let sum = 0;
    if (i >= before) for (let k = 0; k <= before; k += 1) sum += filter[k] * values[i - k];
    else for (let k = 0; k <= before; k += 1) sum += filter[k] * values[i < k ? i - k + size : i - k];
    out.values[i] = sum;
    out.seen[i] = 1;
  }
  return out;
}

/** Square of the robust scale over `width` bins, drawn between blocks, never far below the rope's usual one. */
export function localVariance(scatter: Float64Array, both: Uint8Array, width: number): Float64Array {
  const blocks = Math.max(1, Math.ceil(scatter.length / width));
  const scales = new Float64Array(blocks).fill(Number.NaN);
  const scratch = new Float64Array(width);
  for (let b = 0; b < blocks; b += 1) {
    let count = 0;
    for (let i = b * width; i < Math.min(scatter.length, (b + 1) * width); i += 1) if (both[i] === 1) scratch[count++] = Math.abs(scatter[i]);
    if (count >= width / 4) scales[b] = NORMAL_MAD * medianInPlace(scratch, 0, count);
  }
  const known = scales.filter((value) => value > 0);
  const usual = known.length > 0 ? medianInPlace(known.slice(), 0, known.length) : 1;
  const level = scales.map((value) => (value > 0 ? value : usual));
  const out = new Float64Array(scatter.length);
  for (let b = 0; b <= blocks; b += 1) {
    // From the middle of one block to the middle of the next.
    const between = Math.max(0.7 * usual, level[Math.max(0, b - 1)], level[Math.min(blocks - 1, b)]);
    out.fill(between * between, Math.max(0, Math.ceil((b - 0.5) * width)), Math.ceil((b + 0.5) * width));
  }
  return out;
}

/** Sum of all correlation that is left over `bins` to either side: so many bins say one independent thing. */
export function leftCorrelation(scatter: Float64Array, both: Uint8Array, bins: number): number {
  const every = Math.max(1, Math.floor(bins / LAGS));
  const correlation = autocorrelation(scatter, both, Math.floor(bins / every), every);
  let sum = 1;
  // Between the lags that are looked at the correlation is taken as straight.
  for (let k = 1; k < correlation.length; k += 1) sum += (2 * every * correlation[k]) / (correlation[0] || 1);
  return Math.max(1, sum + (every - 1));
}

/** So many lags show the course of a correlation well enough. */
const LAGS = 20;
