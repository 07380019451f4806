import type { PassageDraws } from './draw-passages.ts';
import { levelAfter } from './growth-law.ts';
import type { ScaledRope } from './series.ts';

/** Level by time with its 10-90 % band, in the units of the series. */
export interface BandPoint {
  readonly t: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

const POINTS = 33;
const FUTURES = 400;
/** A path is drawn no further than this multiple of the limit. */
const CEILING = 3;

/** Band over the readings and on to `end`. Ahead of the last reading it holds irregular growth too. */
export function bandOf(rope: ScaledRope, draws: PassageDraws, start: number, last: number, end: number, limit: number): BandPoint[] {
  const every = Math.max(1, Math.floor(draws.futures.length / FUTURES));
  const futures = draws.futures.filter((_, i) => i % every === 0);
  const ceiling = CEILING * rope.limit;
  const points: BandPoint[] = [];
  for (let k = 0; k < POINTS; k += 1) {
    const t = start + ((end - start) * k) / (POINTS - 1);
    const u = (t - last) / rope.span;
    const levels = Float64Array.from(futures, (each, i) => {
      // An even spread of normal deviates stands for irregular growth: the band is of levels, not of one walk.
      const wander = u > 0 && each.irregularity > 0 ? each.irregularity * Math.sqrt(u) * NORMAL_SPREAD[i % NORMAL_SPREAD.length] : 0;
      return Math.min(ceiling, each.zero + levelAfter(each.level, each.rate, each.shape, u + wander));
    }).sort();
    const at = (share: number) => toUnit(rope, levels[Math.round(share * (levels.length - 1))], limit);
    const ends = [at(0.1), at(0.9)];
    points.push({ t, low: Math.min(...ends), median: at(0.5), high: Math.max(...ends) });
  }
  return points;
}

const NORMAL_SPREAD = [-1.6449, 0.1257, 1.0364, -0.6745, 0.3853, -1.0364, 1.6449, -0.3853, 0.6745, -0.1257];

function toUnit(rope: ScaledRope, level: number, limit: number): number {
  return limit + rope.direction * (level - rope.limit) * rope.reference;
}
