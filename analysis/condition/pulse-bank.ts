import { solveToeplitz } from '../signal/solve-toeplitz.ts';
import type { ConditionParameters } from './parameters.ts';
import { isOdd, pulseAt } from './pulse-shapes.ts';
import type { PulseShape } from './pulse-shapes.ts';

/**
 * The forms the bank seeks: a peak, a peak with lobes, a pair of opposite peaks. The others are told apart in the fit: peaks with
 * shoulders, as a Lorentz form has them, agree with a bell by 98 %, the axial form with a hat or a bell by 95 %.
 */
export const BANK_SHAPES = ['bell', 'hat', 'radial'] as const satisfies readonly PulseShape[];

/** Filters of one width. They run on the trace thinned by `thinning`, where a pulse is three to six samples wide. */
export interface BankScale {
  readonly width: number; // m
  readonly thinning: number;
  /** Filters stand on samples, or half way between them: for pulses so narrow that half a sample matters. */
  readonly phases: readonly (0 | 0.5)[];
}

/** Half kernels for k = 0.. of the three forms; the sums of a folded pass over them are amplitudes of the pulse. */
export interface HalfKernels {
  readonly bell: Float64Array;
  readonly hat: Float64Array;
  readonly radial: Float64Array;
}

/** Widths from the narrowest that the sampling can show, about one sample, to the widest sought. */
export function bankScales(step: number, parameters: ConditionParameters): BankScale[] {
  const scales: BankScale[] = [];
  const narrowest = Math.max(parameters.faultNarrowest, 0.9 * step);
  const widest = Math.max(parameters.faultWidest, 1.5 * narrowest);
  for (let width = narrowest; width <= widest * 1.1; width *= parameters.faultWidthRatio) {
    const thinning = 2 ** Math.max(0, Math.floor(Math.log2(width / step / 3)));
    scales.push({ width, thinning, phases: width / (step * thinning) < 2.5 ? [0, 0.5] : [0] });
  }
  return scales;
}

/** Samples of the kernels to one side: as far as the forms hold energy, and never fewer than tell what noise is like beside the pulse. */
const REACH = 2;
const LEAST_TAPS = 4;

export function tapsOf(width: number, step: number): number {
  return Math.max(LEAST_TAPS, Math.floor((REACH * width) / step) + 1);
}

/** Share of white noise counted into the rope's own: its correlation is an estimate, and what it holds none of must not be trusted to be silent. */
const WHITE_SHARE = 0.01;

/**
 * Half kernels of one width for samples `step` * `thinning` apart. Each is the estimator of the pulse's height with the least
 * variance in noise of the given autocovariance (generalised least squares), so that what is common in the noise does not enter.
 */
export function halfKernels(width: number, step: number, thinning: number, phase: 0 | 0.5, correlation: Float64Array): HalfKernels {
  const kernel = (shape: PulseShape) => halfKernel(pulseSamples(shape, width, step, thinning, phase), isOdd(shape), phase, correlation);
  return { bell: kernel('bell'), hat: kernel('hat'), radial: kernel('radial') };
}

/** Half of the pulse as the samples show it, smoothed as thinning smooths. */
function pulseSamples(shape: PulseShape, width: number, step: number, thinning: number, phase: 0 | 0.5): Float64Array {
  const smoothing = smoothingOf(thinning);
  const middle = smoothing.length >> 1;
  return Float64Array.from({ length: tapsOf(width, step * thinning) }, (_, k) => {
    let sum = 0;
    smoothing.forEach((weight, j) => { sum += weight * pulseAt(shape, ((k + phase) * thinning + j - middle) * step, width); });
    return sum;
  });
}

function halfKernel(half: Float64Array, odd: boolean, phase: 0 | 0.5, correlation: Float64Array): Float64Array {
  const whole = mirrored(half, odd, phase);
  const solved = solveWithWhite(correlation, whole);
  let product = 0;
  for (let i = 0; i < whole.length; i += 1) product += whole[i] * solved[i];
  return solved.slice(whole.length - half.length).map((value) => value / product);
}

/** C^-1 s with as little white noise added as makes the estimated C a correlation at all; s itself where nothing is known of C. */
function solveWithWhite(correlation: Float64Array, pulse: Float64Array): Float64Array {
  const column = correlation.slice();
  for (let white = WHITE_SHARE; white < 1e3; white *= 3) {
    column[0] = correlation[0] * (1 + white);
    const solved = solveToeplitz(column, pulse);
    if (solved) return solved;
  }
  return pulse;
}

/** Both sides of a kernel from the later one; on a sample both share the middle. */
export function mirrored(half: Float64Array, odd: boolean, phase: 0 | 0.5): Float64Array {
  const shared = phase === 0 ? 1 : 0;
  const whole = new Float64Array(2 * half.length - shared);
  whole.set(half, half.length - shared);
  for (let k = shared; k < half.length; k += 1) whole[half.length - 1 - k] = odd ? -half[k] : half[k];
  return whole;
}

/** What halving the samples smooths with, once. */
export const HALVING = [1 / 16, 4 / 16, 6 / 16, 4 / 16, 1 / 16] as const;

/** Weights of the samples as recorded that a thinned one is made of, its own in the middle. */
function smoothingOf(thinning: number): Float64Array {
  let weights: Float64Array = Float64Array.of(1);
  for (let done = 1; done < thinning; done *= 2) weights = unthinned(weights);
  return weights;
}

/** Kernel for samples half as far apart that gives the same as `kernel` on the halved samples. */
export function unthinned(kernel: Float64Array): Float64Array {
  const out = new Float64Array(2 * kernel.length + HALVING.length - 2);
  kernel.forEach((weight, k) => HALVING.forEach((share, j) => { out[2 * k + j] += weight * share; }));
  return out;
}
