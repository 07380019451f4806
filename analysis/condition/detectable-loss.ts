import { drawNormal, seededRandom } from '../life/statistics/random.ts';
import { changePoints } from '../signal/change-points.ts';
import { weightedErrorCost } from '../signal/segment-cost.ts';
import { scatterAt } from './loss-scatter.ts';
import type { ConditionParameters } from './parameters.ts';
import type { ZoneSearch } from './find-zones.ts';
import { normalQuantile } from './normal-quantile.ts';

/** Trials of one size, and sizes tried at most: enough to tell 90 % from 75 %. */
const TRIALS = 40;
const ROUNDS = 6;

/**
 * Smallest loss over the reference length that would have been found with the stated probability, by block: what a zone must
 * reach to be called, plus the scatter of its mean. The result is then tried: losses of that size are laid into the rope's own
 * sound lengths at seeded places (hit or miss, in the sense of MIL-HDBK-1823A), and raised until the share of hits is reached.
 */
export function detectableLoss(search: ZoneSearch, parameters: ConditionParameters, seed: number): Float64Array {
  const { blocks, scatter } = search;
  const error = scatterAt(scatter, parameters.detectableZoneLength);
  const needed = Math.max(parameters.smallestZoneLoss, parameters.zoneSignificance * error);
  const margin = normalQuantile(parameters.detectionProbability) * error;
  const factor = calibrate(search, needed + margin, needed, parameters, seed);
  return blocks.sampleNoise.map((noise) => {
    // Louder lengths need more: their means scatter in proportion.
    const louder = blocks.noise > 0 ? Math.max(1, noise / blocks.noise) : 1;
    return factor * (Math.max(parameters.smallestZoneLoss, parameters.zoneSignificance * error * louder) + margin * louder);
  });
}

function calibrate(search: ZoneSearch, size: number, needed: number, parameters: ConditionParameters, seed: number): number {
  const { blocks, segmentation } = search;
  const span = Math.max(1, Math.round(parameters.detectableZoneLength / blocks.length));
  const surround = 4 * span;
  const places: number[] = [];
  for (let block = surround; block + span + surround < blocks.mean.length; block += 1) {
    if (segmentation.soundWeight[block] > 0 && segmentation.soundWeight[block + span] > 0) places.push(block);
  }
  if (places.length < TRIALS) return 1;
  const random = seededRandom(seed);
  let factor = 1;
  for (let round = 0; round < ROUNDS; round += 1) {
    let hits = 0;
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const at = places[Math.floor(random() * places.length)];
      if (isFound(search, at, span, surround, factor * size * (1 + 0.001 * drawNormal(random)), needed, parameters)) hits += 1;
    }
    if (hits >= parameters.detectionProbability * TRIALS) return factor;
    factor *= 1.12;
  }
  return factor;
}

function isFound(search: ZoneSearch, at: number, span: number, surround: number, size: number, needed: number, parameters: ConditionParameters): boolean {
  const { segmentation } = search;
  const from = at - surround;
  const level = segmentation.level.slice(from, at + span + surround);
  for (let block = surround; block < surround + span; block += 1) level[block] += size;
  const weight = segmentation.soundWeight.slice(from, at + span + surround);
  const penalty = parameters.lossChangePenalty * Math.log(segmentation.level.length) * segmentation.longRunVariance;
  const bounds = [0, ...changePoints(level.length, weightedErrorCost(level, weight), penalty).starts, level.length];
  for (let i = 0; i + 1 < bounds.length; i += 1) {
    const overlap = Math.min(bounds[i + 1], surround + span) - Math.max(bounds[i], surround);
    if (overlap < 0.5 * span || bounds[i + 1] - bounds[i] > 2 * span) continue;
    let sum = 0;
    let mass = 0;
    for (let block = bounds[i]; block < bounds[i + 1]; block += 1) {
      sum += weight[block] * level[block];
      mass += weight[block];
    }
    if (mass > 0 && sum / mass >= needed) return true;
  }
  return false;
}
