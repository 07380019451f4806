import { madInPlace, NORMAL_MAD } from '../signal/mad.ts';
import { medianInPlace } from '../signal/median.ts';

/** How much means of LMA over a length scatter on sound rope, by length: correlated noise makes them scatter more than white noise would. */
export interface LossScatter {
  readonly lengths: readonly number[]; // m, rising
  readonly deviations: readonly number[]; // percent
}

/** Fewer windows than this do not show a scatter; longer lengths then keep the last one seen. */
const LEAST_WINDOWS = 10;

/** Robust scatter of window means of blocks (`weight` 0: not sound or not measured), windows of 1, 2, 4... blocks. */
export function lossScatter(level: Float64Array, weight: Float64Array, blockLength: number): LossScatter {
  const lengths: number[] = [];
  const deviations: number[] = [];
  for (let size = 1; size <= level.length; size *= 2) {
    const means = windowMeans(level, weight, size);
    if (means.length < LEAST_WINDOWS && lengths.length > 0) break;
    lengths.push(size * blockLength);
    const deviation = means.length < 2 ? 0 : madInPlace(Float64Array.from(means), 0, means.length) * NORMAL_MAD;
    // Longer means cannot scatter less than white noise would let them: few windows may show too little by chance.
    const before = deviations[deviations.length - 1];
    deviations.push(before === undefined ? deviation : Math.max(deviation, before / Math.SQRT2));
  }
  return { lengths, deviations };
}

function windowMeans(level: Float64Array, weight: Float64Array, size: number): number[] {
  const means: number[] = [];
  for (let from = 0; from + size <= level.length; from += size) {
    let sum = 0;
    let mass = 0;
    for (let k = from; k < from + size; k += 1) {
      sum += weight[k] * level[k];
      mass += weight[k];
    }
    if (mass > 0.7 * size) means.push(sum / mass);
  }
  return means;
}

/** Standard error of a mean over `length` metres. */
export function scatterAt({ lengths, deviations }: LossScatter, length: number): number {
  if (length <= lengths[0]) return deviations[0] * Math.sqrt(lengths[0] / Math.max(length, 1e-6));
  for (let i = 1; i < lengths.length; i += 1) {
    if (length > lengths[i]) continue;
    const share = Math.log(length / lengths[i - 1]) / Math.log(lengths[i] / lengths[i - 1]);
    return deviations[i - 1] + share * (deviations[i] - deviations[i - 1]);
  }
  return deviations[deviations.length - 1];
}

/**
 * Long-run variance of one block: what its variance would have to be, were blocks independent, for means over up to `most`
 * blocks to scatter as they do. From differences of neighbouring windows, which neither drift nor most zones enter.
 */
export function longRunVariance(level: Float64Array, weight: Float64Array, most: number): number {
  let largest = 0;
  for (let size = 1; size <= most; size *= 2) {
    const differences: number[] = [];
    for (let from = 0; from + 2 * size <= level.length; from += size) {
      const first = meanOf(level, weight, from, from + size);
      const second = meanOf(level, weight, from + size, from + 2 * size);
      if (first !== null && second !== null) differences.push(Math.abs(second - first));
    }
    if (differences.length < 12) break;
    const deviation = (medianInPlace(Float64Array.from(differences)) * NORMAL_MAD) / Math.SQRT2;
    largest = Math.max(largest, deviation * deviation * size);
  }
  return largest;
}

function meanOf(level: Float64Array, weight: Float64Array, from: number, end: number): number | null {
  let sum = 0;
  let mass = 0;
  for (let k = from; k < end; k += 1) {
    sum += weight[k] * level[k];
    mass += weight[k];
  }
  return mass > 0.7 * (end - from) ? sum / mass : null;
}
