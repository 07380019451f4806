import { logShapeNeutral, pathAt } from './growth-law.ts';
import type { PathPoint } from './growth-law.ts';
import type { LevelFit } from './fit-level.ts';
import { shapeNeutral } from './series.ts';
import type { ScaledPlace } from './series.ts';

const point: PathPoint = { level: 0, rate: 0, byLevel: 0 };
const ROUNDS = 12;

/**
 * Counts that only grow: what came new between two inspections is Poisson about the growth of the mean, or negative binomial
 * where growth is irregular (a gamma operational time). `unit` is one count in reference levels. Fisher scoring in the level.
 */
export function fitCounts(place: ScaledPlace, unit: number, irregularity: number, logRate: number, shape: number, start: number, out: LevelFit): void {
  const rate = Math.exp(logRate);
  let level = Math.max(start, 1e-3);
  let now = scoreAt(place, unit, irregularity, level, rate, shape);
  for (let round = 0; round < ROUNDS; round += 1) {
    if (!(now.information > 0)) break;
    let step = now.score / now.information;
    let next = now;
    let moved = level;
    for (let halving = 0; halving < 6; halving += 1) {
      moved = Math.max(level + step, level / 4, 1e-3);
      next = scoreAt(place, unit, irregularity, moved, rate, shape);
      if (next.logLikelihood >= now.logLikelihood - 1e-12) break;
      step /= 2;
    }
    if (next.logLikelihood < now.logLikelihood) break;
    const gain = next.logLikelihood - now.logLikelihood;
    level = moved;
    now = next;
    if (gain < 1e-6) break;
  }
  out.level = level;
  out.sigma = now.information > 0 ? 1 / Math.sqrt(now.information) : 1e3;
  out.logLikelihood = now.logLikelihood + Math.log(out.sigma * Math.sqrt(2 * Math.PI)) + shapeNeutral(place) * logShapeNeutral(level, rate, shape, place.u[0]);
  out.zero = 0;
  out.zeroByLevel = 0;
}

function scoreAt(place: ScaledPlace, unit: number, irregularity: number, level: number, rate: number, shape: number): { logLikelihood: number; score: number; information: number } {
  let before = 0;
  let beforeSlope = 0;
  let counted = 0;
  let logLikelihood = 0;
  let score = 0;
  let information = 0;
  for (let i = 0; i < place.u.length; i += 1) {
    pathAt(level, rate, shape, place.u[i], point);
    const mean = Math.max((point.level - before) / unit, 1e-6);
    const slope = (point.byLevel - beforeSlope) / unit;
    const count = Math.round(place.y[i] / unit) - counted;
    const elapsed = i === 0 ? 1 : place.u[i] - place.u[i - 1];
    // The inverse size of the negative binomial distribution; 0 is Poisson.
    const extra = irregularity > 0 && elapsed > 0 ? irregularity ** 2 / elapsed : 0;
    logLikelihood += logCount(count, mean, extra);
    const variance = mean * (1 + mean * extra);
    score += ((count - mean) / variance) * slope;
    information += (slope * slope) / variance;
    before = point.level;
    beforeSlope = point.byLevel;
    counted += count;
  }
  return { logLikelihood, score, information };
}

function logCount(count: number, mean: number, extra: number): number {
  if (extra === 0) return count * Math.log(mean) - mean - logFactorial(count);
  const size = 1 / extra;
  let rising = 0;
  for (let k = 0; k < count; k += 1) rising += Math.log(size + k);
  return rising - logFactorial(count) - size * Math.log(1 + mean * extra) + count * Math.log((mean * extra) / (1 + mean * extra));
}

const FACTORIALS: number[] = [0];

function logFactorial(count: number): number {
  for (let k = FACTORIALS.length; k <= count; k += 1) FACTORIALS.push(FACTORIALS[k - 1] + Math.log(k));
  return FACTORIALS[count];
}
