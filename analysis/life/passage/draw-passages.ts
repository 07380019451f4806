import { drawGamma, drawInverseGaussian, drawNormal, seededRandom } from '../statistics/random.ts';
import type { Random } from '../statistics/random.ts';
import { levelAfter, timeToReach } from './growth-law.ts';
import type { LearnedRope } from './learn-rope.ts';
import type { NoiseCell } from './noise-cells.ts';
import { levelShift } from './population.ts';
import type { PlaceEvidence, PopulationCell } from './population.ts';
import type { RateTable } from './rate-table.ts';
import type { ScaledPlace, ScaledRope } from './series.ts';
import { DRAWS, LAW_DRIFT, LOG_PACE, SHAPES } from './settings.ts';

/** One future of a place that the readings leave possible, in the scale of the rope. */
export interface Future {
  /** Time from the last reading to the first passage, in spans. */
  readonly passage: number;
  readonly level: number;
  readonly rate: number;
  readonly shape: number;
  readonly zero: number;
  readonly irregularity: number;
}

/** Futures of one place, all of them with growth; the rest is read from them. */
export interface PassageDraws {
  readonly futures: readonly Future[];
  /** Their passages, sorted. */
  readonly times: Float64Array;
  /** Probability that the place grows at all. */
  readonly growing: number;
  /** Share of the draws by shape, in the order of SHAPES. */
  readonly shapeProbability: readonly number[];
  /** Posterior means: irregularity of growth, noise over stated noise, chance that the zero is unknown. */
  readonly irregularity: number;
  readonly noiseScale: number;
  readonly zeroUnknown: number;
}

/** First passages of the limit by the target place, drawn from everything that all places of the rope leave possible. */
export function drawPassages(learned: LearnedRope, target: number, seed: number): PassageDraws | null {
  const at = learned.rope.places.findIndex((place) => place.index === target);
  if (at < 0 || learned.hypotheses.length === 0) return null;
  return drawFrom(learned, at, seededRandom(seed + target));
}

/** Systematic sampling: draws are spread over the hypotheses in proportion, then over the nodes of each. */
function drawFrom({ rope, cells, evidence, hypotheses }: LearnedRope, at: number, random: Random): PassageDraws {
  const best = Math.max(...hypotheses.map((each) => each.logJoint));
  const weights = hypotheses.map((each) => Math.exp(each.logJoint - best));
  const total = weights.reduce((sum, each) => sum + each, 0);
  const grows = hypotheses.map((each) => each.growing(at));
  const growing = grows.reduce((sum, each, i) => sum + weights[i] * each, 0) / total;
  const grownTotal = growing * total;
  const futures: Future[] = [];
  const shapeProbability = SHAPES.map(() => 0);
  const means = { irregularity: 0, noiseScale: 0, zeroUnknown: 0 };
  let reached = random() / DRAWS;
  let passed = 0;
  hypotheses.forEach((hypothesis, i) => {
    const share = (weights[i] * grows[i]) / grownTotal;
    passed += share;
    means.irregularity += share * cells[hypothesis.cell].irregularity;
    means.noiseScale += share * cells[hypothesis.cell].scale;
    means.zeroUnknown += cells[hypothesis.cell].zero > 0 ? share : 0;
    let count = 0;
    for (; reached < passed; reached += 1 / DRAWS) count += 1;
    if (count > 0) drawWithin(rope, rope.places[at], evidence[at], cells[hypothesis.cell], hypothesis, hypothesis.densityFor(at), count, random, futures, shapeProbability);
  });
  const drawn = Math.max(1, shapeProbability.reduce((sum, each) => sum + each, 0));
  return { futures, times: Float64Array.from(futures, (each) => each.passage).sort(), growing, shapeProbability: shapeProbability.map((each) => each / drawn), ...means };
}

function drawWithin(
  rope: ScaledRope, place: ScaledPlace, evidence: PlaceEvidence, cell: NoiseCell, hypothesis: PopulationCell, prior: Float64Array, count: number, random: Random, futures: Future[], shapeProbability: number[],
): void {
  const nodes: { shape: number; table: RateTable; node: number; weight: number }[] = [];
  let top = -Infinity;
  SHAPES.forEach((_, s) => {
    const table = evidence.tables[s][hypothesis.cell];
    if (table === null || hypothesis.shapeWeights[s] < 1e-6) return;
    const shift = levelShift(hypothesis.exponent, s, evidence, hypothesis.cell);
    for (let node = 0; node < table.logPace.length; node += 1) {
      const weight = table.logWeight[node] + Math.log(hypothesis.shapeWeights[s] * densityAt(prior, table.logPace[node] + shift) + 1e-300);
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
      if (drawn !== null) futures.push(drawn);
    }
  }
}

function densityAt(prior: Float64Array, logPace: number): number {
  const at = (logPace - LOG_PACE.from) / LOG_PACE.step;
  const low = Math.max(0, Math.min(prior.length - 2, Math.floor(at)));
  const share = Math.max(0, Math.min(1, at - low));
  return prior[low] * (1 - share) + prior[low + 1] * share;
}

/** One future. Null where the drawn path has passed the limit before the last reading, which the readings deny. */
function drawOne(rope: ScaledRope, place: ScaledPlace, cell: NoiseCell, table: RateTable, node: number, fittedShape: number, random: Random): Future | null {
  const { logPace, toLogRate } = table;
  const width = (logPace[Math.min(node + 1, logPace.length - 1)] - logPace[Math.max(node - 1, 0)]) / 2;
  const fitted = Math.exp(logPace[node] + toLogRate + width * (random() - 0.5));
  const moved = drawNormal(random) * table.sigma[node];
  const level = table.level[node] + moved;
  if (!(level > 0)) return null;
  const zero = cell.zero > 0 ? table.zero[node] + table.zeroByLevel[node] * moved + table.zeroSigma * drawNormal(random) : 0;
  const shape = fittedShape + lawDrift(rope, level, levelAfter(level, fitted, fittedShape, place.u[0])) * drawNormal(random);
  const rate = fitted * level ** (shape - fittedShape);
  let needed: number;
  if (place.counts) {
    const left = Math.round((rope.limit - place.y[place.y.length - 1]) * rope.reference);
    needed = timeToReach(level + drawGamma(random, Math.max(1, left)) / rope.reference, level, rate, shape);
  } else needed = timeToReach(rope.limit - zero, level, rate, shape);
  if (!(needed > 0)) return null;
  const passage = cell.irregularity === 0 ? needed : drawInverseGaussian(random, needed, (needed * needed) / cell.irregularity ** 2);
  return { passage, level, rate, shape, zero, irregularity: cell.irregularity };
}

/** How far the law ahead may stand from the law seen: as far as is usual where the way ahead is as long as the way seen, less where it is shorter. */
function lawDrift(rope: ScaledRope, level: number, first: number): number {
  const seen = Math.log(level / Math.max(first, LEAST_SEEN * level));
  const ahead = Math.log(Math.max(1, rope.limit / level));
  return LAW_DRIFT * Math.min(1, ahead / Math.max(seen, 1e-9));
}

/** Damage that began from nothing counts as seen over this range at most. */
const LEAST_SEEN = 0.05;

/** A quantile of sorted draws. */
export function quantileOf(sorted: Float64Array, share: number): number {
  if (sorted.length === 0) return NaN;
  const at = Math.max(0, Math.min(sorted.length - 1, share * sorted.length - 0.5));
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}
