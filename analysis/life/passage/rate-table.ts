import { pathAt } from './growth-law.ts';
import { fitCounts } from './fit-counts.ts';
import { fitLevel } from './fit-level.ts';
import type { LevelFit } from './fit-level.ts';
import { whitening } from './noise-cells.ts';
import type { NoiseCell } from './noise-cells.ts';
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
const FINE = 0.6; // in sigmas
const REACH = 4.2; // sigmas
const WIDEST = 1.2;

type Evaluate = (logRate: number, start: number, out: LevelFit) => void;

/** One place and one shape under all noise cells: evaluators, and the peaks found so far. */
export interface ShapeFits {
  readonly evaluate: readonly (Evaluate | null)[]; // by noise cell
  readonly zeroSigma: readonly number[];
  readonly start: readonly number[];
  peak: number;
}

export function shapeFits(place: ScaledPlace, shape: number, cells: readonly NoiseCell[], unit: number): ShapeFits {
  const start = cells.map((cell) => (place.counts ? Math.max(place.y[place.y.length - 1], 0.5 * unit) : startingLevel(place, cell)));
  if (place.counts) {
    const evaluate = cells.map((cell): Evaluate => (logRate, from, out) => fitCounts(place, unit, cell.irregularity, logRate, shape, from, out));
    return { evaluate, zeroSigma: cells.map(() => 0), start, peak: NaN };
  }
  // The reference path through which irregular growth is seen: the best one without it, once for each kind of zero.
  const references = new Map<number, { rates: Float64Array; peak: number }>();
  let peak = NaN;
  const whitened = cells.map((cell, c) => {
    let reference = references.get(cell.zero);
    if (reference === undefined) {
      const plain = whitening(place, { scale: 1, irregularity: 0, zero: cell.zero, prior: 1 }, new Float64Array(place.u.length))!;
      const found = findPeak((logRate, from, out) => fitLevel(place, plain, cell, logRate, shape, from, out), start[c], NaN);
      reference = { rates: ratesAt(place, shape, found.best, found.level), peak: found.best };
      references.set(cell.zero, reference);
      if (Number.isNaN(peak)) peak = found.best;
    }
    return whitening(place, cell, reference.rates);
  });
  return {
    evaluate: whitened.map((each, c): Evaluate | null => (each === null ? null : (logRate, from, out) => fitLevel(place, each, cells[c], logRate, shape, from, out))),
    zeroSigma: whitened.map((each, c) => (each === null ? 0 : zeroSigma(each.w, place.u.length, cells[c].zero))), start, peak,
  };
}

/** Highest log likelihood under one noise cell, to tell which cells are worth a table. */
export function peakLikelihood(fits: ShapeFits, cell: number): number {
  const evaluate = fits.evaluate[cell];
  if (evaluate === null) return -Infinity;
  const found = findPeak(evaluate, fits.start[cell], fits.peak);
  fits.peak = found.best;
  return found.top + Math.log(found.sigma);
}

export function rateTable(fits: ShapeFits, cell: number): RateTable | null {
  const evaluate = fits.evaluate[cell];
  if (evaluate === null) return null;
  const found = tableOf(evaluate, fits.start[cell], fits.peak, fits.zeroSigma[cell]);
  fits.peak = found.peak;
  return found.table;
}

function startingLevel(place: ScaledPlace, cell: NoiseCell): number {
  const n = place.y.length;
  const level = cell.zero > 0 ? place.y[n - 1] - place.y[0] : place.y[n - 1];
  return Math.max(level, 0.05);
}

function ratesAt(place: ScaledPlace, shape: number, logRate: number, level: number): Float64Array {
  const point = { level: 0, rate: 0, byLevel: 0 };
  const mean = Math.max(1e-3, (place.y[place.y.length - 1] - place.y[0]) / Math.max(-place.u[0], 1e-6));
  return place.u.map((u) => {
    pathAt(level, Math.exp(logRate), shape, u, point);
    // Before its onset a path stands still, but its onset is as irregular as the rest: without this, waiting at zero would look exact.
    return Math.max(point.rate, 0.5 * mean);
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

const COARSE_COUNT = Math.floor((LOG_RATE.to - LOG_RATE.from) / COARSE) + 1;

/** Best log rate from a warm start, or by a scan of the whole range. */
function findPeak(evaluate: Evaluate, start: number, warm: number): { best: number; sigma: number; top: number; level: number } {
  const fit: LevelFit = { logLikelihood: 0, level: start, sigma: 0, zero: 0, zeroByLevel: 0 };
  const at = (logRate: number): number => {
    evaluate(logRate, start, fit);
    return fit.logLikelihood;
  };
  const { best, sigma } = peakAndWidth(at, Number.isNaN(warm) ? scan(at, LOG_RATE.from, COARSE_COUNT) : climb(at, warm));
  const top = at(best);
  return { best, sigma, top, level: fit.level };
}

/** Nodes about the peak at part of a sigma, and a coarse net over the whole range where the peak is wide. */
function tableOf(evaluate: Evaluate, start: number, warm: number, zeroWidth: number): { table: RateTable; peak: number } {
  const from = LOG_RATE.from;
  const count = COARSE_COUNT;
  const { best, sigma, level } = findPeak(evaluate, start, warm);
  const nodes: number[] = [];
  for (let z = -REACH; z <= REACH + 1e-9; z += FINE) {
    const node = best + z * sigma;
    if (node >= from && node <= LOG_RATE.to) nodes.push(node);
  }
  if (sigma > 0.12) for (let i = 0; i < count; i += 1) if (Math.abs(from + i * COARSE - best) > REACH * sigma) nodes.push(from + i * COARSE);
  nodes.sort((a, b) => a - b);
  return { table: fillTable(evaluate, nodes, level, zeroWidth), peak: best };
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

/** Peak and sigma of the log likelihood by parabolas through three points, the step following the width found. */
function peakAndWidth(at: (x: number) => number, start: number): { best: number; sigma: number } {
  let best = start;
  let h = COARSE / 2;
  let sigma = WIDEST;
  for (let round = 0; round < 9; round += 1) {
    const here = at(best);
    const below = at(best - h);
    const above = at(best + h);
    const bend = below - 2 * here + above;
    if (!(bend < 0)) {
      // Flat or rising to one side: the range is wide, and the coarse net will see it.
      if (here >= below && here >= above) return { best, sigma: WIDEST };
      best = clampRate(best + (above > below ? h : -h));
      continue;
    }
    sigma = Math.min(WIDEST, h / Math.sqrt(-bend));
    const shift = (0.5 * h * (below - above)) / bend;
    const step = Math.max(-2 * h, Math.min(2 * h, shift));
    best = clampRate(best + step);
    if (Math.abs(step) < 0.3 * sigma && h < 1.6 * sigma && h > 0.3 * Math.min(sigma, 0.3)) break;
    h = Math.max(Math.min(h, sigma), Math.abs(step) > 1.5 * h ? h : Math.min(sigma, COARSE / 2));
  }
  return { best, sigma };
}

function clampRate(logRate: number): number {
  return Math.max(LOG_RATE.from, Math.min(LOG_RATE.to, logRate));
}
