import { NORMAL_MAD } from '../signal/mad.ts';
import { medianInPlace } from '../signal/median.ts';
import type { NoiseLevels } from './noise-levels.ts';

/** Samples that the estimate rests on at most, in blocks evenly spread: a correlation is then known within half a percent. */
const ENOUGH = 40_000;
/** Samples beyond this many deviations are pulses, and so are their neighbours this near, m. */
const PULSE_FROM = 4;
const BESIDE = 0.05;

/**
 * Autocovariance of the noise at lags 0..lags, in units of the stretches' own variance: samples are taken over the scale of
 * their stretch, and pulses are left out with what stands beside them. `blockWidth` is that of `levels` in samples of `values`.
 */
export function noiseCorrelation(values: Float64Array, mask: Uint8Array, step: number, levels: NoiseLevels, blockWidth: number, lags: number): Float64Array {
  const sums = new Float64Array(lags + 1);
  const pairs = new Float64Array(lags + 1);
  const blocks = levels.stretchOf.length;
  const hop = Math.max(1, Math.floor((blocks * blockWidth) / ENOUGH));
  const halo = Math.ceil(BESIDE / step);
  for (let block = 0; block < blocks; block += hop) {
    const from = Math.round(block * blockWidth);
    const end = Math.min(values.length, Math.round((block + 1) * blockWidth) + lags);
    if (end - from < 2) continue;
    const piece = quietPiece(values, mask, from, end, halo, 1 / (levels.stretches[levels.stretchOf[block]].scale * levels.louder[block]));
    addProducts(piece.values, piece.quiet, sums, pairs);
  }
  return sums.map((sum, lag) => (pairs[lag] > 0 ? sum / pairs[lag] : 0));
}

interface Piece { readonly values: Float64Array; readonly quiet: Uint8Array }

function quietPiece(values: Float64Array, mask: Uint8Array, from: number, end: number, halo: number, scale: number): Piece {
  const count = end - from;
  const out = new Float64Array(count);
  const quiet = new Uint8Array(count);
  const sizes = new Float64Array(count);
  let members = 0;
  for (let i = 0; i < count; i += 1) {
    if (mask[from + i] !== 1) continue;
    quiet[i] = 1;
    out[i] = values[from + i] * scale;
    sizes[members++] = Math.abs(out[i]);
  }
  const bound = members === 0 ? 0 : PULSE_FROM * NORMAL_MAD * medianInPlace(sizes, 0, members);
  for (let i = 0; i < count; i += 1) {
    if (mask[from + i] === 1 && Math.abs(values[from + i] * scale) > bound) quiet.fill(0, Math.max(0, i - halo), Math.min(count, i + halo + 1));
  }
  for (let i = 0; i < count; i += 1) if (quiet[i] === 0) out[i] = 0;
  return { values: out, quiet };
}

function addProducts(values: Float64Array, quiet: Uint8Array, sums: Float64Array, pairs: Float64Array): void {
  for (let lag = 0; lag < sums.length; lag += 1) {
    let sum = 0;
    let count = 0;
    for (let i = lag; i < values.length; i += 1) {
      sum += values[i] * values[i - lag];
      count += quiet[i] & quiet[i - lag];
    }
    sums[lag] += sum;
    pairs[lag] += count;
  }
}
