import type { NoiseCell } from './noise-cells.ts';
import type { RateTable } from './rate-table.ts';
import { LOG_RATE, MEAN_RATE_SPREAD, RATE_SPREADS, SHAPES, SHAPE_SPREADS } from './settings.ts';

/** Log likelihood of one place: without growth by noise cell, and rate tables by noise cell and shape. */
export interface PlaceEvidence {
  readonly noGrowth: Float64Array;
  readonly tables: readonly (readonly (RateTable | null)[])[]; // [shape][cell]
}

export interface Hierarchy {
  readonly cells: readonly NoiseCell[];
  readonly noGrowthPrior: number;
  /** Rough centre of the log rates of the rope. */
  readonly centre: number;
  readonly shapePrior: readonly number[];
}

/** One assumption about the whole rope: noise, common shape and its spread. */
export interface PopulationCell {
  readonly cell: number;
  /** Weight of each shape for a single place. */
  readonly shapeWeights: Float64Array;
  /** Log of the joint probability of all readings and this assumption. */
  readonly logJoint: number;
  readonly places: readonly PlacePrior[];
}

/** What all other places say of one place, under one assumption. */
export interface PlacePrior {
  /** Density of log rate on the common grid. */
  readonly density: Float64Array;
  /** Probability that the place grows, its own readings included. */
  readonly growing: number;
}

/** Assumptions this far (natural log) below the best are dropped. */
const NEGLIGIBLE = 9;

export const BINS = Math.round((LOG_RATE.to - LOG_RATE.from) / LOG_RATE.step) + 1;

interface MeanAndSpread {
  readonly logPrior: number;
  /** Density by bin times nothing: multiplied with binned likelihoods and summed. */
  readonly density: Float64Array;
}

/** The grid of mean and spread of log rates between places. Densities are normalised over the range that a rate can have. */
function meansAndSpreads(centre: number): MeanAndSpread[] {
  const grid: MeanAndSpread[] = [];
  for (const { spread, prior } of RATE_SPREADS) {
    const step = Math.max(0.12, Math.min(0.35, spread * 0.7));
    const count = Math.ceil((2 * 2.6 * MEAN_RATE_SPREAD) / step);
    for (let k = 0; k <= count; k += 1) {
      const mean = centre + (k - count / 2) * step;
      const density = new Float64Array(BINS);
      let total = 0;
      for (let b = 0; b < BINS; b += 1) {
        density[b] = Math.exp(-0.5 * ((LOG_RATE.from + b * LOG_RATE.step - mean) / spread) ** 2);
        total += density[b] * LOG_RATE.step;
      }
      if (!(total > 0)) continue;
      for (let b = 0; b < BINS; b += 1) density[b] /= total;
      grid.push({ logPrior: Math.log(prior * step) - 0.5 * ((mean - centre) / MEAN_RATE_SPREAD) ** 2, density });
    }
  }
  return grid;
}

/** A likelihood on the common grid, in units of exp(`top`). */
interface Binned {
  readonly top: number;
  readonly weight: Float64Array;
  readonly first: number;
  readonly end: number;
}

function binTable(table: RateTable | null): Binned | null {
  if (table === null) return null;
  let top = -Infinity;
  for (const each of table.logWeight) if (each > top) top = each;
  if (top === -Infinity) return null;
  const weight = new Float64Array(BINS);
  let first = BINS;
  let end = 0;
  for (let k = 0; k < table.logRate.length; k += 1) {
    const value = Math.exp(table.logWeight[k] - top);
    if (value < 1e-9) continue;
    const at = (table.logRate[k] - LOG_RATE.from) / LOG_RATE.step;
    const low = Math.max(0, Math.min(BINS - 2, Math.floor(at)));
    const share = Math.max(0, Math.min(1, at - low));
    weight[low] += value * (1 - share);
    weight[low + 1] += value * share;
    if (low < first) first = low;
    if (low + 2 > end) end = low + 2;
  }
  return { top, weight, first, end };
}

/** Prior weight of each shape for a place when the rope's common shape is `centre`. */
export function shapeWeights(centre: number, spread: number): Float64Array {
  const weights = new Float64Array(SHAPES.length);
  if (spread === 0) {
    weights[centre] = 1;
    return weights;
  }
  let total = 0;
  SHAPES.forEach((each, i) => {
    weights[i] = Math.exp(-0.5 * ((each.shape - SHAPES[centre].shape) / spread) ** 2);
    total += weights[i];
  });
  return weights.map((each) => each / total);
}

/**
 * All assumptions about the rope that its readings leave standing. Every place adds to what is known of mean and spread of rates,
 * common shape and noise; each place is left out of its own prior. Assumptions 1e-5 as likely as the best are dropped.
 */
