import { logShapeNeutral, pathOver } from './growth-law.ts';
import type { NoiseCell, Whitening } from './noise-cells.ts';
import { shapeNeutral } from './series.ts';
import type { ScaledPlace } from './series.ts';
import { LATE_ONSET_PRIOR } from './settings.ts';

/** The level at the last reading with everything else fixed, and how likely the readings then are. */
export interface LevelFit {
  /** Log likelihood with the level integrated out (Laplace; exact for straight growth). */
  logLikelihood: number;
  level: number;
  /** One sigma of the level. */
  sigma: number;
  /** Posterior mean of the unknown zero at `level`, and how it moves with the level. */
  zero: number;
  zeroByLevel: number;
}

const LATE = Math.log(LATE_ONSET_PRIOR);
const EARLY = Math.log(1 - LATE_ONSET_PRIOR);
const LOWEST_LEVEL = 1e-3;
const ROUNDS = 6;

let residual = new Float64Array(0);
let slope = new Float64Array(0);
let scratchLevel = NaN;
/** Whether growth sets in only after the first reading. */
let scratchLate = false;

function reserve(n: number): void {
  if (residual.length >= n) return;
  residual = new Float64Array(n);
  slope = new Float64Array(n);
}

/** Whitened residual and slope into the scratch arrays; returns the sum of squares and the two products that a step needs. */
function whitenedAt(place: ScaledPlace, w: Float64Array, level: number, rate: number, shape: number): { square: number; cross: number; weight: number } {
  const n = place.u.length;
  scratchLevel = level;
  pathOver(level, rate, shape, place.u, residual, slope);
  scratchLate = residual[0] === 0;
  for (let i = 0; i < n; i += 1) residual[i] = place.y[i] - residual[i];
  let square = 0;
  let cross = 0;
  let weight = 0;
  // From the last row up, so that entries still needed are not overwritten.
  for (let i = n - 1; i >= 0; i -= 1) {
    let e = 0;
    let s = 0;
    for (let m = 0; m <= i; m += 1) {
      e += w[i * n + m] * residual[m];
      s += w[i * n + m] * slope[m];
    }
    residual[i] = e;
    slope[i] = s;
    square += e * e;
    cross += e * s;
    weight += s * s;
  }
  return { square, cross, weight };
}

/** Least squares by Gauss and Newton with step halving, from `start`. */
export function fitLevel(place: ScaledPlace, { w, logDeterminant }: Whitening, cell: NoiseCell, logRate: number, shape: number, start: number, out: LevelFit): void {
  const n = place.u.length;
  reserve(n);
  const rate = Math.exp(logRate);
  let level = Math.max(start, LOWEST_LEVEL);
  let now = whitenedAt(place, w, level, rate, shape);
  for (let round = 0; round < ROUNDS; round += 1) {
    if (!(now.weight > 0)) break;
    let step = now.cross / now.weight;
    let next = now;
    let moved = level;
    for (let halving = 0; halving < 5; halving += 1) {
      moved = Math.max(level + step, level / 4, LOWEST_LEVEL);
      next = whitenedAt(place, w, moved, rate, shape);
      if (next.square <= now.square + 1e-12) break;
      step /= 2;
    }
    if (!(next.square <= now.square)) break;
    const gain = now.square - next.square;
    level = moved;
    now = next;
    if (gain < 1e-3) break;
  }
  if (scratchLevel !== level) now = whitenedAt(place, w, level, rate, shape);
  out.level = level;
  out.sigma = now.weight > 0 ? 1 / Math.sqrt(now.weight) : 1e3;
  out.logLikelihood = -0.5 * now.square + logDeterminant - 0.5 * n * Math.log(2 * Math.PI) + Math.log(out.sigma * Math.sqrt(2 * Math.PI)) + logPositive(level / out.sigma) + (scratchLate ? LATE : EARLY) + shapeNeutral(place) * logShapeNeutral(level, rate, shape, place.u[0]);
  out.zero = 0;
  out.zeroByLevel = 0;
  if (cell.zero > 0) zeroOf(w, cell.zero, n, out);
}

function zeroOf(w: Float64Array, zero: number, n: number, out: LevelFit): void {
  for (let i = 0; i < n; i += 1) {
    let ones = 0;
    for (let m = 0; m <= i; m += 1) ones += w[i * n + m];
    out.zero += zero * zero * ones * residual[i];
    out.zeroByLevel -= zero * zero * ones * slope[i];
  }
}

/** Log of the share of a normal distribution above zero whose mean is z sigmas above it; good to 1e-3 for z > -3. */
function logPositive(z: number): number {
  if (z > 5) return 0;
  return Math.log(Math.max(1e-12, 1 / (1 + Math.exp(-1.5976 * z - 0.070566 * z ** 3))));
}
