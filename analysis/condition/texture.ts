import { medianInPlace } from '../signal/median.ts';
import type { FaultSearch } from './find-faults.ts';

/** LF texture: root mean square of LF without strand pattern and without the faults found, by block and the rope's usual. */
export interface Texture {
  readonly blockWidth: number; // samples
  readonly square: Float64Array; // mean square by block
  readonly members: Float64Array;
  readonly usual: number; // root mean square on the rope's quiet lengths
}

/** Samples within this many widths of a fault are the fault's, not texture. */
const BESIDE = 2.5;

export function measureTexture(search: FaultSearch, mask: Uint8Array, start: number, step: number): Texture {
  const { clean, levels } = search;
  const blockWidth = Math.max(8, Math.round(0.5 / step));
  const count = Math.ceil(clean.length / blockWidth);
  const counted = mask.slice();
  for (const fault of search.faults) {
    const centre = (fault.position - start) / step;
    const reach = Math.max(3, (BESIDE * fault.width) / step);
    counted.fill(0, Math.max(0, Math.floor(centre - reach)), Math.max(0, Math.ceil(centre + reach)));
  }
  const square = new Float64Array(count);
  const members = new Float64Array(count);
  for (let block = 0; block < count; block += 1) {
    const end = Math.min(clean.length, (block + 1) * blockWidth);
    for (let i = block * blockWidth; i < end; i += 1) {
      if (counted[i] !== 1) continue;
      square[block] += clean[i] * clean[i];
      members[block] += 1;
    }
    if (members[block] > 0) square[block] /= members[block];
  }
  return { blockWidth, square, members, usual: usualTexture(square, members, levels.blockWidth / blockWidth, search) };
}

function usualTexture(square: Float64Array, members: Float64Array, blocksPerLevel: number, search: FaultSearch): number {
  const quiet: number[] = [];
  const { stretchOf, stretches } = search.levels;
  for (let block = 0; block < square.length; block += 1) {
    const stretch = stretchOf[Math.min(stretchOf.length - 1, Math.floor(block / blocksPerLevel))];
    if (members[block] > 4 && stretches[stretch].ratio < 1.25) quiet.push(square[block]);
  }
  const all = quiet.length > 0 ? quiet : [...square].filter((_, block) => members[block] > 4);
  return all.length === 0 ? 0 : Math.sqrt(medianInPlace(Float64Array.from(all)));
}

/** Texture of a length over the usual, with the count of samples it rests on; null where LF does not cover it. */
export function textureRatio(texture: Texture, from: number, to: number): { ratio: number; samples: number } | null {
  const first = Math.ceil(from / texture.blockWidth);
  const end = Math.floor(to / texture.blockWidth);
  const squares: number[] = [];
  let samples = 0;
  const [low, high] = end > first ? [first, end] : [Math.floor((from + to) / 2 / texture.blockWidth), Math.floor((from + to) / 2 / texture.blockWidth) + 1];
  for (let block = Math.max(0, low); block < Math.min(texture.square.length, high); block += 1) {
    if (texture.members[block] < 4) continue;
    squares.push(texture.square[block]);
    samples += texture.members[block];
  }
  if (squares.length === 0 || samples < 0.3 * (to - from) || texture.usual <= 0) return null;
  // The middle of the blocks: a break missed or a splash of noise in one of them is no texture.
  return { ratio: Math.sqrt(medianInPlace(Float64Array.from(squares))) / texture.usual, samples };
}
