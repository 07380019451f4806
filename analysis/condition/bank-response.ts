import { BANK_SHAPES, bankScales, halfKernels, mirrored, tapsOf, unthinned } from './pulse-bank.ts';
import type { BankScale, HalfKernels } from './pulse-bank.ts';
import { noiseCorrelation } from './noise-correlation.ts';
import { scaleByStretch } from './noise-levels.ts';
import type { NoiseLevels } from './noise-levels.ts';
import type { ConditionParameters } from './parameters.ts';
import { isOdd } from './pulse-shapes.ts';
import type { Checkpoint } from '../rope/checkpoint.ts';

/** Standard deviation of a filter's amplitude by stretch of alike noise; after evenTails times what its tail weighs. */
export interface BankNoise {
  readonly width: number;
  readonly shape: (typeof BANK_SHAPES)[number];
  readonly sigma: Float64Array;
  /** The filter on samples as recorded: half a kernel, on the sample or (phase 0.5) from half a sample behind it. */
  readonly phase: 0 | 0.5;
  readonly half: Float64Array;
}

/** Local maxima of filters over their own noise, sorted by position. */
export interface PlacedScores {
  readonly count: number;
  readonly index: Float64Array; // samples of the trace, fractional
  readonly score: Float64Array; // signed, in standard deviations
}

/** Local maxima of the whole bank. */
export interface Candidates extends PlacedScores {
  readonly filter: Uint8Array; // index into noise
  readonly noise: readonly BankNoise[];
}

/** Scores from here on are kept: below is noise that no threshold reaches, above enough of it to measure its tail. */
export const LEAST_SCORE = 3;

/** Runs the bank over LF without strand pattern. Linear in length; about a hundred multiplications a sample. */
export async function bankResponse(values: Float64Array, mask: Uint8Array, step: number, levels: NoiseLevels, parameters: ConditionParameters, checkpoint: Checkpoint): Promise<Candidates> {
  const scales = bankScales(step, parameters);
  const thinned = new Map<number, { values: Float64Array; mask: Uint8Array }>([[1, { values, mask }]]);
  const noise: BankNoise[] = [];
  const found: Found = { index: [], score: [], filter: [] };
  const correlations: Record<number, Float64Array> = {};
  const room = roomFor(values.length);
  for (const [done, scale] of scales.entries()) {
    await checkpoint('Seeking pulses', done / scales.length);
    const signal = thinnedBy(thinned, scale.thinning);
    const blockWidth = levels.blockWidth / scale.thinning;
    const correlation = (correlations[scale.thinning] ??= noiseCorrelation(signal.values, signal.mask, step * scale.thinning, levels, blockWidth, 2 * mostTaps(scales, scale.thinning, step)));
    for (const phase of scale.phases) {
      const kernels = halfKernels(scale.width, step, scale.thinning, phase, correlation);
      const responses = respond(signal.values, kernels, phase, room);
      for (const shape of BANK_SHAPES) {
        const sigma = scaleByStretch(responses[shape], signal.mask, levels, Math.max(1, Math.round(blockWidth)));
        collect(responses[shape], signal.mask, scale, phase, sigma, levels, noise.length, found);
        noise.push({ width: scale.width, shape, sigma, phase, half: asRecorded(kernels[shape], isOdd(shape), phase, scale.thinning) });
      }
    }
  }
  return sorted(found, noise);
}

const mostTaps = (scales: readonly BankScale[], thinning: number, step: number): number =>
  scales.reduce((most, scale) => (scale.thinning === thinning ? Math.max(most, tapsOf(scale.width, step * thinning)) : most), 0);

/** The half kernel that gives on samples as recorded what `half` gives on thinned ones. */
function asRecorded(half: Float64Array, odd: boolean, phase: 0 | 0.5, thinning: number): Float64Array {
  if (thinning === 1) return half;
  let whole = mirrored(half, odd, phase);
  for (let done = 1; done < thinning; done *= 2) whole = unthinned(whole);
  return whole.slice(whole.length >> 1);
}

interface Found { index: number[]; score: number[]; filter: number[] }

function thinnedBy(known: Map<number, { values: Float64Array; mask: Uint8Array }>, thinning: number): { values: Float64Array; mask: Uint8Array } {
  const there = known.get(thinning);
  if (there) return there;
  const fine = thinnedBy(known, thinning / 2);
  const made = halve(fine.values, fine.mask);
  known.set(thinning, made);
  return made;
}

/** Every second sample after smoothing with 1 4 6 4 1: thinned sample k stands at sample 2 k. */
function halve(values: Float64Array, mask: Uint8Array): { values: Float64Array; mask: Uint8Array } {
  const count = Math.ceil(values.length / 2);
  const thin = new Float64Array(count);
  const good = new Uint8Array(count);
  const at = (i: number) => (i < 0 || i >= values.length ? 0 : values[i]);
  for (let k = 0; k < count; k += 1) {
    const i = 2 * k;
    const inside = i >= 2 && i + 2 < values.length;
    thin[k] = inside
      ? (values[i - 2] + values[i + 2] + 4 * (values[i - 1] + values[i + 1]) + 6 * values[i]) / 16
      : (at(i - 2) + at(i + 2) + 4 * (at(i - 1) + at(i + 1)) + 6 * at(i)) / 16;
    good[k] = mask[i];
  }
  return { values: thin, mask: good };
}

