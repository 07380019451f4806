import { drawGamma, drawInverseGaussian, drawNormal, seededRandom } from '../statistics/random.ts';
import type { Random } from '../statistics/random.ts';
import { timeToReach } from './growth-law.ts';
import { noiseCells } from './noise-cells.ts';
import type { NoiseCell } from './noise-cells.ts';
import { populationCells } from './population.ts';
import type { PlaceEvidence, PopulationCell } from './population.ts';
import { rateTables } from './rate-table.ts';
import type { RateTable } from './rate-table.ts';
import { scaleRope } from './series.ts';
import type { ScaledPlace, ScaledRope, SeriesLike } from './series.ts';
import { DRAWS, LOG_RATE, NO_GROWTH_PRIOR, SHAPES } from './settings.ts';

export interface PassageOptions {
  readonly seed: number;
}

/** Draws of what the target may do next; all the output is read from them. */
export interface PassageDraws {
  /** Time from the last reading to the first passage, in spans; conditional on growth. */
  readonly time: Float64Array; // sorted
  readonly growing: number;
  readonly shapeProbability: readonly number[]; // by SHAPES
  readonly irregular: number;
  readonly noiseScale: number;
  readonly zeroUnknown: number;
}

/** First passages of the limit by the target place, drawn from everything that all places of the rope leave possible. */
export function drawPassages(rope: ScaledRope, target: number, options: PassageOptions): PassageDraws | null {
  const at = rope.places.findIndex((place) => place.index === target);
  const cells = noiseCells(rope);
  const unit = 1 / rope.reference;
  const evidence = rope.places.map((place) => evidenceOf(place, cells, unit));
  const centre = roughCentre(rope);
  const hypotheses = populationCells(evidence, at, { cells, noGrowthPrior: NO_GROWTH_PRIOR, centre, shapePrior: SHAPES.map((each) => each.prior) });
  if (hypotheses.length === 0) return null;
  return drawFrom(rope, rope.places[at], evidence[at], cells, hypotheses, seededRandom(options.seed));
}

function evidenceOf(place: ScaledPlace, cells: readonly NoiseCell[], unit: number): PlaceEvidence {
  return {
    noGrowth: Float64Array.from(cells, (cell) => noGrowthLikelihood(place, cell, unit)),
    tables: SHAPES.map(({ shape }) => rateTables(place, shape, cells, unit)),
  };
}

/** Readings about a level that stays. For counts: what was there at first, and nothing new. */
function noGrowthLikelihood(place: ScaledPlace, cell: NoiseCell, unit: number): number {
  const n = place.y.length;
  if (place.counts) return place.y.some((y) => Math.abs(y - place.y[0]) > 0.5 * unit) ? -1e3 : Math.log(unit);
  let weight = 0;
  let sum = 0;
  let logs = 0;
  for (let i = 0; i < n; i += 1) {
    const w = 1 / (cell.scale * place.noise[i]) ** 2;
    weight += w;
    sum += w * place.y[i];
    logs += 0.5 * Math.log(w);
  }
  const mean = sum / weight;
  let square = 0;
  for (let i = 0; i < n; i += 1) square += ((place.y[i] - mean) / (cell.scale * place.noise[i])) ** 2;
  return logs - 0.5 * square - 0.5 * n * Math.log(2 * Math.PI) + 0.5 * Math.log((2 * Math.PI) / weight);
}

/** Middle of the places' mean rates between first and last reading, held above what noise alone would show. */
function roughCentre(rope: ScaledRope): number {
  const rates = rope.places.map((place) => {
    const n = place.y.length;
    const elapsed = -place.u[0];
    const noise = Math.hypot(place.noise[0], place.noise[n - 1]);
    return Math.max(place.y[n - 1] - place.y[0], 0.5 * noise, 0.02) / Math.max(elapsed, 1e-6);
  }).sort((a, b) => a - b);
  return Math.max(LOG_RATE.from + 2, Math.min(LOG_RATE.to - 1, Math.log(rates[rates.length >> 1])));
}

