import { seededRandom } from '../life/statistics/random.ts';
import { slidingMedian } from '../signal/sliding-median.ts';
import { levelChanges } from '../signal/level-changes.ts';
import { scatterAt } from './loss-scatter.ts';
import { levelBeside, meanLevel } from './mean-level.ts';
import { OUTSIDE } from './zone-outline.ts';
import type { ConditionParameters } from './parameters.ts';
import type { ZoneSearch } from './find-zones.ts';
import { normalQuantile } from './normal-quantile.ts';

/** Trials of one size, and sizes tried at most: enough to tell 90 % from 80 %. */
const TRIALS = 80;
const ROUNDS = 8;
/** Blocks over which the noise of one is steadied. */
const SMOOTHED = 9;

/**
 * Smallest loss over the reference length that would have been found with the stated probability, by block: what a zone must
 * reach to be called, plus the scatter of its mean. The result is then tried: losses of that size are laid into all that is no
 * zone (what noise has lifted or lowered there belongs to the trial: lengths chosen for being level would flatter it) at seeded places (hit or miss, in the sense of MIL-HDBK-1823A), and raised until the share of hits is reached.
 */
export function detectableLoss(search: ZoneSearch, averaging: number, parameters: ConditionParameters, seed: number): Float64Array {
  const { blocks, scatter } = search;
  const error = scatterAt(scatter, parameters.detectableZoneLength);
  const needed = Math.max(parameters.smallestZoneLoss, parameters.zoneSignificance * error);
  const margin = normalQuantile(parameters.detectionProbability) * error;
  const factor = calibrate(search, needed + margin, needed, averaging, parameters, seed);
  const usual = slidingMedian(blocks.sampleNoise, Uint8Array.from(blocks.weight, (each) => (each > 0 ? 1 : 0)), SMOOTHED);
  return usual.values.map((noise) => {
    // Louder lengths need more: their means scatter in proportion.
    const louder = blocks.noise > 0 ? Math.max(1, noise / blocks.noise) : 1;
    return factor * (Math.max(parameters.smallestZoneLoss, parameters.zoneSignificance * error * louder) + margin * louder);
  });
}

function calibrate(search: ZoneSearch, size: number, needed: number, averaging: number, parameters: ConditionParameters, seed: number): number {
  const { blocks, outsideWeight } = search;
  const span = Math.max(1, Math.round(parameters.detectableZoneLength / blocks.length));
  const surround = 4 * span;
  const places: number[] = [];
  for (let block = surround; block + 2 * span + surround < blocks.mean.length; block += 1) {
    if (outsideWeight[block] > 0 && outsideWeight[block + span] > 0) places.push(block);
  }
  if (places.length < TRIALS) return 1;
  const random = seededRandom(seed);
  let factor = 1;
  for (let round = 0; round < ROUNDS; round += 1) {
    let hits = 0;
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const at = places[Math.floor(random() * places.length)];
      if (isFound(search, at, laid(search, span, random(), averaging).map((share) => factor * size * share), surround, needed, parameters)) hits += 1;
    }
    if (hits >= parameters.detectionProbability * TRIALS) return factor;
    factor *= 1.08;
  }
  return factor;
}

/** Shares of a loss as `span` blocks and one more read it, begun `offset` of a block in: spread by the averaging length. */
function laid({ blocks }: ZoneSearch, span: number, offset: number, averaging: number): Float64Array {
  const reach = averaging / blocks.length;
  const beside = Math.ceil(reach / 2);
  // Integral of the rise about an edge at 0, a ramp as long as the averaging length.
  const risen = (x: number) => (x <= -reach / 2 ? 0 : x >= reach / 2 ? x : (x + reach / 2) ** 2 / (2 * reach));
  return Float64Array.from({ length: span + 1 + 2 * beside }, (_, i) => {
    const from = i - beside - offset;
    return risen(from + 1) - risen(from) - (risen(from + 1 - span) - risen(from - span));
  });
}

function isFound(search: ZoneSearch, at: number, loss: Float64Array, surround: number, needed: number, parameters: ConditionParameters): boolean {
  const { segmentation, outsideWeight } = search;
  const from = at - surround;
  const level = segmentation.level.slice(from, at + loss.length + surround);
  for (let block = 0; block < loss.length; block += 1) level[surround + block] += loss[block];
  const weight = outsideWeight.slice(from, at + loss.length + surround);
  const penalty = parameters.lossChangePenalty * Math.log(segmentation.level.length) * segmentation.longRunVariance;
  const bounds = [0, ...levelChanges(level, weight, penalty).starts, level.length];
  for (let i = 0; i + 1 < bounds.length; i += 1) {
    const overlap = Math.min(bounds[i + 1], surround + loss.length) - Math.max(bounds[i], surround);
    if (overlap < 0.5 * loss.length || bounds[i + 1] - bounds[i] > 2 * loss.length) continue;
    // A zone must also stand out over the rope beside it, or its edges are not found and it may be lost among them.
    const reach = Math.round(OUTSIDE / search.blocks.length);
    const beside = Math.max(0, levelBeside(level, weight, bounds[i], bounds[i + 1], reach));
    if (meanLevel(level, weight, bounds[i], bounds[i + 1]) - beside >= needed) return true;
  }
  return false;
}
