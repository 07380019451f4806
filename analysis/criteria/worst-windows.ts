import type { Along } from './judged.ts';
import type { WeightedWindow } from './weighted-window.ts';

/** Strip lengths: enough for a screen and small enough to send; each keeps its worst value. */
const BUCKETS = 1500;

export interface Windows {
  readonly start: number;
  readonly step: number;
  readonly samples: number;
  /** Samples in a window. */
  readonly span: number;
  readonly loop: boolean;
  /** Running count of inspected samples and running sum of loss; the sum is null where loss was not measured. */
  readonly seen: Int32Array;
  readonly sum: Float64Array | null;
  /** Inspected samples that a window needs to be judged. */
  readonly needed: number;
  readonly breaks: WeightedWindow;
}

export interface WorstWindow {
  /** First sample of the worst window. */
  readonly index: number;
  readonly value: number;
  readonly along: Along;
}

/**
 * Every window of the rope once: mean loss of its inspected samples (never below zero) plus the broken wires in it. Gives the worst
 * and the worst by equal lengths of rope, each window standing at its middle; towards an open end the last whole window stands for
 * the rest. A length none of whose samples was inspected is null, as is one where no window could be judged. Null: no window could.
 * Time is linear in samples and events; this is the one loop that runs over every position, so it allocates nothing.
 */
export function worstWindows(windows: Windows): WorstWindow | null {
  const { start, step, samples, span, loop, seen, sum, needed, breaks } = windows;
  const count = loop ? samples : samples - span + 1;
  // Round the whole of a loop the two ends are one place: the far end is left out, so that a break there counts once.
  const width = span * step - (loop && span === samples ? step * 1e-6 : 0);
  const size = Math.max(1, Math.ceil(samples / BUCKETS));
  const buckets = new Float64Array(Math.ceil(samples / size)).fill(NOT_JUDGED);
  let bucket = Math.floor((span >> 1) / size);
  let leftInBucket = size - ((span >> 1) % size);
  let quiet = 0;
  let index = -1;
  let value = NOT_JUDGED;
  for (let i = 0; i < count; i += 1) {
    const inside = i + span <= samples;
    const end = inside ? i + span : i + span - samples;
    const inspected = seen[end] - seen[i] + (inside ? 0 : seen[samples]);
    if (inspected >= needed) {
      const mean = sum === null ? 0 : (sum[end] - sum[i] + (inside ? 0 : sum[samples])) / inspected;
      let here = mean > 0 ? mean : 0;
      if (i >= quiet) {
        const from = start + (i - 0.5) * step;
        here += breaks.between(from, from + width);
        const next = breaks.quietUpTo();
        // One window early, so that rounding never skips a break.
        if (next !== null) quiet = Math.floor((next - width - start) / step + 0.5) - 1;
      }
      if (here > buckets[bucket]) buckets[bucket] = here;
      if (here > value) {
        value = here;
        index = i;
      }
    }
    leftInBucket -= 1;
    if (leftInBucket === 0) {
      bucket += 1;
      // The last bucket of a loop may be short, so the seam is passed by its own length.
      if (bucket === buckets.length) bucket = 0;
      leftInBucket = bucket === buckets.length - 1 ? samples - bucket * size : size;
    }
  }
  if (index < 0) return null;
  if (!loop) reachEnds(buckets, Math.floor((span >> 1) / size), Math.floor((count - 1 + (span >> 1)) / size));
  return { index, value, along: alongOf(windows, buckets, size) };
}

/** A mark among values that are never negative; it does not leave this file. */
const NOT_JUDGED = -1;

function reachEnds(buckets: Float64Array, first: number, last: number): void {
  buckets.fill(buckets[first], 0, first);
  buckets.fill(buckets[last], last + 1);
}

function alongOf({ start, step, samples, seen }: Windows, buckets: Float64Array, size: number): Along {
  const positions: number[] = [];
  const values: (number | null)[] = [];
  for (let b = 0; b < buckets.length; b += 1) {
    const from = b * size;
    const end = Math.min(samples, from + size);
    positions.push(start + ((from + end - 1) / 2) * step);
    values.push(buckets[b] === NOT_JUDGED || seen[end] === seen[from] ? null : buckets[b]);
  }
  return { positions, values };
}