export function populationCells(places: readonly PlaceEvidence[], hierarchy: Hierarchy): PopulationCell[] {
  const grid = meansAndSpreads(hierarchy.centre);
  const found: PopulationCell[] = [];
  let best = -Infinity;
  hierarchy.cells.forEach((noise, cell) => {
    const binned = places.map((place) => SHAPES.map((_, s) => binTable(place.tables[s][cell])));
    for (const { spread, prior: spreadPrior } of SHAPE_SPREADS) {
      SHAPES.forEach((_, s) => {
        const weights = shapeWeights(s, spread);
        const logPrior = Math.log(hierarchy.shapePrior[s] * spreadPrior * noise.prior);
        if (logPrior + upperBound(places, binned, weights, cell) < best - NEGLIGIBLE) return;
        const made = oneCell(places, binned, weights, cell, grid, hierarchy.noGrowthPrior, best - logPrior - NEGLIGIBLE);
        if (made === null) return;
        const logJoint = made.logJoint + logPrior;
        if (logJoint > best) best = logJoint;
        found.push({ ...made, logJoint });
      });
    }
  });
  return found.filter((each) => each.logJoint > best - NEGLIGIBLE);
}

/** No assumption about rates can make the readings more likely than this. */
function upperBound(places: readonly PlaceEvidence[], binned: readonly (readonly (Binned | null)[])[], weights: Float64Array, cell: number): number {
  let sum = 0;
  for (let j = 0; j < places.length; j += 1) {
    let top = places[j].noGrowth[cell];
    for (let s = 0; s < weights.length; s += 1) {
      const each = binned[j][s];
      // A density of at most about 1 / (0.12 sqrt(2 pi)) per unit of log rate.
      if (weights[s] > 1e-6 && each !== null) top = Math.max(top, each.top + 3);
    }
    sum += top;
  }
  return sum;
}

function oneCell(
  places: readonly PlaceEvidence[], binned: readonly (readonly (Binned | null)[])[], weights: Float64Array, cell: number, grid: readonly MeanAndSpread[], noGrowthPrior: number, floor: number,
): PopulationCell | null {
  const logs = Float64Array.from(grid, (each) => each.logPrior);
  const grown: Float64Array[] = []; // by place: probability of its readings with growth, by mean and spread
  const still: number[] = [];
  let tops = 0;
  for (let j = 0; j < places.length; j += 1) {
    const mixed = mix(binned[j], weights);
    if (mixed === null) return null;
    still.push(Math.exp(Math.min(50, places[j].noGrowth[cell] - mixed.top)) * noGrowthPrior);
    const mass = new Float64Array(grid.length);
    for (let g = 0; g < grid.length; g += 1) {
      const { density } = grid[g];
      let sum = 0;
      for (let b = mixed.first; b < mixed.end; b += 1) sum += mixed.weight[b] * density[b];
      mass[g] = sum * (1 - noGrowthPrior);
      logs[g] += Math.log(mass[g] + still[j] + 1e-300);
    }
    grown.push(mass);
    tops += mixed.top;
  }
  const { logSum, highest } = logSumOf(logs);
  if (logSum + tops < floor) return null;
  return { cell, shapeWeights: weights, logJoint: logSum + tops, places: places.map((_, j) => priorOf(logs, highest, grown[j], still[j], grid)) };
}

function logSumOf(logs: Float64Array): { logSum: number; highest: number } {
  let highest = -Infinity;
  for (const each of logs) if (each > highest) highest = each;
  let sum = 0;
  for (const each of logs) sum += Math.exp(each - highest);
  return { logSum: highest + Math.log(sum), highest };
}

/** What the other places say of this one: the joint weight of mean and spread divided by this place's own part in it. */
function priorOf(logs: Float64Array, highest: number, grown: Float64Array, still: number, grid: readonly MeanAndSpread[]): PlacePrior {
  const density = new Float64Array(BINS);
  let all = 0;
  let growing = 0;
  let others = 0;
  for (let g = 0; g < grid.length; g += 1) {
    const weight = Math.exp(logs[g] - highest);
    if (weight < 1e-7) continue;
    const own = grown[g] + still + 1e-300;
    all += weight;
    growing += (weight * grown[g]) / own;
    const left = weight / own;
    others += left;
    const each = grid[g].density;
    for (let b = 0; b < BINS; b += 1) density[b] += left * each[b];
  }
  if (others > 0) for (let b = 0; b < BINS; b += 1) density[b] /= others;
  return { density, growing: all > 0 ? growing / all : 0 };
}

function mix(binned: readonly (Binned | null)[], weights: Float64Array): Binned | null {
  let top = -Infinity;
  for (let s = 0; s < weights.length; s += 1) if (weights[s] > 1e-6 && binned[s] !== null) top = Math.max(top, binned[s]!.top);
  if (top === -Infinity) return null;
  const weight = new Float64Array(BINS);
  let first = BINS;
  let end = 0;
  for (let s = 0; s < weights.length; s += 1) {
    const each = binned[s];
    if (weights[s] <= 1e-6 || each === null) continue;
    const factor = weights[s] * Math.exp(each.top - top);
    if (factor < 1e-9) continue;
    for (let b = each.first; b < each.end; b += 1) weight[b] += factor * each.weight[b];
    if (each.first < first) first = each.first;
    if (each.end > end) end = each.end;
  }
  return { top, weight, first, end };
}
