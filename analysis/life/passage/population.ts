import type { NoiseCell } from './noise-cells.ts';
import type { RateTable } from './rate-table.ts';
import { LEVEL_EXPONENTS, LOG_PACE, MEAN_RATE_SPREAD, RATE_SPREADS, SHAPES, SHAPE_SPREADS } from './settings.ts';

/** Log likelihood of one place: without growth by noise cell, and rate tables by noise cell and shape. */
export interface PlaceEvidence {
  readonly noGrowth: Float64Array;
  readonly tables: readonly (readonly (RateTable | null)[])[]; // [shape][cell]
  /** Log of the level at which pace is stated, by noise cell. */
  readonly logLevel: Float64Array;
}

export interface Hierarchy {
  readonly cells: readonly NoiseCell[];
  readonly noGrowthPrior: number;
  /** Rough middle of the log paces of the rope, level taken out with the given exponent. */
  readonly centre: (exponent: number | null) => number;
  readonly shapePrior: readonly number[];
}

/** One assumption about the whole rope: noise, common shape and its spread. */
export interface PopulationCell {
  readonly cell: number;
  /** Pace goes with this power of the level from place to place; null: with that of each shape. */
  readonly exponent: number | null;
  /** Weight of each shape for a single place. */
  readonly shapeWeights: Float64Array;
  /** Log of the joint probability of all readings and this assumption. */
  readonly logJoint: number;
  /** Probability that a place grows, its own readings included. */
  readonly growing: (place: number) => number;
  /** What all other places say of one place: density of log pace, level taken out, on the common grid. Made when asked for. */
  readonly densityFor: (place: number) => Float64Array;
}

/** Assumptions this far (natural log) below the best are dropped. */
const NEGLIGIBLE = 7;

const KEPT = 0.99;

export const BINS = Math.round((LOG_PACE.to - LOG_PACE.from) / LOG_PACE.step) + 1;

interface MeanAndSpread {
  readonly logPrior: number;
  /** Density of log pace at the bins from `first` on, normalised over the range that a rate can have. */
  readonly density: Float64Array;
  readonly first: number;
}

/** Beyond this many spreads a density counts as nothing. */
const REACH = 5;

/** The grid of mean and spread of log paces between places. */
function meansAndSpreads(centre: number): MeanAndSpread[] {
  const grid: MeanAndSpread[] = [];
  for (const { spread, prior } of RATE_SPREADS) {
    const step = Math.max(0.15, Math.min(0.5, spread));
    const count = Math.ceil((2 * 2.6 * MEAN_RATE_SPREAD) / step);
    for (let k = 0; k <= count; k += 1) {
      const mean = centre + (k - count / 2) * step;
      const bin = (z: number) => (mean + z * spread - LOG_PACE.from) / LOG_PACE.step;
      const first = Math.max(0, Math.floor(bin(-REACH)));
      const end = Math.min(BINS, Math.ceil(bin(REACH)) + 1);
      if (end <= first) continue;
      const density = Float64Array.from({ length: end - first }, (_, b) => Math.exp(-0.5 * ((LOG_PACE.from + (first + b) * LOG_PACE.step - mean) / spread) ** 2));
      const total = density.reduce((sum, each) => sum + each, 0) * LOG_PACE.step;
      if (!(total > 0)) continue;
      grid.push({ logPrior: Math.log(prior * step) - 0.5 * ((mean - centre) / MEAN_RATE_SPREAD) ** 2, density: density.map((each) => each / total), first });
    }
  }
  return grid;
}

/** What takes the level out of the log pace of a place. */
export function levelShift(exponent: number | null, shape: number, place: PlaceEvidence, cell: number): number {
  return -(exponent ?? 1 - SHAPES[shape].shape) * place.logLevel[cell];
}

/** Probability of the readings of one place with growth under one shape, by mean and spread of the population, in units of exp(`top`). */
interface Mass {
  readonly top: number;
  /** Made when first asked for: most shapes are out of the question before it is needed. */
  readonly byGrid: () => Float64Array;
}

const binned = new Float64Array(BINS);

