import type { ScaledPlace, ScaledRope } from './series.ts';
import { IRREGULARITIES, NOISE_SCALES, UNSTATED_NOISE_SCALES } from './settings.ts';

/** One assumption about what separates readings from the path: noise of reading, irregular growth, unknown zero. */
export interface NoiseCell {
  /** Multiple of the stated (or roughly estimated) noise. */
  readonly scale: number;
  /** Standard deviation of operational time over one span, as a share of the span. */
  readonly irregularity: number;
  /** Standard deviation of the unknown zero in reference levels; 0 where zero is zero. */
  readonly zero: number;
  readonly prior: number;
}

/** Chance, before looking, that growth counts from an unknown level although the quantity has a zero. */
const UNKNOWN_ZERO_PRIOR = 0.15;
/** An unknown zero is asked for only where a place has readings enough to show it. */
const READINGS_FOR_ZERO = 5;

export function noiseCells(rope: ScaledRope): NoiseCell[] {
  const scales = rope.noiseStated ? NOISE_SCALES : UNSTATED_NOISE_SCALES;
  const counts = rope.places.every((place) => place.counts);
  const enough = !counts && rope.places.some((place) => place.u.length >= READINGS_FOR_ZERO);
  const zeros = rope.zeroUnknown ? [{ zero: 1, prior: 1 }] : enough ? [{ zero: 0, prior: 1 - UNKNOWN_ZERO_PRIOR }, { zero: 1, prior: UNKNOWN_ZERO_PRIOR }] : [{ zero: 0, prior: 1 }];
  const cells: NoiseCell[] = [];
  for (const { zero, prior: zeroPrior } of zeros) {
    for (const { share, prior: sharePrior } of IRREGULARITIES) {
      for (const { scale, prior } of counts ? [{ scale: 1, prior: 1 }] : scales) cells.push({ scale, irregularity: share, zero, prior: prior * sharePrior * zeroPrior });
    }
  }
  return cells;
}

/** Whitening of a place's readings under one noise cell: W with W V W' = I, lower triangular, row by row; and log det W. */
export interface Whitening {
  readonly w: Float64Array;
  readonly logDeterminant: number;
}

/**
 * V = (scale noise)^2 + irregular growth + unknown zero. Irregular growth is a random walk of operational time, tied to the last
 * reading, seen through the path's own rate. Cost: n^3 for n readings. Null where V is not positive definite.
 */
export function whitening(place: ScaledPlace, cell: NoiseCell, rates: Float64Array): Whitening | null {
  const n = place.u.length;
  const l = new Float64Array(n * n);
  const walk = cell.irregularity ** 2;
  let logDeterminant = 0;
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k <= i; k += 1) {
      let sum = walk * rates[i] * rates[k] * Math.min(-place.u[i], -place.u[k]) + cell.zero ** 2;
      if (i === k) sum += (cell.scale * place.noise[i]) ** 2;
      for (let m = 0; m < k; m += 1) sum -= l[i * n + m] * l[k * n + m];
      if (i === k) {
        if (!(sum > 0)) return null;
        l[i * n + i] = Math.sqrt(sum);
        logDeterminant -= Math.log(l[i * n + i]);
      } else l[i * n + k] = sum / l[k * n + k];
    }
  }
  return { w: invertLower(l, n), logDeterminant };
}

function invertLower(l: Float64Array, n: number): Float64Array {
  const w = new Float64Array(n * n);
  for (let column = 0; column < n; column += 1) {
    w[column * n + column] = 1 / l[column * n + column];
    for (let i = column + 1; i < n; i += 1) {
      let sum = 0;
      for (let m = column; m < i; m += 1) sum -= l[i * n + m] * w[m * n + column];
      w[i * n + column] = sum / l[i * n + i];
    }
  }
  return w;
}
