import type { ConditionParameters } from './parameters.ts';
import { isOdd, pulseAt, reachOf } from './pulse-shapes.ts';
import type { PulseShape } from './pulse-shapes.ts';

/** The forms the bank seeks: a peak, a peak with lobes, a pair of opposite peaks. The others are told apart in the fit. */
export const BANK_SHAPES = ['bell', 'axial', 'radial'] as const satisfies readonly PulseShape[];

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
  readonly axial: Float64Array;
  readonly radial: Float64Array;
}

/** Widths from the narrowest that the sampling can show to the widest sought. */
export function bankScales(step: number, parameters: ConditionParameters): BankScale[] {
  const scales: BankScale[] = [];
  const narrowest = Math.max(parameters.faultNarrowest, 1.2 * step);
  const widest = Math.max(parameters.faultWidest, 1.5 * narrowest);
  for (let width = narrowest; width <= widest * 1.1; width *= parameters.faultWidthRatio) {
    const thinning = 2 ** Math.max(0, Math.floor(Math.log2(width / step / 3)));
    scales.push({ width, thinning, phases: width / (step * thinning) < 2.5 ? [0, 0.5] : [0] });
  }
  return scales;
}

/**
 * Half kernels of one width for samples `step` apart. Each is the least-squares estimator of the pulse's height where a
 * constant is added to it, so that what is slower than the pulse does not enter.
 */
export function halfKernels(width: number, step: number, phase: 0 | 0.5): HalfKernels {
  return { bell: halfKernel('bell', width, step, phase), axial: halfKernel('axial', width, step, phase), radial: halfKernel('radial', width, step, phase) };
}

function halfKernel(shape: PulseShape, width: number, step: number, phase: 0 | 0.5): Float64Array {
  const reach = shape === 'bell' ? 1.5 * reachOf(shape, width) : reachOf(shape, width);
  const taps = Math.max(2, Math.floor(reach / step - phase) + 1);
  const half = Float64Array.from({ length: taps }, (_, k) => pulseAt(shape, (k + phase) * step, width));
  const twice = (k: number) => (k === 0 && phase === 0 ? 1 : 2);
  if (!isOdd(shape)) {
    let sum = 0;
    let members = 0;
    half.forEach((value, k) => { sum += twice(k) * value; members += twice(k); });
    for (let k = 0; k < taps; k += 1) half[k] -= sum / members;
  }
  let energy = 0;
  let peakProduct = 0;
  half.forEach((value, k) => { energy += twice(k) * value * value; peakProduct += twice(k) * value * pulseAt(shape, (k + phase) * step, width); });
  for (let k = 0; k < taps; k += 1) half[k] /= peakProduct || energy;
  return half;
}
