import { madInPlace, NORMAL_MAD } from '../signal/mad.ts';
import { medianInPlace } from '../signal/median.ts';

/** Robust level and scale of a signal in blocks. Blocks without enough valid samples are masked. */
export interface BlockLevels {
  readonly width: number; // samples
  readonly level: Float64Array;
  readonly scale: Float64Array;
  readonly valid: Uint8Array;
}

/** More samples than this add nothing to a robust level that is only a first guess. */
const ENOUGH = 64;

/** Median and normal-consistent MAD of each block of `width` samples, from at most ENOUGH of them evenly drawn. */
export function blockLevels(values: Float64Array, valid: Uint8Array, width: number): BlockLevels {
  const count = Math.ceil(values.length / width);
  const level = new Float64Array(count);
  const scale = new Float64Array(count);
  const known = new Uint8Array(count);
  const stride = Math.max(1, Math.floor(width / ENOUGH));
  const scratch = new Float64Array(Math.ceil(width / stride) + 1);
  for (let block = 0; block < count; block += 1) {
    let members = 0;
    const end = Math.min(values.length, (block + 1) * width);
    for (let i = block * width; i < end; i += stride) if (valid[i] === 1) scratch[members++] = values[i];
    if (members < 5) continue;
    level[block] = medianInPlace(scratch, 0, members);
    scale[block] = madInPlace(scratch, 0, members) * NORMAL_MAD;
    known[block] = 1;
  }
  return { width, level, scale, valid: known };
}

/** Value at a sample between block centres; masked blocks must have been filled. */
export function blockValueAt(blocks: Float64Array, width: number, index: number): number {
  const place = (index + 0.5) / width - 0.5;
  const below = Math.max(0, Math.min(blocks.length - 1, Math.floor(place)));
  const above = Math.min(blocks.length - 1, below + 1);
  const share = Math.max(0, Math.min(1, place - below));
  return blocks[below] + share * (blocks[above] - blocks[below]);
}
