import { asDisplayPoints } from './display-points.ts';
import type { DisplayPoints } from './display-points.ts';
import { FINEST_BUCKET, bucketsOf } from './pyramid.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';

/**
 * What to draw of a channel between two positions (metres) on about `pixels` points: between half as many and as many,
 * plus one beyond either edge so that the line leaves the drawing. No extreme and no gap of the window is lost.
 * Buckets stand on fixed samples, so panning does not make the line flicker. Time: linear in `pixels`.
 */
export function displayWindow(pyramid: Pyramid, from: number, to: number, pixels: number): DisplayPoints {
  const { start, step, channel } = pyramid;
  const count = channel.values.length;
  const first = Math.max(0, Math.floor((from - start) / step) - 1);
  const end = Math.min(count, Math.ceil((to - start) / step) + 2);
  if (end <= first || pixels < 1) return asDisplayPoints({ positions: new Float64Array(0), low: new Float32Array(0), high: new Float32Array(0), seen: new Uint8Array(0), samplesPerPoint: 1 });
  const bucket = bucketFor(end - first, pixels);
  const firstBucket = Math.floor(first / bucket);
  const endBucket = Math.ceil(end / bucket);
  const { low, high, seen } = slice(pyramid, firstBucket, endBucket, bucket);
  const positions = new Float64Array(seen.length);
  for (let b = 0; b < seen.length; b += 1) {
    const left = (firstBucket + b) * bucket;
    const right = Math.min(left + bucket, count) - 1;
    positions[b] = start + ((left + right) / 2) * step;
  }
  return asDisplayPoints({ positions, low, high, seen, samplesPerPoint: bucket });
}

/** Smallest power of two that puts no more than `pixels` buckets over the samples. */
function bucketFor(samples: number, pixels: number): number {
  let bucket = 1;
  while (samples / bucket > pixels) bucket *= 2;
  return bucket;
}

function slice(pyramid: Pyramid, firstBucket: number, endBucket: number, bucket: number): Omit<PyramidLevel, 'bucket'> {
  if (bucket < FINEST_BUCKET) return bucketsOf(pyramid.channel, firstBucket * bucket, Math.min(endBucket * bucket, pyramid.channel.values.length), bucket);
  const level = pyramid.levels.find((each) => each.bucket === bucket) ?? pyramid.levels[pyramid.levels.length - 1];
  return { low: level.low.slice(firstBucket, endBucket), high: level.high.slice(firstBucket, endBucket), seen: level.seen.slice(firstBucket, endBucket) };
}
