import { pathAt } from './growth-law.ts';
import { fitCounts } from './fit-counts.ts';
import { fitLevel } from './fit-level.ts';
import type { LevelFit } from './fit-level.ts';
import { whitening } from './noise-cells.ts';
import type { NoiseCell, Whitening } from './noise-cells.ts';
import type { ScaledPlace } from './series.ts';
import { LOG_RATE } from './settings.ts';

/** What the readings of one place say of its growth rate, for one shape and one noise cell: nodes of a quadrature in log rate. */
export interface RateTable {
  readonly logRate: Float64Array;
  /** Log of likelihood times width of the node. */
  readonly logWeight: Float64Array;
  readonly level: Float64Array;
  readonly sigma: Float64Array;
  readonly zero: Float64Array;
  readonly zeroByLevel: Float64Array;
  /** One sigma of the unknown zero with the level fixed. */
  readonly zeroSigma: number;
}

const COARSE = 0.36;
const FINE = 0.5; // in sigmas
const REACH = 4.5; // sigmas

type Evaluate = (logRate: number, start: number, out: LevelFit) => void;

/** All noise cells of one place and shape. Null for a cell under which the readings are impossible. */
export function rateTables(place: ScaledPlace, shape: number, cells: readonly NoiseCell[], unit: number): (RateTable | null)[] {
  let peak = NaN;
  let rates: Float64Array | null = null;
  return cells.map((cell) => {
    if (place.counts) {
      const evaluate: Evaluate = (logRate, start, out) => fitCounts(place, unit, cell.irregularity, logRate, shape, start, out);
      const table = tableOf(evaluate, Math.max(place.y[place.y.length - 1], 0.5 * unit), peak, 0);
      peak = table.peak;
      return table.table;
    }
    const start = startingLevel(place, cell);
    if (rates === null) {
      const plain = whitening(place, { scale: 1, irregularity: 0, zero: cell.zero, prior: 1 }, new Float64Array(place.u.length))!;
      const first = tableOf((logRate, from, out) => fitLevel(place, plain, cell, logRate, shape, from, out), start, NaN, 0);
      peak = first.peak;
      rates = ratesAt(place, shape, first.peak, first.level);
    }
    const whitened: Whitening | null = whitening(place, cell, rates);
    if (whitened === null) return null;
    const found = tableOf((logRate, from, out) => fitLevel(place, whitened, cell, logRate, shape, from, out), start, peak, zeroSigma(whitened.w, place.u.length, cell.zero));
    peak = found.peak;
    return found.table;
  });
}

function startingLevel(place: ScaledPlace, cell: NoiseCell): number {
  const n = place.y.length;
  const level = cell.zero > 0 ? place.y[n - 1] - place.y[0] : place.y[n - 1];
  return Math.max(level, 0.05);
}

function ratesAt(place: ScaledPlace, shape: number, logRate: number, level: number): Float64Array {
  const point = { level: 0, rate: 0, byLevel: 0 };
  return place.u.map((u) => {
    pathAt(level, Math.exp(logRate), shape, u, point);
    return point.rate;
  });
}

function zeroSigma(w: Float64Array, n: number, zero: number): number {
  if (zero === 0) return 0;
  let square = 0;
  for (let i = 0; i < n; i += 1) {
    let ones = 0;
    for (let m = 0; m <= i; m += 1) ones += w[i * n + m];
    square += ones * ones;
  }
  return Math.sqrt(Math.max(0, zero * zero - zero ** 4 * square));
}

