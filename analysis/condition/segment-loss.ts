import { levelChanges } from '../signal/level-changes.ts';
import { quantile } from '../signal/quantile.ts';
import { baselineAt, fitBaseline } from './fit-baseline.ts';
import type { BaselineCurve } from './fit-baseline.ts';
import type { LossBlocks } from './loss-blocks.ts';
import { longRunVariance } from './loss-scatter.ts';
import type { ConditionParameters } from './parameters.ts';

/** A length of one LMA level, in blocks. */
export interface LevelSegment {
  readonly from: number;
  readonly end: number;
  readonly level: number; // percent over the baseline
  readonly weight: number; // blocks measured
  readonly sound: boolean;
}

export interface LossSegmentation {
  readonly baseline: BaselineCurve;
  readonly segments: readonly LevelSegment[];
  /** Blocks over the baseline. */
  readonly level: Float64Array;
  /** Weight of blocks that the baseline rests on, 0 elsewhere. */
  readonly soundWeight: Float64Array;
  readonly longRunVariance: number;
  /** The same from differences over a metre at most. */
  readonly nearVariance: number;
}

/** Rounds of "find changed lengths, refit the level of the rest"; they settle in two or three. */
const ROUNDS = 4;
/** Share of the rope, from the least loss up, at which the first guess of the baseline runs: the middle of the sound part where 40 % is worn. */
const FIRST_QUANTILE = 0.3;
const ENOUGH_BETWEEN = 200;

/** Divides LMA into lengths of one level over a slowly varying baseline, each found with the other. */
export function segmentLoss(blocks: LossBlocks, parameters: ConditionParameters): LossSegmentation {
  const { mean, weight } = blocks;
  const spacing = Math.max(2, parameters.baselineKnot / blocks.length);
  const variance = Math.max(longRunVariance(mean, weight, Math.max(1, Math.round(4 / blocks.length))), 1e-8);
  let measured = 0;
  for (const each of weight) if (each > 0) measured += 1;
  const nearVariance = Math.max(longRunVariance(mean, weight, Math.max(1, Math.round(1 / blocks.length))), 1e-8);
  const penalty = parameters.lossChangePenalty * Math.log(Math.max(3, measured)) * variance;
  let baseline = firstBaseline(mean, weight, spacing);
  let segments: LevelSegment[] = [];
  let level = mean;
  let soundWeight = weight;
  for (let round = 0; round < ROUNDS; round += 1) {
    level = over(mean, baseline);
    segments = segmentsOf(level, weight, penalty, variance, parameters);
    soundWeight = soundOnly(weight, segments, Math.max(1, Math.round(1 / blocks.length)));
    const next = fitBaseline(mean, soundWeight, spacing, stiffnessFor(spacing));
    const moved = next.knots.reduce((most, value, k) => Math.max(most, Math.abs(value - baseline.knots[k])), 0);
    // Where the baseline no longer moves the segments found over it stand, and so does it.
    if (moved < 0.005) return { baseline, segments, level, soundWeight, longRunVariance: variance, nearVariance };
    baseline = next;
  }
  level = over(mean, baseline);
  return { baseline, segments: segmentsOf(level, weight, penalty, variance, parameters), level, soundWeight, longRunVariance: variance, nearVariance };
}

function over(mean: Float64Array, baseline: BaselineCurve): Float64Array {
  return mean.map((value, block) => value - baselineAt(baseline, block));
}

/** A bend counts against a tenth of the blocks between two knots: enough to carry the level under worn lengths, little enough to follow drift. */
const stiffnessFor = (spacing: number): number => 0.1 * spacing;

/** A stiff level through the quantile of the blocks, by weights that make each side pull in proportion to its share. */
function firstBaseline(mean: Float64Array, weight: Float64Array, spacing: number): BaselineCurve {
  const known = mean.filter((_, block) => weight[block] > 0);
  const start = quantile(known, FIRST_QUANTILE);
  let curve: BaselineCurve = { spacing, knots: new Float64Array(Math.max(2, Math.ceil((mean.length - 1) / spacing - 1e-9) + 1)).fill(start) };
  const pulls = new Float64Array(mean.length);
  // A stiff curve needs no more blocks than this between its knots.
  const every = Math.max(1, Math.floor(spacing / ENOUGH_BETWEEN));
  for (let round = 0; round < 25; round += 1) {
    for (let block = 0; block < mean.length; block += every) {
      const rest = mean[block] - baselineAt(curve, block);
      pulls[block] = weight[block] <= 0 ? 0 : (every * (rest > 0 ? FIRST_QUANTILE : 1 - FIRST_QUANTILE)) / Math.max(0.02, Math.abs(rest));
    }
    curve = fitBaseline(mean, pulls, spacing, 20 * stiffnessFor(spacing));
  }
  return curve;
}

function segmentsOf(level: Float64Array, weight: Float64Array, penalty: number, variance: number, parameters: ConditionParameters): LevelSegment[] {
  const cuts = levelChanges(level, weight, penalty).starts;
  const bounds = [0, ...cuts, level.length];
  return bounds.slice(1).map((end, i) => {
    const from = bounds[i];
    let sum = 0;
    let mass = 0;
    for (let block = from; block < end; block += 1) {
      sum += weight[block] * level[block];
      mass += weight[block];
    }
    const value = mass > 0 ? sum / mass : 0;
    // Half the smallest zone, or what chance does to a mean of so few blocks.
    const tolerance = Math.max(0.5 * parameters.smallestZoneLoss, 4 * Math.sqrt(variance / Math.max(mass, 1)));
    return { from, end, level: value, weight: mass, sound: mass > 0 && Math.abs(value) <= tolerance };
  });
}

function soundOnly(weight: Float64Array, segments: readonly LevelSegment[], margin: number): Float64Array {
  const sound = weight.slice();
  for (const { from, end, sound: isSound } of segments) if (!isSound) sound.fill(0, Math.max(0, from - margin), Math.min(weight.length, end + margin));
  // A rope without a sound length to speak of keeps its first guess's company: all of it.
  const share = sound.reduce((sum, each) => sum + each, 0) / Math.max(1e-9, weight.reduce((sum, each) => sum + each, 0));
  return share < 0.05 ? weight.slice() : sound;
}
