import type { Channel } from '../rope/trace.ts';

/** Extremes of buckets of `2 ** power` samples. */
export interface PyramidLevel {
  readonly bucket: number;
  readonly low: Float32Array;
  readonly high: Float32Array;
  /** As in DisplayPoints. */
  readonly seen: Uint8Array;
}

/** One channel at every level of detail; the samples themselves are the finest. */
export interface Pyramid {
  readonly start: number;
  readonly step: number;
  readonly channel: Channel;
  readonly levels: readonly PyramidLevel[];
}

/** Buckets finer than this are cheaper to work out on demand than to keep. */
export const FINEST_BUCKET = 8;

/**
 * Extremes at every power of two, for drawing a channel at any zoom. `start` and `step` in metres.
 * Linear time; keeps about a third of a sample's size for each sample.
 */
export function buildPyramid(channel: Channel, start: number, step: number): Pyramid {
  const levels: PyramidLevel[] = [];
  if (channel.values.length > 0) {
    let level = bucketsOf(channel, 0, channel.values.length, FINEST_BUCKET);
    levels.push(level);
    while (level.seen.length > 1) {
      level = halved(level);
      levels.push(level);
    }
  }
  return { start, step, channel, levels };
}

/** Extremes of the samples `from`..`to` in buckets; `from` should be a multiple of `bucket` so that buckets do not shift with the window. */
export function bucketsOf(channel: Channel, from: number, to: number, bucket: number): PyramidLevel {
  const { values, valid } = channel;
  const count = Math.max(0, Math.ceil((to - from) / bucket));
  const low = new Float32Array(count);
  const high = new Float32Array(count);
  const seen = new Uint8Array(count);
  for (let b = 0; b < count; b += 1) {
    const first = from + b * bucket;
    const end = Math.min(first + bucket, to);
    let least = Infinity;
    let most = -Infinity;
    let good = 0;
    for (let i = first; i < end; i += 1) {
      if (valid[i] !== 1) continue;
      good += 1;
      if (values[i] < least) least = values[i];
      if (values[i] > most) most = values[i];
    }
    if (good === 0) continue;
    low[b] = least;
    high[b] = most;
    seen[b] = good === end - first ? 2 : 1;
  }
  return { bucket, low, high, seen };
}

function halved(level: PyramidLevel): PyramidLevel {
  const count = Math.ceil(level.seen.length / 2);
  const low = new Float32Array(count);
  const high = new Float32Array(count);
  const seen = new Uint8Array(count);
  for (let b = 0; b < count; b += 1) {
    const left = 2 * b;
    const right = left + 1 < level.seen.length ? left + 1 : left;
    const a = level.seen[left];
    const c = level.seen[right];
    if (a === 0 && c === 0) continue;
    low[b] = a === 0 ? level.low[right] : c === 0 ? level.low[left] : Math.min(level.low[left], level.low[right]);
    high[b] = a === 0 ? level.high[right] : c === 0 ? level.high[left] : Math.max(level.high[left], level.high[right]);
    seen[b] = a === 2 && c === 2 ? 2 : 1;
  }
  return { bucket: level.bucket * 2, low, high, seen };
}
