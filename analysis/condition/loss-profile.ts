import { medianInPlace } from '../signal/median.ts';
import type { LossBlocks } from './loss-blocks.ts';
import type { LossSegmentation } from './segment-loss.ts';

/** LMA over its baseline in short cells, for looking closely at where a loss begins. Cell i spans (first + i) to (first + i + 1) cells. */
export interface LossProfile {
  readonly spacing: number; // m
  readonly first: number;
  readonly mean: Float64Array;
  /** Share of the cell's samples that were measured. */
  readonly weight: Float64Array;
  /** Variance of one cell such that means over about a metre, as long as most rises, scatter as they do; and the same for several metres. */
  readonly variance: number;
  readonly longVariance: number;
}

/** About a sixth of an averaging length: short enough to follow the instrument's own ramp, long enough to be cheap, m. */
const CELL = 0.05;
/** Samples further than this many standard deviations from the median of their cell, or of LEAST samples about it, count as if at that distance. */
const BOUND = 4;
const LEAST = 5;

/** Cells between `from` and `to` (m from the first sample of the trace) of LMA over its baseline, spikes bounded. */
export function lossProfile(fromBaseline: Float64Array, mask: Uint8Array, step: number, blocks: LossBlocks, { nearVariance, longRunVariance }: LossSegmentation, from: number, to: number): LossProfile {
  const width = Math.max(1, Math.round(CELL / step));
  const spacing = width * step;
  const first = Math.max(0, Math.floor(from / spacing));
  const count = Math.max(0, Math.min(Math.ceil(fromBaseline.length / width), Math.ceil(to / spacing)) - first);
  const mean = new Float64Array(count);
  const weight = new Float64Array(count);
  const scratch = new Float64Array(width + 2 * LEAST);
  for (let cell = 0; cell < count; cell += 1) {
    const start = (first + cell) * width;
    const end = Math.min(fromBaseline.length, start + width);
    const centre = centreOf(fromBaseline, mask, start, width, scratch);
    // The rope's usual noise: that of a block in which the loss rises holds the rise as well.
    const bound = BOUND * blocks.noise || Infinity;
    let sum = 0;
    let members = 0;
    for (let i = start; i < end; i += 1) {
      if (mask[i] !== 1) continue;
      sum += Math.max(-bound, Math.min(bound, fromBaseline[i] - centre));
      members += 1;
    }
    mean[cell] = members > 0 ? centre + sum / members : 0;
    weight[cell] = members / width;
  }
  return { spacing, first, mean, weight, variance: (nearVariance * blocks.length) / spacing, longVariance: (longRunVariance * blocks.length) / spacing };
}

function centreOf(values: Float64Array, mask: Uint8Array, start: number, width: number, scratch: Float64Array): number {
  const beside = Math.max(0, Math.ceil((LEAST - width) / 2));
  let members = 0;
  for (let i = Math.max(0, start - beside); i < Math.min(values.length, start + width + beside); i += 1) if (mask[i] === 1) scratch[members++] = values[i];
  return members > 0 ? medianInPlace(scratch, 0, members) : 0;
}
