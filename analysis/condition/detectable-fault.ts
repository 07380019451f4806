import { seededRandom } from '../life/statistics/random.ts';
import type { FaultSearch } from './find-faults.ts';
import { normalQuantile } from './normal-quantile.ts';
import type { ConditionParameters } from './parameters.ts';
import { isOdd, pulseAt } from './pulse-shapes.ts';

/** Trials of one size, and sizes tried at most. */
const TRIALS = 60;
const ROUNDS = 6;
/** Pulse for which the smallest height is stated where the rope shows none of its own: the middle of the widths sought. */
const REFERENCE_WIDTH = 0.02;

/**
 * Smallest LF pulse that would have been found with the stated probability, by stretch of alike noise: the threshold plus
 * the scatter of the best filter for the rope's usual pulse. Tried like detectableLoss: pulses of that height are laid at
 * seeded places into LF as recorded and cleaned, and raised until the share of hits is reached.
 */
export function detectableFault(search: FaultSearch, mask: Uint8Array, step: number, parameters: ConditionParameters, seed: number): Float64Array {
  const { levels, threshold, candidates } = search;
  const width = Math.max(usualWidth(search), 1.2 * step);
  const shape = usualShape(search);
  const alike = candidates.noise.filter((each) => isOdd(each.shape) === isOdd(shape));
  const nearest = alike.reduce((best, each) => (Math.abs(Math.log(each.width / width)) < Math.abs(Math.log(best.width / width)) ? each : best));
  const margin = normalQuantile(parameters.detectionProbability);
  const score = (stretch: number) => (levels.stretches[stretch].ratio > parameters.textureRaised ? threshold.raised : threshold.sound).score;
  const factor = calibrate(search, mask, step, width, shape, (stretch) => (score(stretch) + margin) * nearest.sigma[stretch], score, parameters, seed);
  return Float64Array.from(levels.stretches, (_, stretch) => factor * (score(stretch) + margin) * nearest.sigma[stretch]);
}

function usualWidth({ faults }: FaultSearch): number {
  if (faults.length < 5) return REFERENCE_WIDTH;
  const widths = faults.map((fault) => fault.width).sort((a, b) => a - b);
  return widths[widths.length >> 1];
}

function usualShape({ faults }: FaultSearch): 'axial' | 'radial' {
  return faults.filter((fault) => fault.shape !== 'single').length > faults.length / 2 ? 'radial' : 'axial';
}

function calibrate(search: FaultSearch, mask: Uint8Array, step: number, width: number, shape: 'axial' | 'radial', size: (stretch: number) => number, score: (stretch: number) => number, parameters: ConditionParameters, seed: number): number {
  const { clean, levels } = search;
  const random = seededRandom(seed + 1);
  const reach = Math.ceil((4 * parameters.faultWidest) / step);
  const places: number[] = [];
  for (let tried = 0; tried < 20 * TRIALS && places.length < TRIALS; tried += 1) {
    const at = reach + Math.floor(random() * (clean.length - 2 * reach));
    if (at > 0 && at + reach < clean.length && mask[at] === 1 && mask[at - reach] === 1 && mask[at + reach] === 1) places.push(at);
  }
  if (places.length < TRIALS) return 1;
  const offsets = places.map(() => random() - 0.5);
  let factor = 1;
  for (let round = 0; round < ROUNDS; round += 1) {
    let hits = 0;
    places.forEach((at, i) => {
      const stretch = levels.stretchOf[Math.min(levels.stretchOf.length - 1, Math.floor(at / levels.blockWidth))];
      const window = clean.slice(at - reach, at + reach + 1);
      for (let k = 0; k < window.length; k += 1) window[k] += factor * size(stretch) * pulseAt(shape, (k - reach - offsets[i]) * step, width);
      if (isSeen(search, window, reach, step, stretch, score(stretch) * levels.louder[Math.min(levels.louder.length - 1, Math.floor(at / levels.blockWidth))])) hits += 1;
    });
    if (hits >= parameters.detectionProbability * places.length) return factor;
    factor *= 1.08;
  }
  return factor;
}

/** Whether any filter of the bank passes the threshold within a pulse's width of the middle. */
function isSeen({ candidates }: FaultSearch, window: Float64Array, middle: number, step: number, stretch: number, threshold: number): boolean {
  for (const { width, shape, sigma, phase, half } of candidates.noise) {
    const near = Math.max(1, Math.round((0.6 * width) / step));
    const odd = isOdd(shape);
    const shift = phase === 0 ? 0 : 1;
    for (let i = middle - near; i <= middle + near; i += 1) {
      let sum = shift === 0 && !odd ? -window[i] * half[0] : 0;
      for (let k = 0; k < half.length && i + k + shift < window.length && i - k >= 0; k += 1) sum += (window[i + k + shift] + (odd ? -1 : 1) * window[i - k]) * half[k];
      if (Math.abs(sum) > threshold * sigma[stretch]) return true;
    }
  }
  return false;
}
