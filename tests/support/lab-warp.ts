import type { RopeEvent } from '../../analysis/rope/record.ts';
import type { Channel, Trace } from '../../analysis/rope/trace.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';
import { labRandom } from './lab-random.ts';
import type { LabRandom } from './lab-random.ts';

/** What one laboratory rope is like. SYNTHETIC: none of it shows a rope. Metres, percent. */
export interface WarpOptions {
  length: number;
  loop: boolean;
  scans: number;
  /** RMS of the permanent LMA texture over RMS of the noise of one sample; 0 for a rope without character. */
  textureRatio: number;
  textureLength: number;
  textureShape: 'smooth' | 'rough' | 'averaged';
  /** Correlation length of the LMA noise; 0: white. */
  noiseLength: number;
  faultEvery: number | null;
  /** LF sign turns with the direction of travel. */
  coil: boolean;
  slips: number;
  largestSlip: number;
  scaleError: number;
  scaleWander: number;
  startError: number;
  reverse: 'never' | 'sometimes' | 'always';
  cut: 'none' | 'recorded' | 'unrecorded';
  growth: boolean;
  dropouts: boolean;
  steps: readonly number[];
}

export const ORDINARY: WarpOptions = {
  length: 500, loop: false, scans: 2, textureRatio: 1, textureLength: 0.3, textureShape: 'smooth', noiseLength: 0, faultEvery: 12, coil: false,
  slips: 3, largestSlip: 0.5, scaleError: 0.005, scaleWander: 0.0003, startError: 20, reverse: 'sometimes', cut: 'none', growth: true, dropouts: true, steps: [0.005, 0.01],
};

/** One scan of the laboratory rope with the truth about it. Knots rise in `measured`. */
export interface WarpedScan {
  readonly trace: Trace<'measured'>;
  readonly truth: readonly { readonly measured: number; readonly rope: number }[];
  readonly reversed: boolean;
  readonly slips: readonly number[];
}

export interface WarpedRope {
  readonly scans: readonly WarpedScan[];
  readonly ropeLength: number;
  readonly loopLength: number | null;
  readonly events: readonly RopeEvent[];
  readonly dates: readonly string[];
}

interface Rope { grid: number; start: number; texture: Float64Array; faults: { at: number; size: number; width: number }[]; length: number; loop: boolean }

export function drawWarpedRope(seed: number, given: Partial<WarpOptions> = {}): WarpedRope {
  const options = { ...ORDINARY, ...given };
  const random = labRandom(seed * 104729 + 71);
  const rope = makeRope(options, random);
  const dates = Array.from({ length: options.scans }, (_, k) => `${2015 + 2 * k}-06-01`);
  const events: RopeEvent[] = [];
  const scans: WarpedScan[] = [];
  let [endA, endB] = [0, options.length];
  for (let k = 0; k < options.scans; k += 1) {
    if (k === 1 && options.cut !== 'none') {
      const size = random.between(1, 10);
      const end = random.pick(['A', 'B'] as const);
      if (end === 'A') endA += size;
      else endB -= size;
      if (options.cut === 'recorded') events.push({ date: '2016-03-01', kind: 'shortened', end, length_m: size });
    }
    scans.push(makeScan(rope, options, random, k, endA, endB));
  }
  return { scans, ropeLength: options.length, loopLength: options.loop ? options.length : null, events, dates };
}

function makeRope(options: WarpOptions, random: LabRandom): Rope {
  const grid = 0.005;
  const count = Math.round(options.length / grid) + 1;
  const texture = smoothProcess(random, count, options.textureLength / grid, options.textureShape, options.loop);
  const faults: Rope['faults'] = [];
  if (options.faultEvery !== null) {
    for (let at = random.between(1, options.faultEvery); at < options.length - 0.5; at += -options.faultEvery * Math.log(1 - random.uniform()) + 0.2) {
      faults.push({ at, size: random.between(5, 20), width: random.between(0.012, 0.03) });
    }
  }
  return { grid, start: 0, texture, faults, length: options.length, loop: options.loop };
}

/** A random process of RMS 1: Gaussian-smoothed noise, noise through one lag, or noise averaged over a head. */
function smoothProcess(random: LabRandom, count: number, span: number, shape: WarpOptions['textureShape'], around: boolean): Float64Array {
  let values: Float64Array = Float64Array.from({ length: count }, () => random.normal());
  if (shape === 'rough') {
    const keep = Math.exp(-1 / span);
    for (let turn = 0; turn < (around ? 2 : 1); turn += 1) {
      let state = turn === 0 ? 0 : values[count - 1];
      values = values.map((v) => (state = keep * state + v * (turn === 0 ? 1 : 0) + (turn === 1 ? v * 0 : 0), turn === 0 ? state : v));
    }
    if (around) blendEnds(values, Math.round(3 * span));
  } else {
    const passes = shape === 'smooth' ? 3 : 1;
    for (let pass = 0; pass < passes; pass += 1) values = boxMean(values, Math.max(1, Math.round(span / Math.sqrt(passes) * 1.1)), around);
  }
  const rms = Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / count) || 1;
  return values.map((v) => v / rms);
}