/** The likelihood of a table laid on the common grid and weighed with every density of the population. */
function massOf(table: RateTable | null, shift: number, grid: readonly MeanAndSpread[]): Mass | null {
  if (table === null) return null;
  let top = -Infinity;
  for (const each of table.logWeight) if (each > top) top = each;
  if (top === -Infinity) return null;
  let made: Float64Array | null = null;
  return { top, byGrid: () => (made ??= weighWithGrid(table, top, shift, grid)) };
}

function weighWithGrid(table: RateTable, top: number, shift: number, grid: readonly MeanAndSpread[]): Float64Array {
  binned.fill(0);
  let from = BINS;
  let to = 0;
  for (let k = 0; k < table.logPace.length; k += 1) {
    const value = Math.exp(table.logWeight[k] - top);
    if (value < 1e-9) continue;
    const at = (table.logPace[k] + shift - LOG_PACE.from) / LOG_PACE.step;
    const low = Math.max(0, Math.min(BINS - 2, Math.floor(at)));
    const share = Math.max(0, Math.min(1, at - low));
    binned[low] += value * (1 - share);
    binned[low + 1] += value * share;
    if (low < from) from = low;
    if (low + 2 > to) to = low + 2;
  }
  const byGrid = new Float64Array(grid.length);
  for (let g = 0; g < grid.length; g += 1) {
    const { density, first } = grid[g];
    const end = Math.min(to, first + density.length);
    let sum = 0;
    for (let b = Math.max(from, first); b < end; b += 1) sum += binned[b] * density[b - first];
    byGrid[g] = sum;
  }
  return byGrid;
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
 * common shape and noise; each place is left out of its own prior. Assumptions 1e-3 as likely as the best are dropped.
 * How pace goes with level from place to place is learned apart from the shape: places of one age that grow in a straight line
 * differ in both alike, and must not be taken for exponential growth.
 */
export function populationCells(places: readonly PlaceEvidence[], hierarchy: Hierarchy): PopulationCell[] {
  const found: PopulationCell[] = [];
  let best = -Infinity;
  // With one place there is nothing from place to place.
  for (const { exponent, prior: exponentPrior } of places.length > 1 ? LEVEL_EXPONENTS : [{ exponent: 0, prior: 1 }]) {
    const grid = meansAndSpreads(hierarchy.centre(exponent));
    hierarchy.cells.forEach((noise, cell) => {
      const masses = places.map((place) => SHAPES.map((_, s) => massOf(place.tables[s][cell], levelShift(exponent, s, place, cell), grid)));
      const still = places.map((place) => place.noGrowth[cell]);
      for (const { spread, prior: spreadPrior } of SHAPE_SPREADS) {
        SHAPES.forEach((_, s) => {
          const weights = shapeWeights(s, spread);
          const logPrior = Math.log(hierarchy.shapePrior[s] * spreadPrior * noise.prior * exponentPrior);
          if (logPrior + upperBound(masses, still, weights) < best - NEGLIGIBLE) return;
          const made = oneCell(masses, still, weights, grid, hierarchy.noGrowthPrior, best - logPrior - NEGLIGIBLE);
          if (made === null) return;
          const logJoint = made.logJoint + logPrior;
          if (logJoint > best) best = logJoint;
          found.push({ ...made, cell, exponent, logJoint });
        });
      }
    });
  }
  return heaviest(found, best);
}

/** The assumptions that make up all but a hundredth of the weight, the likeliest first. */
function heaviest(found: readonly PopulationCell[], best: number): PopulationCell[] {
  const ranked = found.filter((each) => each.logJoint > best - NEGLIGIBLE).sort((a, b) => b.logJoint - a.logJoint);
  const total = ranked.reduce((sum, each) => sum + Math.exp(each.logJoint - best), 0);
  let passed = 0;
  return ranked.filter((each) => {
    const needed = passed < KEPT * total;
    passed += Math.exp(each.logJoint - best);
    return needed;
  });
}

/** A density of the population is at most 3.4 per unit of log pace, twice that where the range cuts it: log 7. */
const HIGHEST_LOG_DENSITY = 2;

/** No mean and spread can make the readings more likely than this. */
function upperBound(masses: readonly (readonly (Mass | null)[])[], noGrowth: readonly number[], weights: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < masses.length; j += 1) {
    let top = noGrowth[j];
    for (let s = 0; s < weights.length; s += 1) if (weights[s] > 1e-6 && masses[j][s] !== null) top = Math.max(top, masses[j][s]!.top + HIGHEST_LOG_DENSITY);
    sum += top;
  }
  return sum;
}

