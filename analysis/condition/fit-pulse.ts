import { PULSE_SHAPES, pulseOf } from './pulse-shapes.ts';
import type { PulseShape } from './pulse-shapes.ts';
import { parabolicOffset } from '../signal/correlate.ts';

export interface PulseFit {
  readonly shape: PulseShape;
  readonly at: number; // m from the first sample of the window
  readonly width: number; // m, scale of the form
  readonly amplitude: number; // signed, LF unit
  /** Sum of squares that the pulse explains, LF unit squared. */
  readonly explained: number;
}

/** Widths tried about the one the bank found. */
const WIDTHS = [0.62, 0.79, 1, 1.26, 1.6] as const;
/** A pulse is fitted over this many widths to either side. */
const REACH = 2.6;

/**
 * Best pulse in a window: position about `guess` within `reach`, width about `width` but not over `widest`, all forms, by least squares with a
 * free constant. `favour` adds to the explained sum of each form: what is known of the rope's other pulses.
 */
export function fitPulse(window: Float64Array, step: number, guess: number, width: number, widest: number, favour: Readonly<Record<PulseShape, number>>): PulseFit | null {
  let best: PulseFit | null = null;
  let bestMerit = -Infinity;
  for (const factor of WIDTHS) {
    const tried = Math.max(Math.min(width * factor, widest), 0.9 * step);
    for (const shape of PULSE_SHAPES) {
      const fit = bestPlace(window, step, guess, tried, shape);
      const merit = fit.explained + favour[shape];
      if (merit > bestMerit) {
        bestMerit = merit;
        best = fit;
      }
    }
  }
  return best;
}

/** Places tried to either side of the guess, an eighth of a width apart. */
const HOPS = 7;
const HOPS_A_WIDTH = 8;

/**
 * Best place of one form and width. Places are whole samples, or whole shares of one where pulses are narrow, from the sample
 * nearest the guess: so one sampled pulse serves many places.
 */
function bestPlace(window: Float64Array, step: number, guess: number, width: number, shape: PulseShape): PulseFit {
  const samples = width / step / HOPS_A_WIDTH;
  const shares = samples >= 1 ? 1 : Math.ceil(1 / samples - 1e-9);
  const hop = samples >= 1 ? Math.round(samples) : 1; // in shares of a sample
  const centre = Math.round(guess / step);
  const merits = new Float64Array(2 * HOPS + 1);
  for (let share = 0; share < shares; share += 1) {
    let pulse: SampledPulse | null = null;
    for (let k = -HOPS; k <= HOPS; k += 1) {
      if ((((k * hop) % shares) + shares) % shares !== share) continue;
      pulse ??= samplePulse(step, width, shape, share / shares);
      merits[k + HOPS] = explainedAt(window, centre + Math.floor((k * hop) / shares), pulse);
    }
  }
  let top = 0;
  for (let k = 1; k < merits.length; k += 1) if (merits[k] > merits[top]) top = k;
  const offset = top > 0 && top < merits.length - 1 ? parabolicOffset(merits[top - 1], merits[top], merits[top + 1]) : 0;
  const at = (centre + ((top - HOPS + offset) * hop) / shares) * step;
  return { shape, at, width, ...leastSquares(window, step, at, width, shape) };
}

/** A pulse at samples -reach..reach about a whole one, its middle `share` of a sample later. */
interface SampledPulse { readonly reach: number; readonly form: Float64Array; readonly sum: number; readonly square: number }

function samplePulse(step: number, width: number, shape: PulseShape, share: number): SampledPulse {
  const reach = Math.max(1, Math.floor((REACH * width) / step));
  const pulse = pulseOf(shape, width);
  const form = new Float64Array(2 * reach + 1);
  let sum = 0;
  let square = 0;
  for (let k = 0; k < form.length; k += 1) {
    const value = pulse((k - reach - share) * step);
    form[k] = value;
    sum += value;
    square += value * value;
  }
  return { reach, form, sum, square };
}

/** Sum of squares that the pulse explains about sample `centre`, with a free constant; what lies beyond the window is left out. */
function explainedAt(window: Float64Array, centre: number, { reach, form, sum, square }: SampledPulse): number {
  const from = centre - reach;
  const first = Math.max(0, -from);
  const last = Math.min(form.length, window.length - from);
  const members = last - first;
  if (members < 3) return 0;
  let sumValue = 0;
  let product = 0;
  for (let k = first; k < last; k += 1) {
    const value = window[from + k];
    sumValue += value;
    product += form[k] * value;
  }
  let sumForm = sum;
  let formSquare = square;
  if (members < form.length) {
    sumForm = 0;
    formSquare = 0;
    for (let k = first; k < last; k += 1) {
      sumForm += form[k];
      formSquare += form[k] * form[k];
    }
  }
  const energy = formSquare - (sumForm * sumForm) / members;
  const cross = product - (sumForm * sumValue) / members;
  return energy <= 1e-12 ? 0 : (cross * cross) / energy;
}

/** Height of a pulse of given form, place and width by least squares with a free constant, over the samples within its reach. */
export function leastSquares(window: Float64Array, step: number, at: number, width: number, shape: PulseShape): { amplitude: number; explained: number } {
  const first = Math.max(0, Math.ceil((at - REACH * width) / step));
  const last = Math.min(window.length - 1, Math.floor((at + REACH * width) / step));
  const pulse = pulseOf(shape, width);
  let members = 0;
  let sumForm = 0;
  let sumValue = 0;
  let formSquare = 0;
  let product = 0;
  for (let i = first; i <= last; i += 1) {
    const form = pulse(i * step - at);
    members += 1;
    sumForm += form;
    sumValue += window[i];
    formSquare += form * form;
    product += form * window[i];
  }
  if (members < 3) return { amplitude: 0, explained: 0 };
  const energy = formSquare - (sumForm * sumForm) / members;
  const cross = product - (sumForm * sumValue) / members;
  if (energy <= 1e-12) return { amplitude: 0, explained: 0 };
  return { amplitude: cross / energy, explained: (cross * cross) / energy };
}

/** Takes a fitted pulse off the window (or with `sign` -1 puts it back), in place. */
export function subtractPulse(window: Float64Array, step: number, fit: PulseFit, sign: 1 | -1 = 1): void {
  const pulse = pulseOf(fit.shape, fit.width);
  const first = Math.max(0, Math.ceil((fit.at - 6 * fit.width) / step));
  const last = Math.min(window.length - 1, Math.floor((fit.at + 6 * fit.width) / step));
  for (let i = first; i <= last; i += 1) window[i] -= sign * fit.amplitude * pulse(i * step - fit.at);
}
