import { quantileInPlace } from '../signal/quantile.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Stretches of samples [first, end) that a mask took away, and why. */
export interface MaskedStretch {
  readonly first: number;
  readonly end: number;
  readonly reason: 'empty' | 'frozen' | 'out-of-range' | 'mark' | 'spike';
}

/** Numbers that instruments write for `nothing measured`. */
const MARKS: readonly number[] = [-9999, -999, -99999, -999999, 9999, 99999, 999999, -9999.99, -999.99, -999.9, -999.25, 9999.99, -32768, 32767, -8888, -88888];

/** All marks are 888 or more in size; nearly all values are told apart by that alone. */
export function isMark(value: number): boolean {
  return (value >= 888 || value <= -888) && MARKS.includes(value);
}

/** Mask of one column: 1 where a number was measured. NaN is turned into mask here, and the value under it into 0. */
export function maskEmpty(values: Float64Array, count: number): Uint8Array {
  const valid = new Uint8Array(count);
  for (let i = 0; i < count; i += 1) {
    if (values[i] === values[i]) valid[i] = 1;
    else values[i] = 0;
  }
  return valid;
}

/** Takes away marks for missing values: one of the usual numbers, far outside all that the column holds otherwise, more than once or twice. */
export function maskMarks(values: Float64Array, valid: Uint8Array, count: number): void {
  const spread = robustExtent(values, valid, count);
  if (spread === null) return;
  for (let i = 0; i < count; i += 1) {
    if (valid[i] === 1 && isMark(values[i]) && Math.abs(values[i] - spread.middle) > 20 * spread.reach + 1e-9) valid[i] = 0;
  }
}

/** Takes away readings outside [low, high]. */
export function maskOutside(values: Float64Array, valid: Uint8Array, count: number, low: number, high: number): void {
  for (let i = 0; i < count; i += 1) if (values[i] < low || values[i] > high) valid[i] = 0;
}

/**
 * Takes away frozen stretches: equal values in a row over more length and more samples than the rounding of a live channel
 * makes likely. With share r of equal neighbours in the short runs of the file, a run of n equal values has odds r^(n-1).
 * Where a channel is written so coarsely that long equal runs are its habit, only one many times longer than the habit counts.
 */
export function maskFrozen(positions: Float64Array, values: Float64Array, valid: Uint8Array, count: number): void {
  const { frozenLength, frozenSamples, frozenOdds, frozenHabit } = THRESHOLDS;
  const lengths = new Float64Array(64);
  let runs = 0;
  let equal = 0;
  let pairs = 0;
  forRuns(values, valid, count, (first, end) => {
    const samples = end - first;
    runs += 1;
    lengths[Math.min(63, Math.ceil(2 * Math.log2(samples)))] += 1;
    pairs += 1;
    if (samples < frozenSamples.value) {
      equal += samples - 1;
      pairs += samples - 1;
    }
  });
  const share = pairs === 0 ? 0 : equal / pairs;
  const unlikely = share <= 0 ? 1 : share >= 1 ? Infinity : 1 + Math.log(frozenOdds.value) / Math.log(share);
  const longest = Math.max(frozenSamples.value, unlikely, frozenHabit.value * habitOf(lengths, runs));
  forRuns(values, valid, count, (first, end) => {
    const length = positions[end - 1] - positions[first];
    if (end - first === count || (length >= frozenLength.value && end - first >= longest)) valid.fill(0, first, end);
  });
}

/** Run length that nineteen in twenty runs do not pass, from counts in half octaves; 1 for a live channel in fine numbers. */
function habitOf(lengths: Float64Array, runs: number): number {
  let passed = 0;
  for (let i = 0; i < lengths.length; i += 1) {
    passed += lengths[i];
    if (passed >= 0.95 * runs) return 2 ** (i / 2);
  }
  return 1;
}

/** Where one channel was found frozen and the other stands still over the same samples, both are: the instrument stopped writing. */
export function maskFrozenTogether(values: Float64Array, valid: Uint8Array, otherValid: Uint8Array, count: number): void {
  const least = THRESHOLDS.frozenSamples.value;
  forRuns(values, valid, count, (first, end) => {
    if (end - first < least) return;
    let dead = 0;
    for (let i = first; i < end; i += 1) if (otherValid[i] === 0) dead += 1;
    if (dead < Math.max(least, 0.3 * (end - first))) return;
    for (let i = first; i < end; i += 1) if (otherValid[i] === 0) valid[i] = 0;
  });
}

/**
 * Takes away lone samples of LMA that stand off both neighbours in the same direction: an averaged channel cannot do that.
 * Returns how many.
 */
export function maskLoneSpikes(values: Float64Array, valid: Uint8Array, count: number): number {
  const scratch = new Float64Array(Math.min(count, 200_000) + 1);
  const stride = Math.max(1, Math.floor(count / 200_000));
  let taken = 0;
  for (let i = 1; i < count && taken < scratch.length; i += stride) if (valid[i] === 1 && valid[i - 1] === 1) scratch[taken++] = Math.abs(values[i] - values[i - 1]);
  if (taken < 10) return 0;
  const sigma = (quantileInPlace(scratch, 0.5, 0, taken) / 0.6745) / Math.SQRT2;
  const least = Math.max(THRESHOLDS.spikeLoss.value, THRESHOLDS.spikeSigma.value * sigma);
  let spikes = 0;
  for (let i = 1; i < count - 1; i += 1) {
    if (valid[i] === 0 || valid[i - 1] === 0 || valid[i + 1] === 0) continue;
    const left = values[i] - values[i - 1];
    const right = values[i] - values[i + 1];
    if (Math.min(Math.abs(left), Math.abs(right)) > least && left * right > 0 && Math.abs(values[i + 1] - values[i - 1]) < least / 2) {
      valid[i] = 0;
      spikes += 1;
    }
  }
  return spikes;
}

/** Runs of equal valid neighbours as [first, end). */
function forRuns(values: Float64Array, valid: Uint8Array, count: number, each: (first: number, end: number) => void): void {
  let first = 0;
  while (first < count) {
    if (valid[first] === 0) { first += 1; continue; }
    let end = first + 1;
    while (end < count && valid[end] === 1 && values[end] === values[first]) end += 1;
    each(first, end);
    first = end;
  }
}

/** Median and distance to the farther of the 1 % and 99 % quantiles, over a sample of the valid values that are no usual marks; null on none. */
function robustExtent(values: Float64Array, valid: Uint8Array, count: number): { middle: number; reach: number } | null {
  const stride = Math.max(1, Math.floor(count / 100_000));
  const scratch = new Float64Array(Math.floor(count / stride) + 1);
  let taken = 0;
  for (let i = 0; i < count; i += stride) if (valid[i] === 1 && !MARKS.includes(values[i])) scratch[taken++] = values[i];
  if (taken === 0) return null;
  const middle = quantileInPlace(scratch, 0.5, 0, taken);
  const low = quantileInPlace(scratch, 0.01, 0, taken);
  const high = quantileInPlace(scratch, 0.99, 0, taken);
  return { middle, reach: Math.max(high - middle, middle - low) };
}
