import { changePoints } from '../signal/change-points.ts';
import { NORMAL_MAD } from '../signal/mad.ts';
import { medianInPlace } from '../signal/median.ts';
import { weightedErrorCost } from '../signal/segment-cost.ts';
import { blockLevels } from './block-levels.ts';

/** LF noise by position: stretches of blocks within which the noise is alike. */
export interface NoiseLevels {
  readonly blockWidth: number; // samples
  /** Stretch that each block belongs to. */
  readonly stretchOf: Int32Array;
  /** Noise of a block over that of its stretch, where a change of noise within or beside the block makes it louder; else 1. */
  readonly louder: Float64Array;
  readonly stretches: readonly NoiseStretch[];
}

export interface NoiseStretch {
  readonly from: number; // block
  readonly end: number;
  /** Robust scale of one sample without strand pattern, LF unit. */
  readonly scale: number;
  /** Over the rope's own usual scale. */
  readonly ratio: number;
}

/**
 * Divides the rope into stretches of alike noise by a penalised change-point search on the logarithm of robust block scales:
 * the texture of a corroded length becomes a stretch of its own and is judged against itself.
 */
export function noiseLevels(values: Float64Array, mask: Uint8Array, blockWidth: number, penalty: number): NoiseLevels | null {
  const blocks = blockLevels(values, mask, blockWidth);
  const count = blocks.scale.length;
  const known: number[] = [];
  for (let k = 0; k < count; k += 1) if (blocks.valid[k] === 1 && blocks.scale[k] > 0) known.push(k);
  if (known.length === 0) return null;
  const logarithm = Float64Array.from(known, (k) => Math.log(blocks.scale[k]));
  // Scatter of a block's own logarithm, from neighbouring differences: a change of level hardly enters it.
  const differences = Float64Array.from(logarithm.subarray(1), (value, i) => Math.abs(value - logarithm[i]));
  const scatter = differences.length > 4 ? Math.max(0.03, medianInPlace(differences) / 0.6745 / Math.SQRT2) : 0.15;
  const weights = new Float64Array(known.length).fill(1 / scatter ** 2);
  const cuts = changePoints(known.length, weightedErrorCost(logarithm, weights), penalty, 2).starts;
  const bounds = [0, ...cuts, known.length];
  const levels = bounds.slice(1).map((end, i) => medianInPlace(logarithm.slice(bounds[i], end)));
  const usual = usualLevel(levels, bounds);
  const stretches = levels.map((level, i) => ({
    from: i === 0 ? 0 : known[bounds[i]], end: i === levels.length - 1 ? count : known[bounds[i + 1]], scale: Math.exp(level), ratio: Math.exp(level - usual),
  }));
  const stretchOf = new Int32Array(count);
  stretches.forEach((stretch, i) => stretchOf.fill(i, stretch.from, stretch.end));
  return { blockWidth, stretchOf, stretches, louder: louderBlocks(blocks.scale, blocks.valid, stretchOf, stretches) };
}

/** A block scatters by some ten percent of itself: only what is beyond this share over its stretch is a louder block. */
const LOUDER = 1.35;

/** The edge of a rough length seldom falls on the edge of a block: each block is as loud as the loudest of itself and its neighbours. */
function louderBlocks(scale: Float64Array, valid: Uint8Array, stretchOf: Int32Array, stretches: readonly NoiseStretch[]): Float64Array {
  const louder = new Float64Array(scale.length).fill(1);
  for (let k = 0; k < scale.length; k += 1) {
    let loudest = 0;
    for (let j = Math.max(0, k - 1); j <= Math.min(scale.length - 1, k + 1); j += 1) if (valid[j] === 1 && scale[j] > loudest) loudest = scale[j];
    const ratio = loudest / stretches[stretchOf[k]].scale;
    if (ratio > LOUDER) louder[k] = ratio;
  }
  return louder;
}

/** The level at 40 % of the rope's length, from the quiet end: raised texture covers the minority of a rope in service. */
function usualLevel(levels: number[], bounds: number[]): number {
  const order = levels.map((level, i) => ({ level, length: bounds[i + 1] - bounds[i] })).sort((a, b) => a.level - b.level);
  const total = bounds[bounds.length - 1];
  let reached = 0;
  for (const each of order) {
    reached += each.length;
    if (reached >= 0.4 * total) return each.level;
  }
  return order[order.length - 1].level;
}

/** Samples of a block that its scale rests on: the median over a stretch's blocks steadies it. */
const ENOUGH = 32;
/** Blocks of a stretch that its scale rests on, evenly spread: some sixty medians leave it known within two percent. */
const ENOUGH_BLOCKS = 64;

/** Robust scale by stretch of some other signal of mean zero on the same blocks, for short stretches led by the usual proportion. */
export function scaleByStretch(values: Float64Array, mask: Uint8Array, levels: NoiseLevels, blockWidth: number): Float64Array {
  const members: number[][] = levels.stretches.map(() => []);
  const stride = Math.max(1, Math.floor(blockWidth / ENOUGH));
  const scratch = new Float64Array(Math.ceil(blockWidth / stride) + 1);
  const blocks = Math.ceil(values.length / blockWidth);
  levels.stretches.forEach(({ from, end }, i) => {
    const hop = Math.max(1, Math.floor((end - from) / ENOUGH_BLOCKS));
    for (let k = from; k < Math.min(end, blocks); k += hop) {
      let count = 0;
      const last = Math.min(values.length, (k + 1) * blockWidth);
      for (let at = k * blockWidth; at < last; at += stride) if (mask[at] === 1) scratch[count++] = Math.abs(values[at]);
      if (count < 5) continue;
      const scale = medianInPlace(scratch, 0, count) * NORMAL_MAD;
      if (scale > 0) members[i].push(scale);
    }
  });
  const usual = medianOf(levels.stretches.flatMap((stretch, i) => members[i].map((value) => value / stretch.ratio)));
  return Float64Array.from(levels.stretches, (stretch, i) => {
    const own = medianOf(members[i]);
    // A median of n blocks is trusted in the measure of n against six.
    const trust = members[i].length / (members[i].length + 6);
    return own === null || usual === null ? (usual ?? 0) * stretch.ratio : Math.exp(trust * Math.log(own) + (1 - trust) * Math.log(usual * stretch.ratio));
  });
}

function medianOf(values: number[]): number | null {
  return values.length === 0 ? null : medianInPlace(Float64Array.from(values));
}
