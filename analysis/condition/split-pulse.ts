import type { PulseFit } from './fit-pulse.ts';
import { PULSE_SHAPES, pulseOf } from './pulse-shapes.ts';
import type { PulseShape } from './pulse-shapes.ts';

/** Widths of the two, as shares of the one pulse's; distances, in widths of the two; where their middle lies, in shares of the distance. */
const WIDTHS = [0.45, 0.52, 0.6, 0.68, 0.77, 0.88, 1] as const;
const DISTANCES = [0.8, 1, 1.2, 1.4, 1.6, 1.8, 2, 2.25, 2.5] as const;
const SHIFTS = [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1] as const;
/** Share of the mean noise that is sure to be in what is left: it scatters. */
const NOISE_SHARE = 0.6;
const PLACES = DISTANCES.flatMap((distance) => SHIFTS.map((shift) => ({ distance, shift })));

/**
 * The two pulses of one form that explain a window best in place of the single one fitted, each at least `leastShare` of the other;
 * null where none explain `needed` (LF unit squared) more. `noise` is the mean square of one sample's. One wide pulse takes two narrow neighbours for itself otherwise.
 */
export function splitPulse(window: Float64Array, step: number, fit: PulseFit, leastShare: number, needed: number, noise: number): readonly [PulseFit, PulseFit] | null {
  if (residual(window, step, fit, NOISE_SHARE * noise) < needed) return null;
  let best: readonly [PulseFit, PulseFit] | null = null;
  let least = fit.explained + needed;
  for (const shape of PULSE_SHAPES) {
    for (const share of WIDTHS) {
      const width = Math.max(share * fit.width, 0.9 * step);
      for (const place of PLACES) {
        const middle = fit.at + place.shift * place.distance * width;
        const pair = twoHeights(window, step, shape, width, middle - (place.distance * width) / 2, middle + (place.distance * width) / 2, least, leastShare);
        if (!pair) continue;
        least = pair[0].explained + pair[1].explained;
        best = pair;
      }
    }
  }
  return best;
}

/** Sum of squares that the single pulse leaves beyond noise: two cannot explain more of it. */
function residual(window: Float64Array, step: number, { shape, at, width, amplitude }: PulseFit, noise: number): number {
  const pulse = pulseOf(shape, width);
  const first = Math.max(0, Math.ceil((at - 4 * width) / step));
  const last = Math.min(window.length - 1, Math.floor((at + 4 * width) / step));
  let sum = 0;
  for (let i = first; i <= last; i += 1) sum += (window[i] - amplitude * pulse(i * step - at)) ** 2 - noise;
  return sum;
}

/** Heights of two pulses at given places by least squares, if they explain more than `least`; the sum explained is shared out by what each takes. */
function twoHeights(window: Float64Array, step: number, shape: PulseShape, width: number, left: number, right: number, least: number, leastShare: number): readonly [PulseFit, PulseFit] | null {
  const pulse = pulseOf(shape, width);
  const first = Math.max(0, Math.ceil((left - 4 * width) / step));
  const last = Math.min(window.length - 1, Math.floor((right + 4 * width) / step));
  let aa = 0;
  let ab = 0;
  let bb = 0;
  let ya = 0;
  let yb = 0;
  for (let i = first; i <= last; i += 1) {
    const a = pulse(i * step - left);
    const b = pulse(i * step - right);
    aa += a * a;
    ab += a * b;
    bb += b * b;
    ya += a * window[i];
    yb += b * window[i];
  }
  const determinant = aa * bb - ab * ab;
  if (determinant <= 1e-9 * aa * bb) return null;
  const one = (bb * ya - ab * yb) / determinant;
  const two = (aa * yb - ab * ya) / determinant;
  const ratio = one / two;
  if (one * ya + two * yb <= least || !(ratio >= leastShare && ratio <= 1 / leastShare)) return null;
  return [{ shape, at: left, width, amplitude: one, explained: one * ya }, { shape, at: right, width, amplitude: two, explained: two * yb }];
}