/** Nodes about the peak at half a sigma, and a coarse net over the whole range where the peak is wide. */
function tableOf(evaluate: Evaluate, start: number, warm: number, zeroWidth: number): { table: RateTable; peak: number; level: number } {
  const fit: LevelFit = { logLikelihood: 0, level: start, sigma: 0, zero: 0, zeroByLevel: 0 };
  const from = LOG_RATE.from;
  const count = Math.floor((LOG_RATE.to - from) / COARSE) + 1;
  let level = start;
  const at = (logRate: number): number => {
    evaluate(logRate, level, fit);
    return fit.logLikelihood;
  };
  let best = Number.isNaN(warm) ? scan(at, from, count) : climb(at, warm);
  best = refine(at, best, COARSE);
  const top = at(best);
  level = fit.level;
  const sigma = widthAt(at, best, top);
  const nodes: number[] = [];
  for (let z = -REACH; z <= REACH + 1e-9; z += FINE) {
    const node = best + z * sigma;
    if (node >= from && node <= LOG_RATE.to) nodes.push(node);
  }
  if (sigma > 0.12) for (let i = 0; i < count; i += 1) if (Math.abs(from + i * COARSE - best) > REACH * sigma) nodes.push(from + i * COARSE);
  nodes.sort((a, b) => a - b);
  return { table: fillTable(evaluate, nodes, level, zeroWidth), peak: best, level };
}

function fillTable(evaluate: Evaluate, nodes: readonly number[], level: number, zeroWidth: number): RateTable {
  const n = nodes.length;
  const make = () => new Float64Array(n);
  const table = { logRate: Float64Array.from(nodes), logWeight: make(), level: make(), sigma: make(), zero: make(), zeroByLevel: make(), zeroSigma: zeroWidth };
  const fit: LevelFit = { logLikelihood: 0, level, sigma: 0, zero: 0, zeroByLevel: 0 };
  for (let i = 0; i < n; i += 1) {
    evaluate(nodes[i], level, fit);
    const width = n === 1 ? LOG_RATE.step : ((i + 1 < n ? nodes[i + 1] : nodes[i]) - (i > 0 ? nodes[i - 1] : nodes[i])) / 2;
    table.logWeight[i] = fit.logLikelihood + Math.log(width);
    table.level[i] = fit.level;
    table.sigma[i] = fit.sigma;
    table.zero[i] = fit.zero;
    table.zeroByLevel[i] = fit.zeroByLevel;
  }
  return table;
}

function scan(at: (x: number) => number, from: number, count: number): number {
  let best = from;
  let top = -Infinity;
  for (let i = 0; i < count; i += 1) {
    const here = at(from + i * COARSE);
    if (here > top) {
      top = here;
      best = from + i * COARSE;
    }
  }
  return best;
}

function climb(at: (x: number) => number, start: number): number {
  let x = start;
  let here = at(x);
  for (let round = 0; round < 30; round += 1) {
    const up = x + COARSE <= LOG_RATE.to ? at(x + COARSE) : -Infinity;
    if (up > here) {
      x += COARSE;
      here = up;
      continue;
    }
    const down = x - COARSE >= LOG_RATE.from ? at(x - COARSE) : -Infinity;
    if (!(down > here)) return x;
    x -= COARSE;
    here = down;
  }
  return x;
}

/** Golden section within one step to either side. */
function refine(at: (x: number) => number, centre: number, step: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = Math.max(LOG_RATE.from, centre - step);
  let high = Math.min(LOG_RATE.to, centre + step);
  let a = high - golden * (high - low);
  let b = low + golden * (high - low);
  let fa = at(a);
  let fb = at(b);
  while (high - low > 2e-3) {
    if (fa > fb) {
      high = b;
      b = a;
      fb = fa;
      a = high - golden * (high - low);
      fa = at(a);
    } else {
      low = a;
      a = b;
      fa = fb;
      b = low + golden * (high - low);
      fb = at(b);
    }
  }
  return (low + high) / 2;
}

/** Sigma of the log rate from how fast the likelihood falls off the peak; the wider side counts. */
function widthAt(at: (x: number) => number, best: number, top: number): number {
  let h = 0.25;
  for (let round = 0; round < 12; round += 1) {
    const drop = Math.max(top - at(best - h), top - at(best + h));
    if (drop < 0.02) return Math.min(1.2, h * 4);
    const softer = Math.min(top - at(best - h), top - at(best + h));
    if (softer < 1.5) return Math.min(1.2, h / Math.sqrt(2 * Math.max(softer, 0.02)));
    h /= 2.5;
  }
  return h;
}