function blendEnds(values: Float64Array, over: number): void {
  for (let i = 0; i < over; i += 1) {
    const share = 0.5 * (1 - i / over);
    const [a, b] = [values[i], values[values.length - 1 - i]];
    values[i] += share * (b - a);
    values[values.length - 1 - i] += share * (a - b);
  }
}

function boxMean(values: Float64Array, width: number, around: boolean): Float64Array {
  const n = values.length;
  const sums = new Float64Array(2 * n + width + 1);
  const at = (i: number): number => (around ? values[((i % n) + n) % n] : i >= 0 && i < n ? values[i] : 0);
  const half = width >> 1;
  for (let i = 0; i < n + width; i += 1) sums[i + 1] = sums[i] + at(i - half);
  return Float64Array.from({ length: n }, (_, i) => (sums[i + width] - sums[i]) / width);
}

function makeScan(rope: Rope, options: WarpOptions, random: LabRandom, index: number, endA: number, endB: number): WarpedScan {
  const step = random.pick(options.steps);
  const first = index === 0;
  const reversed = !first && (options.reverse === 'always' || (options.reverse === 'sometimes' && random.uniform() < 0.4));
  const truth = first ? [{ measured: 0, rope: 0 }, { measured: rope.length, rope: rope.length }] : warp(options, random, endA, endB, reversed);
  const from = truth[0].measured;
  const count = Math.floor((truth[truth.length - 1].measured - from) / step);
  const gain = first ? 1 : random.between(0.85, 1.15);
  const zero = first ? 0 : random.between(-0.5, 0.5);
  const noise = options.textureRatio > 0 ? 0.1 / options.textureRatio : 0.1;
  const loss = lossChannel(rope, options, random, truth, from, step, count, index);
  const fault = faultChannel(rope, options, random, truth, from, step, count, index, reversed);
  const lossNoise = options.noiseLength > 0 ? smoothProcess(random, count, options.noiseLength / step, 'smooth', false) : Float64Array.from({ length: count }, () => random.normal());
  for (let i = 0; i < count; i += 1) loss.values[i] = zero + gain * (loss.values[i] + noise * lossNoise[i]);
  if (options.dropouts && !first) for (let k = 0; k < 4; k += 1) dropOut(loss, fault, Math.floor(random.uniform() * count), Math.round(random.between(0.2, 3) / step));
  return {
    trace: { start: measuredPosition(from), step, length: count, loss, fault, faultUnit: 'mV', speed: null, averagingLength: 0.3 },
    truth, reversed, slips: slipsOf(truth),
  };
}

/** Encoder truth: stretches of even scale, slips at random places, in the file's own positions. */
function warp(options: WarpOptions, random: LabRandom, endA: number, endB: number, reversed: boolean): { measured: number; rope: number }[] {
  const base = 1 + random.between(-options.scaleError, options.scaleError);
  const late = options.loop ? 0 : options.startError > 0 ? random.between(0, options.startError) : 0;
  const begins = options.loop ? random.between(0, options.length) : random.uniform() < 0.5 ? late : 0;
  const span = options.loop ? options.length : endB - endA - begins;
  const places = Array.from({ length: options.slips }, () => random.between(8, span - 8)).sort((a, b) => a - b);
  const wander = options.scaleWander > 0 ? Array.from({ length: Math.floor(span / 120) }, () => random.between(0, span)) : [];
  const marks = [...places.map((at) => ({ at, slip: random.pick([-1, 1]) * random.between(0.03, options.largestSlip) })), ...wander.map((at) => ({ at, slip: 0 }))].sort((a, b) => a.at - b.at);
  let measured = random.uniform() < 0.5 ? begins + random.between(-1, 1) * late : random.between(-options.startError, options.startError);
  let travelled = 0;
  const knots = [{ measured, travelled }];
  let scale = base;
  for (const mark of [...marks, { at: span, slip: 0 }]) {
    if (mark.at > travelled) {
      measured += (mark.at - travelled) * scale;
      travelled = mark.at;
      knots.push({ measured, travelled });
    }
    if (mark.slip < 0) knots.push({ measured: (measured -= mark.slip), travelled: (travelled += 1e-4) });
    if (mark.slip > 0) knots.push({ measured: (measured += 1e-4), travelled: (travelled += mark.slip) });
    if (mark.slip === 0 && options.scaleWander > 0) scale = base + options.scaleWander * random.normal();
  }
  const rope = (t: number): number => (options.loop ? (reversed ? options.length + begins - t : begins + t) : reversed ? endB - begins - t : endA + begins + t);
  return knots.map((knot) => ({ measured: knot.measured, rope: rope(knot.travelled) }));
}

