import { pathAt } from './growth-law.ts';
import { fitCounts } from './fit-counts.ts';
import { fitLevel } from './fit-level.ts';
import type { LevelFit } from './fit-level.ts';
import { whitening } from './noise-cells.ts';
import type { NoiseCell } from './noise-cells.ts';
import type { ScaledPlace } from './series.ts';
import { LOG_PACE } from './settings.ts';

/** What the readings of one place say of its growth rate, for one shape and one noise cell: nodes of a quadrature in log pace. */
export interface RateTable {
  /** Log of the rate of growth at the middle of the place's own levels, in reference levels per span: it means the same under every shape. */
  readonly logPace: Float64Array;
  /** Added to log pace gives the log of the rate r of growth-law.ts. */
  readonly toLogRate: number;
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
/** A log likelihood this far below the peak counts for nothing. */
const NOTHING = 12;
const ROUNDS = 24;

type Evaluate = (logPace: number, start: number, out: LevelFit) => void;

/** One place and one shape under all noise cells: evaluators, and the peaks found so far. */
export interface ShapeFits {
  readonly evaluate: readonly (Evaluate | null)[]; // by noise cell
  readonly zeroSigma: readonly number[];
  readonly start: readonly number[];
  readonly toLogRate: readonly number[];
  peak: number;
}

export function shapeFits(place: ScaledPlace, shape: number, cells: readonly NoiseCell[], unit: number): ShapeFits {
  const start = cells.map((cell) => startingLevel(place, cell, unit));
  const toLogRate = cells.map((cell) => (shape - 1) * Math.log(paceLevel(place, cell, unit)));
  if (place.counts) {
    const evaluate = cells.map((cell, c): Evaluate => (logPace, from, out) => fitCounts(place, unit, cell.irregularity, logPace + toLogRate[c], shape, from, out));
    return { evaluate, zeroSigma: cells.map(() => 0), start, toLogRate, peak: NaN };
  }
  // The reference path through which irregular growth is seen: the best one without it, once for each kind of zero.
  const references = new Map<number, { rates: Float64Array; peak: number }>();
  let peak = NaN;
  const whitened = cells.map((cell, c) => {
    let reference = references.get(cell.zero);
    if (reference === undefined) {
      const plain = whitening(place, { scale: 1, irregularity: 0, zero: cell.zero, prior: 1 }, new Float64Array(place.u.length))!;
      const found = findPeak((logPace, from, out) => fitLevel(place, plain, cell, logPace + toLogRate[c], shape, from, out), start[c], NaN);
      reference = { rates: ratesAt(place, shape, found.best + toLogRate[c], found.level), peak: found.best };
      references.set(cell.zero, reference);
      if (Number.isNaN(peak)) peak = found.best;
    }
    return whitening(place, cell, reference.rates);
  });
  return {
    evaluate: whitened.map((each, c): Evaluate | null => (each === null ? null : (logPace, from, out) => fitLevel(place, each, cells[c], logPace + toLogRate[c], shape, from, out))),
    zeroSigma: whitened.map((each, c) => (each === null ? 0 : zeroSigma(each.w, place.u.length, cells[c].zero))), start, toLogRate, peak,
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
  const found = tableOf(evaluate, fits, cell);
  fits.peak = found.peak;
  return found.table;
}

/** The middle of a place's levels, at which its pace is stated: there every shape that fits has about the mean rate of the readings. */
export function paceLevel(place: ScaledPlace, cell: NoiseCell, unit: number): number {
  const last = startingLevel(place, cell, unit);
  return cell.zero > 0 ? last / 2 : (last + Math.max(0, Math.min(last, place.y[0]))) / 2;
}

/** A rough level at the last reading, from which a fit starts. */
function startingLevel(place: ScaledPlace, cell: NoiseCell, unit: number): number {
  const n = place.y.length;
  if (place.counts) return Math.max(place.y[n - 1], 0.5 * unit);
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

const COARSE_COUNT = Math.floor((LOG_PACE.to - LOG_PACE.from) / COARSE) + 1;

/** Best log pace from a warm start, or by a scan of the whole range. */
function findPeak(evaluate: Evaluate, start: number, warm: number): { best: number; sigma: number; top: number; level: number } {
  const fit: LevelFit = { logLikelihood: 0, level: start, sigma: 0, zero: 0, zeroByLevel: 0 };
  let highest = -Infinity;
  let from = start;
  const at = (logPace: number): number => {
    evaluate(logPace, from, fit);
    if (fit.logLikelihood > highest) {
      highest = fit.logLikelihood;
      from = fit.level;
    }
    return fit.logLikelihood;
  };
  const { best, sigma } = peakAndWidth(at, Number.isNaN(warm) ? scan(at, LOG_PACE.from, COARSE_COUNT) : climb(at, warm));
  const top = at(best);
  return { best, sigma, top, level: fit.level };
}

/** Nodes about the peak at part of a sigma, and a coarse net over the whole range where the peak is wide. */
function tableOf(evaluate: Evaluate, fits: ShapeFits, cell: number): { table: RateTable; peak: number } {
  const { best, sigma, top, level } = findPeak(evaluate, fits.start[cell], fits.peak);
  const nodes: number[] = [];
  for (let z = -REACH; z <= REACH + 1e-9; z += FINE) {
    const node = best + z * sigma;
    if (node >= LOG_PACE.from && node <= LOG_PACE.to) nodes.push(node);
  }
  if (sigma > 0.12) for (const side of [-1, 1]) nodes.push(...netBeyond(evaluate, best + side * REACH * sigma, side * COARSE, level, top));
  nodes.sort((a, b) => a - b);
  return { table: fillTable(evaluate, nodes, level, { toLogRate: fits.toLogRate[cell], zeroSigma: fits.zeroSigma[cell] }), peak: best };
}

/** Nodes of the coarse net from the end of the fine ones outward, as far as the readings leave anything. */
function netBeyond(evaluate: Evaluate, end: number, step: number, level: number, top: number): number[] {
  const fit: LevelFit = { logLikelihood: 0, level, sigma: 0, zero: 0, zeroByLevel: 0 };
  const nodes: number[] = [];
  for (let node = end + step; node >= LOG_PACE.from && node <= LOG_PACE.to; node += step) {
    evaluate(node, level, fit);
    nodes.push(node);
    if (fit.logLikelihood < top - NOTHING) break;
  }
  return nodes;
}

function fillTable(evaluate: Evaluate, nodes: readonly number[], level: number, known: Pick<RateTable, 'toLogRate' | 'zeroSigma'>): RateTable {
  const n = nodes.length;
  const make = () => new Float64Array(n);
  const table = { ...known, logPace: Float64Array.from(nodes), logWeight: make(), level: make(), sigma: make(), zero: make(), zeroByLevel: make() };
  const fit: LevelFit = { logLikelihood: 0, level, sigma: 0, zero: 0, zeroByLevel: 0 };
  for (let i = 0; i < n; i += 1) {
    evaluate(nodes[i], level, fit);
    const width = n === 1 ? LOG_PACE.step : ((i + 1 < n ? nodes[i + 1] : nodes[i]) - (i > 0 ? nodes[i - 1] : nodes[i])) / 2;
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
    const up = x + COARSE <= LOG_PACE.to ? at(x + COARSE) : -Infinity;
    if (up > here) {
      x += COARSE;
      here = up;
      continue;
    }
    const down = x - COARSE >= LOG_PACE.from ? at(x - COARSE) : -Infinity;
    if (!(down > here)) return x;
    x -= COARSE;
    here = down;
  }
  return x;
}

/**
 * Peak and sigma of the log likelihood: never downhill, the step shortened to the width found. Paths that slow down have peaks a
 * fiftieth of the coarse net wide with steep flanks, past which a leap by parabola alone would carry.
 */
function peakAndWidth(at: (x: number) => number, start: number): { best: number; sigma: number } {
  let best = start;
  let top = at(best);
  let h = COARSE / 2;
  let sigma = WIDEST;
  for (let round = 0; round < ROUNDS; round += 1) {
    const below = best - h < LOG_PACE.from ? beyond(top, h) : at(best - h);
    const above = best + h > LOG_PACE.to ? beyond(top, h) : at(best + h);
    if (below > top || above > top) {
      best += above > below ? h : -h;
      top = Math.max(above, below);
      continue;
    }
    const bend = below - 2 * top + above;
    if (!(bend < -1e-9)) return { best, sigma: WIDEST };
    sigma = Math.min(WIDEST, h / Math.sqrt(-bend));
    if (h <= 1.2 * sigma) {
      const shifted = best + (0.5 * h * (below - above)) / bend;
      if (shifted > LOG_PACE.from && shifted < LOG_PACE.to && at(shifted) > top) best = shifted;
      break;
    }
    h = Math.max(h / 6, Math.min(h / 2, sigma));
  }
  return { best, sigma };
}

/** What stands in for a likelihood beyond the range of paces: as flat as the widest peak. */
function beyond(top: number, h: number): number {
  return top - 0.5 * (h / WIDEST) ** 2;
}