type Responses = Record<(typeof BANK_SHAPES)[number], Float64Array>;

/** Room for one width's responses, used again for the next: they are looked through at once. */
function roomFor(count: number): Responses & { padded: Float64Array } {
  const even = count + (count % 2);
  return { bell: new Float64Array(even), hat: new Float64Array(even), radial: new Float64Array(even), padded: new Float64Array(0) };
}

/** Responses of the three forms, two samples at a time: they share the kernels and most of the samples. Written into `room`. */
function respond(values: Float64Array, kernels: HalfKernels, phase: 0 | 0.5, room: Responses & { padded: Float64Array }): Responses {
  const count = values.length;
  const taps = Math.max(kernels.bell.length, kernels.hat.length, kernels.radial.length);
  const bellTaps = padTo(kernels.bell, taps);
  const hatTaps = padTo(kernels.hat, taps);
  const radialTaps = padTo(kernels.radial, taps);
  const needed = count + 2 * taps + 4;
  if (room.padded.length < needed) room.padded = new Float64Array(needed + 64);
  const { padded, bell, hat, radial } = room;
  padded.fill(0, 0, taps);
  padded.set(values, taps);
  padded.fill(0, taps + count, needed);
  const even = count + (count % 2);
  const shift = phase === 0 ? 0 : 1;
  // On the sample itself both halves of an even kernel meet: its middle weight counts once.
  if (shift === 0) for (const middle of [bellTaps, hatTaps]) middle[0] /= 2;
  for (let i = 0; i < even; i += 2) {
    const left = i + taps;
    const right = left + shift;
    let before = padded[left + 1];
    let after = padded[right];
    let bellA = 0;
    let hatA = 0;
    let radialA = 0;
    let bellB = 0;
    let hatB = 0;
    let radialB = 0;
    for (let k = 0; k < taps; k += 1) {
      const beforeA = padded[left - k];
      const afterB = padded[right + 1 + k];
      const b = bellTaps[k];
      const x = hatTaps[k];
      const r = radialTaps[k];
      const sumA = beforeA + after;
      const sumB = before + afterB;
      bellA += sumA * b;
      hatA += sumA * x;
      radialA += (after - beforeA) * r;
      bellB += sumB * b;
      hatB += sumB * x;
      radialB += (afterB - before) * r;
      before = beforeA;
      after = afterB;
    }
    bell[i] = bellA;
    hat[i] = hatA;
    radial[i] = radialA;
    bell[i + 1] = bellB;
    hat[i + 1] = hatB;
    radial[i + 1] = radialB;
  }
  return { bell: bell.subarray(0, count), hat: hat.subarray(0, count), radial: radial.subarray(0, count) };
}

function padTo(values: Float64Array, length: number): Float64Array {
  const padded = new Float64Array(length);
  padded.set(values);
  return padded;
}

function collect(response: Float64Array, mask: Uint8Array, scale: BankScale, phase: number, sigma: Float64Array, levels: NoiseLevels, filter: number, found: Found): void {
  const blockWidth = levels.blockWidth / scale.thinning;
  for (let block = 0; block < levels.stretchOf.length; block += 1) {
    const deviation = sigma[levels.stretchOf[block]] * levels.louder[block];
    if (!(deviation > 0)) continue;
    const least = LEAST_SCORE * deviation;
    const from = Math.max(1, Math.round(block * blockWidth));
    const end = Math.min(response.length - 1, Math.round((block + 1) * blockWidth));
    for (let i = from; i < end; i += 1) {
      const value = response[i];
      if (value < least && value > -least) continue;
      const size = Math.abs(value);
      if (mask[i] !== 1 || size < Math.abs(response[i - 1]) || size <= Math.abs(response[i + 1])) continue;
      found.index.push((i + phase) * scale.thinning);
      found.score.push(value / deviation);
      found.filter.push(filter);
    }
  }
}

function sorted(found: Found, noise: BankNoise[]): Candidates {
  // Places are halves of samples at the finest: one whole number holds place and order, and whole numbers sort without a comparison of ours.
  const count = found.index.length;
  const keys = new Float64Array(count);
  for (let i = 0; i < count; i += 1) keys[i] = 2 * found.index[i] * count + i;
  keys.sort();
  const candidates = { count, noise, index: new Float64Array(count), score: new Float64Array(count), filter: new Uint8Array(count) };
  for (let k = 0; k < count; k += 1) {
    const i = keys[k] % count;
    candidates.index[k] = found.index[i];
    candidates.score[k] = found.score[i];
    candidates.filter[k] = found.filter[i];
  }
  return candidates;
}