function slipsOf(truth: readonly { measured: number; rope: number }[]): number[] {
  return truth.slice(1).flatMap((knot, i) => {
    const ratio = Math.abs(knot.rope - truth[i].rope) / (knot.measured - truth[i].measured);
    return ratio > 1.5 || ratio < 0.5 ? [(knot.measured + truth[i].measured) / 2] : [];
  });
}

/** Piecewise-linear truth walked once over the samples. */
export function truthWalker(truth: readonly { measured: number; rope: number }[]): (measured: number) => number {
  let segment = 0;
  return (m) => {
    while (segment < truth.length - 2 && truth[segment + 1].measured <= m) segment += 1;
    while (segment > 0 && truth[segment].measured > m) segment -= 1;
    const [a, b] = [truth[segment], truth[segment + 1]];
    return a.rope + ((m - a.measured) / (b.measured - a.measured)) * (b.rope - a.rope);
  };
}

function lossChannel(rope: Rope, options: WarpOptions, random: LabRandom, truth: WarpedScan['truth'], from: number, step: number, count: number, index: number): Channel {
  const values = new Float64Array(count);
  const rms = options.textureRatio > 0 ? 0.1 : 0;
  const zones = options.growth ? [0.23, 0.61].map((share) => ({ from: share * rope.length, to: share * rope.length + 15, depth: 0.8 * index })) : [];
  const walk = truthWalker(truth);
  const phase = random.between(0, 6.28);
  for (let i = 0; i < count; i += 1) {
    let x = walk(from + i * step);
    if (rope.loop) x -= Math.floor(x / rope.length) * rope.length;
    const place = Math.max(0, Math.min(rope.texture.length - 1.001, x / rope.grid));
    const low = Math.floor(place);
    values[i] = rms * (rope.texture[low] + (place - low) * (rope.texture[low + 1] - rope.texture[low])) + 0.05 * Math.sin(i * step / 60 + phase);
    for (const zone of zones) if (x > zone.from && x < zone.to) values[i] += zone.depth * Math.min(1, Math.min(x - zone.from, zone.to - x) / 2);
  }
  return { values, valid: new Uint8Array(count).fill(1) };
}

function faultChannel(rope: Rope, options: WarpOptions, random: LabRandom, truth: WarpedScan['truth'], from: number, step: number, count: number, index: number, reversed: boolean): Channel {
  const values = new Float64Array(count);
  const grown = options.growth && index > 0 ? Array.from({ length: Math.round(rope.length / 40) }, (_, k) => ({ at: ((k * 0.61803 + 0.17) % 1) * rope.length, size: 15, width: 0.02 })) : [];
  const faults = [...(index > 0 && options.growth ? rope.faults.map((fault, k) => (k % 4 === 0 ? { ...fault, size: fault.size * 1.5 } : fault)) : rope.faults), ...grown].sort((a, b) => a.at - b.at);
  const bins = new Map<number, typeof faults>();
  for (const fault of faults) for (const bin of [Math.floor(fault.at) - 1, Math.floor(fault.at), Math.floor(fault.at) + 1]) bins.set(bin, [...(bins.get(bin) ?? []), fault]);
  const walk = truthWalker(truth);
  let phase = random.between(0, 6.28);
  for (let i = 0; i < count; i += 1) {
    let x = walk(from + i * step);
    if (rope.loop) x -= Math.floor(x / rope.length) * rope.length;
    phase += (2 * Math.PI * step) / 0.043 + 0.15 * Math.sqrt(step) * random.normal();
    values[i] = 0.7 * random.normal() + Math.sin(phase);
    for (const fault of bins.get(Math.floor(x)) ?? []) {
      const u = (x - fault.at) / fault.width;
      if (Math.abs(u) > 6) continue;
      const form = options.coil ? (u * (reversed ? -1 : 1)) / (1 + u * u) ** 2.5 / 0.286 : (1 - 2 * u * u) / (1 + u * u) ** 2.5;
      values[i] += fault.size * form;
    }
  }
  return { values, valid: new Uint8Array(count).fill(1) };
}

function dropOut(loss: Channel, fault: Channel, at: number, length: number): void {
  for (let i = at; i < Math.min(loss.values.length, at + length); i += 1) {
    loss.valid[i] = 0;
    fault.valid[i] = 0;
    loss.values[i] = 9999;
    fault.values[i] = -9999;
  }
}
