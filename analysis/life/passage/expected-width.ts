import type { PassageDraws } from './draw-passages.ts';
import { levelAfter } from './growth-law.ts';
import type { ScaledRope } from './series.ts';

const READINGS = 24;
const FUTURES = 600;

/**
 * Mean width of the 10-90 % interval (in units of t) once one more reading is taken at time u after the last (in spans) with noise
 * `sigma` (in reference levels). Each of an even choice of futures is read in turn and all are weighted by how well they agree.
 */
export function expectedWidth(rope: ScaledRope, draws: PassageDraws, u: number, sigma: number): number {
  const every = Math.max(1, Math.floor(draws.futures.length / FUTURES));
  const futures = draws.futures.filter((each, i) => i % every === 0 && Number.isFinite(each.passage)).sort((a, b) => a.passage - b.passage);
  const levels = Float64Array.from(futures, (each) => Math.min(3 * rope.limit, each.zero + levelAfter(each.level, each.rate, each.shape, u)));
  if (!(sigma < Infinity)) return rope.span * widthOf(futures.map((each) => each.passage), new Float64Array(futures.length).fill(1));
  const passages = futures.map((each) => each.passage);
  const weights = new Float64Array(futures.length);
  const width = Math.max(sigma, 1e-6);
  let sum = 0;
  for (let k = 0; k < READINGS; k += 1) {
    const reading = levels[Math.floor(((k + 0.5) / READINGS) * futures.length)];
    for (let i = 0; i < futures.length; i += 1) weights[i] = Math.exp(-0.5 * ((levels[i] - reading) / width) ** 2);
    sum += widthOf(passages, weights);
  }
  return (rope.span * sum) / READINGS;
}

function widthOf(sorted: readonly number[], weights: Float64Array): number {
  const total = weights.reduce((sum, each) => sum + each, 0);
  let passed = 0;
  let low = NaN;
  for (let i = 0; i < sorted.length; i += 1) {
    passed += weights[i] / total;
    if (Number.isNaN(low) && passed >= 0.1) low = sorted[i];
    if (passed >= 0.9) return sorted[i] - low;
  }
  return sorted[sorted.length - 1] - low;
}