function oneCell(
  masses: readonly (readonly (Mass | null)[])[], noGrowth: readonly number[], weights: Float64Array, grid: readonly MeanAndSpread[], noGrowthPrior: number, floor: number,
): Omit<PopulationCell, 'cell' | 'exponent'> | null {
  const logs = Float64Array.from(grid, (each) => each.logPrior);
  const grown: Float64Array[] = []; // by place, by mean and spread
  const still: number[] = [];
  let tops = 0;
  for (let j = 0; j < masses.length; j += 1) {
    const mixed = mix(masses[j], weights, 1 - noGrowthPrior);
    if (mixed === null) return null;
    still.push(Math.exp(Math.min(50, noGrowth[j] - mixed.top)) * noGrowthPrior);
    const { byGrid } = mixed;
    for (let g = 0; g < grid.length; g += 1) logs[g] += Math.log(byGrid[g] + still[j] + 1e-300);
    grown.push(byGrid);
    tops += mixed.top;
  }
  const { logSum, highest } = logSumOf(logs);
  if (logSum + tops < floor) return null;
  return {
    shapeWeights: weights, logJoint: logSum + tops,
    growing: (j) => growingOf(logs, highest, grown[j], still[j]), densityFor: (j) => densityFor(logs, highest, grown[j], still[j], grid),
  };
}

function logSumOf(logs: Float64Array): { logSum: number; highest: number } {
  let highest = -Infinity;
  for (const each of logs) if (each > highest) highest = each;
  let sum = 0;
  for (const each of logs) sum += Math.exp(each - highest);
  return { logSum: highest + Math.log(sum), highest };
}

function growingOf(logs: Float64Array, highest: number, grown: Float64Array, still: number): number {
  let all = 0;
  let growing = 0;
  for (let g = 0; g < logs.length; g += 1) {
    const weight = Math.exp(logs[g] - highest);
    all += weight;
    growing += (weight * grown[g]) / (grown[g] + still + 1e-300);
  }
  return all > 0 ? growing / all : 0;
}

/** What the other places say of this one: the joint weight of mean and spread divided by this place's own part in it. */
function densityFor(logs: Float64Array, highest: number, grown: Float64Array, still: number, grid: readonly MeanAndSpread[]): Float64Array {
  const sum = new Float64Array(BINS);
  let others = 0;
  for (let g = 0; g < grid.length; g += 1) {
    const weight = Math.exp(logs[g] - highest);
    if (weight < 1e-7) continue;
    const left = weight / (grown[g] + still + 1e-300);
    others += left;
    const { density, first } = grid[g];
    for (let b = 0; b < density.length; b += 1) sum[first + b] += left * density[b];
  }
  if (others > 0) for (let b = 0; b < BINS; b += 1) sum[b] /= others;
  return sum;
}

/** The masses of all shapes of one place, weighed; times `factor`. */
function mix(masses: readonly (Mass | null)[], weights: Float64Array, factor: number): { top: number; byGrid: Float64Array } | null {
  let top = -Infinity;
  for (let s = 0; s < weights.length; s += 1) if (weights[s] > 1e-6 && masses[s] !== null) top = Math.max(top, masses[s]!.top);
  if (top === -Infinity) return null;
  let byGrid: Float64Array | null = null;
  for (let s = 0; s < weights.length; s += 1) {
    const each = masses[s];
    if (weights[s] <= 1e-6 || each === null) continue;
    const share = factor * weights[s] * Math.exp(each.top - top);
    if (share < 1e-9) continue;
    const own = each.byGrid();
    byGrid ??= new Float64Array(own.length);
    for (let g = 0; g < own.length; g += 1) byGrid[g] += share * own[g];
  }
  return byGrid === null ? null : { top, byGrid };
}