/** Systematic sampling: draws are spread over the hypotheses in proportion, then over the nodes of each. */
function drawFrom(rope: ScaledRope, place: ScaledPlace, evidence: PlaceEvidence, cells: readonly NoiseCell[], hypotheses: readonly PopulationCell[], random: Random): PassageDraws {
  const best = Math.max(...hypotheses.map((each) => each.logJoint));
  const weights = hypotheses.map((each) => Math.exp(each.logJoint - best));
  const total = weights.reduce((sum, each) => sum + each, 0);
  const growing = hypotheses.reduce((sum, each, i) => sum + weights[i] * each.growing, 0) / total;
  const grownTotal = growing * total;
  const time: number[] = [];
  const shapeProbability = SHAPES.map(() => 0);
  const means = { irregular: 0, noiseScale: 0, zeroUnknown: 0 };
  let reached = random() / DRAWS;
  let passed = 0;
  hypotheses.forEach((hypothesis, i) => {
    const share = (weights[i] * hypothesis.growing) / grownTotal;
    passed += share;
    means.irregular += share * cells[hypothesis.cell].irregularity;
    means.noiseScale += share * cells[hypothesis.cell].scale;
    means.zeroUnknown += cells[hypothesis.cell].zero > 0 ? share : 0;
    let count = 0;
    for (; reached < passed; reached += 1 / DRAWS) count += 1;
    if (count > 0) drawWithin(rope, place, evidence, cells[hypothesis.cell], hypothesis, count, random, time, shapeProbability);
  });
  const drawn = Math.max(1, shapeProbability.reduce((sum, each) => sum + each, 0));
  return { time: Float64Array.from(time).sort(), growing, shapeProbability: shapeProbability.map((each) => each / drawn), ...means };
}

function drawWithin(
  rope: ScaledRope, place: ScaledPlace, evidence: PlaceEvidence, cell: NoiseCell, hypothesis: PopulationCell, count: number, random: Random, time: number[], shapeProbability: number[],
): void {
  const nodes: { shape: number; table: RateTable; node: number; weight: number }[] = [];
  let top = -Infinity;
  SHAPES.forEach((_, s) => {
    const table = evidence.tables[s][hypothesis.cell];
    if (table === null || hypothesis.shapeWeights[s] < 1e-6) return;
    for (let node = 0; node < table.logRate.length; node += 1) {
      const weight = table.logWeight[node] + Math.log(hypothesis.shapeWeights[s] * densityAt(hypothesis.prior, table.logRate[node]) + 1e-300);
      if (weight > top) top = weight;
      nodes.push({ shape: s, table, node, weight });
    }
  });
  let total = 0;
  for (const each of nodes) total += each.weight = Math.exp(each.weight - top);
  let passed = 0;
  let reached = random() / count;
  for (const each of nodes) {
    passed += each.weight / total;
    for (; reached < passed; reached += 1 / count) {
      shapeProbability[each.shape] += 1;
      const drawn = drawOne(rope, place, cell, each.table, each.node, SHAPES[each.shape].shape, random);
      if (drawn !== null) time.push(drawn);
    }
  }
}

function densityAt(prior: Float64Array, logRate: number): number {
  const at = (logRate - LOG_RATE.from) / LOG_RATE.step;
  const low = Math.max(0, Math.min(prior.length - 2, Math.floor(at)));
  const share = Math.max(0, Math.min(1, at - low));
  return prior[low] * (1 - share) + prior[low + 1] * share;
}

/** One first passage. Null where the drawn path has passed the limit before the last reading, which the readings deny. */
function drawOne(rope: ScaledRope, place: ScaledPlace, cell: NoiseCell, table: RateTable, node: number, shape: number, random: Random): number | null {
  const width = (table.logRate[Math.min(node + 1, table.logRate.length - 1)] - table.logRate[Math.max(node - 1, 0)]) / 2;
  const rate = Math.exp(table.logRate[node] + width * (random() - 0.5));
  const moved = drawNormal(random) * table.sigma[node];
  const level = table.level[node] + moved;
  if (!(level > 0)) return null;
  const zero = cell.zero > 0 ? table.zero[node] + table.zeroByLevel[node] * moved + table.zeroSigma * drawNormal(random) : 0;
  let needed: number;
  if (place.counts) {
    const left = Math.round((rope.limit - place.y[place.y.length - 1]) * rope.reference);
    needed = timeToReach(level + drawGamma(random, Math.max(1, left)) / rope.reference, level, rate, shape);
  } else needed = timeToReach(rope.limit - zero, level, rate, shape);
  if (!(needed > 0)) return null;
  if (cell.irregularity === 0) return needed;
  return drawInverseGaussian(random, needed, (needed * needed) / cell.irregularity ** 2);
}

/** A quantile of sorted draws. */
export function quantileOf(sorted: Float64Array, share: number): number {
  if (sorted.length === 0) return NaN;
  const at = Math.max(0, Math.min(sorted.length - 1, share * sorted.length - 0.5));
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}

export { scaleRope };
export type { SeriesLike };
