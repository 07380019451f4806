import { madInPlace, NORMAL_MAD } from '../signal/mad.ts';
import { median } from '../signal/median.ts';
import type { Channel, Trace } from '../rope/trace.ts';
import type { AlignmentParameters } from './parameters.ts';
import { someOf } from './some-of.ts';

/**
 * What a rope can be recognised by, in bins of `bin` metres: the texture of LMA (detrended, in its own deviations)
 * and the events of LF (how far it stands out of its noise, sign dropped, since a coil's sign turns with the direction of travel).
 * `seen` is 1 where the bin has valid samples; both signals are 0 elsewhere and there carry no weight.
 */
export interface Character {
  readonly start: number; // position of the first bin's centre, in the trace's own frame
  readonly bin: number;
  readonly length: number;
  readonly texture: Float64Array;
  readonly textureSeen: Uint8Array;
  readonly events: Float64Array;
  /** Mean of LF in each bin, in its own deviations: what of LF repeats, its sign with the instrument's. */
  readonly fault: Float64Array;
  readonly faultSeen: Uint8Array;
}

/** One scan's character in fine bins and in coarse ones of two fine bins each. */
export interface ScanCharacter {
  readonly fine: Character;
  readonly coarse: Character;
}

export function scanCharacter(trace: Trace<'measured'>, fineBin: number, parameters: AlignmentParameters): ScanCharacter {
  const fine = characterOf(trace, fineBin, parameters);
  return { fine, coarse: inPairs(fine) };
}

/** The mean texture and the larger event of every two bins. */
function inPairs(fine: Character): Character {
  const length = Math.max(1, fine.length >> 1);
  const out = { texture: new Float64Array(length), textureSeen: new Uint8Array(length), events: new Float64Array(length) };
  for (let b = 0; b < length; b += 1) {
    const [i, j] = [2 * b, Math.min(fine.length - 1, 2 * b + 1)];
    const seen = fine.textureSeen[i] + fine.textureSeen[j];
    if (seen > 0) out.texture[b] = (fine.textureSeen[i] * fine.texture[i] + fine.textureSeen[j] * fine.texture[j]) / seen;
    out.textureSeen[b] = seen > 0 ? 1 : 0;
    out.events[b] = Math.max(fine.events[i], fine.events[j]);
  }
  const deviation = deviationOf(out.texture, out.textureSeen);
  // The coarse search goes by texture and events alone.
  return { start: fine.start + fine.bin / 2, bin: 2 * fine.bin, length, ...out, fault: new Float64Array(length), faultSeen: new Uint8Array(length), texture: out.texture.map((value) => value / deviation) };
}

const TREND_LENGTH = 12;

/** `bin` need not be a multiple of the trace's step: every bin takes the mean over exactly its own length. */
export function characterOf(trace: Trace<'measured'>, bin: number, parameters: AlignmentParameters): Character {
  const length = Math.max(1, Math.floor((trace.length * trace.step) / bin + 1e-9));
  const perBin = bin / trace.step;
  const { texture, seen } = trace.loss ? textureOf(trace.loss, perBin, length, bin) : { texture: new Float64Array(length), seen: seenOf(trace.fault, perBin, length) };
  return {
    start: trace.start + (bin - trace.step) / 2, bin, length, texture, textureSeen: seen,
    events: trace.fault ? eventsOf(trace.fault, perBin, length, parameters) : new Float64Array(length), ...faultOf(trace.fault, perBin, length),
  };
}

/** Deviations beyond which a bin of LF belongs to a pulse. */
const PULSE = 3;

function faultOf(channel: Channel | null, perBin: number, length: number): { fault: Float64Array; faultSeen: Uint8Array } {
  const [fault, faultSeen] = [new Float64Array(length), new Uint8Array(length)];
  if (channel === null) return { fault, faultSeen };
  const { means, seen } = binMeans(channel, perBin, length);
  const some = someOf(means, seen, ENOUGH);
  const level = some.length > 0 ? median(some) : 0;
  for (let b = 0; b < length; b += 1) means[b] = seen[b] === 1 ? means[b] - level : 0;
  standardise(means, seen);
  // Pulses are events: among them they would pass the noise between them for something that repeats.
  for (let b = 0; b < length; b += 1) {
    if (Math.abs(means[b]) <= PULSE) continue;
    means[b] = 0;
    seen[b] = 0;
  }
  return { fault: means, faultSeen: seen };
}

/** Without LMA, where LF was seen: the rope can then be recognised by its events alone. */
function seenOf(fault: Channel | null, perBin: number, length: number): Uint8Array {
  const seen = new Uint8Array(length);
  if (fault) for (let i = 0; i < fault.valid.length; i += 1) if (fault.valid[i] === 1) seen[Math.min(length - 1, Math.floor(i / perBin))] = 1;
  return seen;
}

