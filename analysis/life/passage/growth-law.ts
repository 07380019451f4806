/**
 * One family for the growth of damage: rate of growth proportional to a power of the level reached, dy/dt = r y^(1 - shape).
 * Box and Cox's transform of y with exponent `shape` is then straight in time:
 *   shape 1 linear; 1/2 quadratic from its onset; 0 exponential; below 0 faster still, as the crack growth law of Paris and Erdogan
 *   (exponent m gives shape 1 - m/2); above 1 slowing down (2: square root of time).
 * Everything is written from the last reading: `level` is y there, `u` is time after it (earlier readings have u < 0).
 * For a shape above 0 the level is 0 before the onset.
 */
export interface PathPoint {
  level: number;
  /** Derivative by time. */
  rate: number;
  /** Derivative by the level at the last reading. */
  byLevel: number;
}

/** A rate that is infinite at the onset of a slowing path is held below this multiple of the rate now. */
const STEEPEST = 30;

/** Writes the path at `u` into `out`; `rate` is r, the rate where y is 1. Level > 0. */
export function pathAt(level: number, rate: number, shape: number, u: number, out: PathPoint): void {
  if (shape === 1) {
    const y = level + rate * u;
    out.level = y > 0 ? y : 0;
    out.rate = y > 0 ? rate : 0;
    out.byLevel = y > 0 ? 1 : 0;
    return;
  }
  if (shape === 0) {
    const growth = Math.exp(rate * u);
    out.level = level * growth;
    out.rate = rate * out.level;
    out.byLevel = growth;
    return;
  }
  const ratio = 1 + shape * rate * u * level ** -shape;
  if (!(ratio > 1e-9)) {
    out.level = 0;
    out.rate = 0;
    out.byLevel = 0;
    return;
  }
  const growth = ratio ** (1 / shape);
  const steep = growth ** (1 - shape);
  out.level = level * growth;
  out.byLevel = steep < STEEPEST ? steep : STEEPEST;
  out.rate = rate * level ** (1 - shape) * out.byLevel;
}

/**
 * Levels and their derivatives by the level at the last reading at all times `u`: what pathAt gives, at one power a point instead of
 * three. The inner loop of every forecast.
 */
export function pathOver(level: number, rate: number, shape: number, u: Float64Array, levels: Float64Array, byLevel: Float64Array): void {
  const n = u.length;
  if (shape === 1 || shape === 0) {
    for (let i = 0; i < n; i += 1) {
      const straight = level + rate * u[i];
      const growth = shape === 0 ? Math.exp(rate * u[i]) : 0;
      levels[i] = shape === 0 ? level * growth : straight > 0 ? straight : 0;
      byLevel[i] = shape === 0 ? growth : straight > 0 ? 1 : 0;
    }
    return;
  }
  const slope = shape * rate * level ** -shape;
  const power = 1 / shape;
  for (let i = 0; i < n; i += 1) {
    const ratio = 1 + slope * u[i];
    const growth = ratio > 1e-9 ? ratio ** power : 0;
    const steep = ratio > 1e-9 ? growth / ratio : 0;
    levels[i] = level * growth;
    byLevel[i] = steep < STEEPEST ? steep : STEEPEST;
  }
}

/**
 * Log prior weight of a path that makes two exact readings, one at `u` and one at 0, equally likely under every shape: the pace at the
 * first over the mean pace between them. Level and log pace at the last reading taken as equally likely everywhere would favour every
 * path that comes out of almost nothing. Not below LEAST: a path may begin after `u`.
 */
export function logShapeNeutral(level: number, rate: number, shape: number, u: number): number {
  if (shape === 1) return 0;
  pathAt(level, rate, shape, u, scratch);
  const mean = (level - scratch.level) / -u;
  return mean > 1e-9 * level ? Math.log(Math.max(LEAST, scratch.rate / mean)) : 0;
}

const LEAST = 0.1;
const scratch: PathPoint = { level: 0, rate: 0, byLevel: 0 };

/** Time from the last reading until the level reaches `limit`; 0 where it has, Infinity where it never does. */
export function timeToReach(limit: number, level: number, rate: number, shape: number): number {
  if (level >= limit) return 0;
  if (!(rate > 0)) return Infinity;
  if (Math.abs(shape) < 1e-9) return Math.log(limit / level) / rate;
  return (limit ** shape - level ** shape) / (shape * rate);
}

/** Level after time u from the last reading; Infinity past the end of a path that blows up. */
export function levelAfter(level: number, rate: number, shape: number, u: number): number {
  if (Math.abs(shape) < 1e-9) return level * Math.exp(rate * u);
  const raised = level ** shape + shape * rate * u;
  if (raised <= 0) return shape > 0 ? 0 : Infinity;
  return raised ** (1 / shape);
}
