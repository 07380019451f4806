import { fillGaps } from '../signal/fill-gaps.ts';
import { slidingMean } from '../signal/sliding-mean.ts';
import { slidingMedian } from '../signal/sliding-median.ts';
import { blockLevels, blockValueAt } from './block-levels.ts';
import type { ConditionParameters } from './parameters.ts';

/** LF about its own slow level, gaps bridged by a line for the filters; the mask still says where nothing was measured. */
export interface LevelledFault {
  readonly values: Float64Array;
  /** Robust scale (normal-consistent) of one sample by block, strand pattern included. */
  readonly blockWidth: number;
  readonly blockScale: Float64Array;
}

/** Takes the slow level off LF: a robust block level first, then a moving mean of what is left, in which pulses count only up to a bound. */
export function levelFault(values: Float64Array, mask: Uint8Array, step: number, parameters: ConditionParameters): LevelledFault {
  const blockWidth = Math.max(20, Math.round(parameters.noiseBlock / step));
  const blocks = blockLevels(values, mask, blockWidth);
  const level = fillGaps(blocks.level, blocks.valid);
  const scale = fillGaps(slidingMedian(blocks.scale, blocks.valid, 9).values, slidingMedian(blocks.scale, blocks.valid, 9).valid);
  const count = values.length;
  const levelled = new Float64Array(count);
  const bounded = new Float64Array(count);
  for (let block = 0; block * blockWidth < count; block += 1) {
    const bound = 4 * scale[block];
    const end = Math.min(count, (block + 1) * blockWidth);
    const middle = Math.min(end, Math.round((block + 0.5) * blockWidth));
    // Between the centres of blocks the level runs straight: one slope to the middle of the block, another from it.
    for (const [from, until] of [[block * blockWidth, middle], [middle, end]]) {
      const start = blockValueAt(level, blockWidth, from);
      const slope = until > from + 1 ? (blockValueAt(level, blockWidth, until - 1) - start) / (until - 1 - from) : 0;
      for (let i = from; i < until; i += 1) {
        if (mask[i] !== 1) continue;
        const value = values[i] - start - slope * (i - from);
        levelled[i] = value;
        bounded[i] = value > bound ? bound : value < -bound ? -bound : value;
      }
    }
  }
  const window = 2 * Math.round(parameters.faultBaselineLength / step / 2) + 1;
  const slow = slidingMean(bounded, mask, window).values;
  for (let i = 0; i < count; i += 1) levelled[i] = mask[i] === 1 ? levelled[i] - slow[i] : 0;
  return { values: levelled, blockWidth, blockScale: scale };
}