function textureOf(channel: Channel, perBin: number, length: number, bin: number): { texture: Float64Array; seen: Uint8Array } {
  const { means, seen } = binMeans(channel, perBin, length);
  removeTrend(means, seen, Math.max(3, Math.round(TREND_LENGTH / bin)));
  standardise(means, seen);
  return { texture: means, seen };
}

/** Mean over exactly each bin's length; seen where half of it was. A sample that two bins share counts in each by its part. */
function binMeans({ values, valid }: Channel, perBin: number, length: number): { means: Float64Array; seen: Uint8Array } {
  const means = new Float64Array(length);
  const seen = new Uint8Array(length);
  for (let b = 0; b < length; b += 1) {
    const from = b * perBin;
    const end = Math.min(values.length, (b + 1) * perBin);
    const first = Math.floor(from);
    const last = Math.ceil(end) - 1;
    let sum = 0, count = 0;
    for (let i = first; i <= last; i += 1) {
      if (valid[i] !== 1) continue;
      sum += values[i];
      count += 1;
    }
    const before = valid[first] * (from - first);
    const after = valid[last] * (last + 1 - end);
    const whole = count - before - after;
    if (whole * 2 < end - from) continue;
    // What a masked sample holds means nothing: it must not even be multiplied by nothing.
    means[b] = (sum - (before > 0 ? before * values[first] : 0) - (after > 0 ? after * values[last] : 0)) / whole;
    seen[b] = 1;
  }
  return { means, seen };
}

/** Takes away the mean over `window` bins about each bin, counting only what was seen. */
function removeTrend(values: Float64Array, seen: Uint8Array, window: number): void {
  const sums = new Float64Array(values.length + 1);
  const counts = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i += 1) {
    sums[i + 1] = sums[i] + (seen[i] === 1 ? values[i] : 0);
    counts[i + 1] = counts[i] + seen[i];
  }
  const half = window >> 1;
  for (let i = 0; i < values.length; i += 1) {
    const from = Math.max(0, i - half);
    const end = Math.min(values.length, i + half + 1);
    if (seen[i] === 1) values[i] -= (sums[end] - sums[from]) / (counts[end] - counts[from]);
  }
}

function standardise(values: Float64Array, seen: Uint8Array): void {
  const deviation = deviationOf(values, seen);
  for (let i = 0; i < values.length; i += 1) values[i] = seen[i] === 1 ? values[i] / deviation : 0;
}

function deviationOf(values: Float64Array, seen: Uint8Array): number {
  const all = someOf(values, seen, ENOUGH);
  if (all.length === 0) return 1;
  return NORMAL_MAD * madInPlace(all.slice(), 0, all.length) || Math.sqrt(all.reduce((sum, v) => sum + v * v, 0) / all.length) || 1;
}

/** Enough for a scale: about so many of the values that were seen. */
const ENOUGH = 20_000;

/** Largest excess over the noise in each bin. */
function eventsOf(channel: Channel, perBin: number, length: number, parameters: AlignmentParameters): Float64Array {
  const events = new Float64Array(length);
  const some = someOf(channel.values, channel.valid, ENOUGH);
  if (some.length === 0) return events;
  const level = median(some);
  const deviation = NORMAL_MAD * madInPlace(some, 0, some.length);
  if (!(deviation > 0)) return events;
  const least = parameters.eventThreshold * deviation;
  const [low, high] = [level - least, level + least];
  const { values, valid } = channel;
  for (let i = 0; i < values.length; i += 1) {
    if ((values[i] <= high && values[i] >= low) || valid[i] !== 1) continue;
    const b = Math.floor((i + 0.5) / perBin);
    const excess = (Math.abs(values[i] - level) - least) / deviation;
    if (b < length && excess > events[b]) events[b] = Math.min(parameters.eventCap, excess);
  }
  return events;
}

/** Texture within `cap` deviations: before scans are compared, damage must not outweigh all else. */
export function capped(character: Character, cap: number): Character {
  const texture = character.texture.slice();
  for (let i = 0; i < texture.length; i += 1) if (Math.abs(texture[i]) > cap) texture[i] = Math.sign(texture[i]) * cap;
  return { ...character, texture };
}

/** The same rope by an instrument that writes loss the other way. */
export function negated(character: Character): Character {
  return { ...character, texture: character.texture.map((value) => 0 - value) };
}

/** The same rope seen from its other end: bin i becomes bin length - 1 - i, at position minus the old one. */
export function mirrored(character: Character): Character {
  const last = character.start + (character.length - 1) * character.bin;
  return {
    ...character, start: -last,
    texture: character.texture.slice().reverse(), textureSeen: character.textureSeen.slice().reverse(), events: character.events.slice().reverse(),
    fault: character.fault.slice().reverse(), faultSeen: character.faultSeen.slice().reverse(),
  };
}
