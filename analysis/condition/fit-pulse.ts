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

function bestPlace(window: Float64Array, step: number, guess: number, width: number, shape: PulseShape): PulseFit {
  const hop = Math.max(width / 8, step / 8);
  const hops = 7;
  const merits: number[] = [];
  for (let k = -hops; k <= hops; k += 1) merits.push(leastSquares(window, step, guess + k * hop, width, shape).explained);
  let top = 0;
  for (let k = 1; k < merits.length; k += 1) if (merits[k] > merits[top]) top = k;
  const offset = top > 0 && top < merits.length - 1 ? parabolicOffset(merits[top - 1], merits[top], merits[top + 1]) : 0;
  const at = guess + (top - hops + offset) * hop;
  return { shape, at, width, ...leastSquares(window, step, at, width, shape) };
}

/** Height of a pulse of given form, place and width by least squares with a free constant, over the samples within its reach. */
export function leastSquares(window: Float64Array, step: number, at: number, width: number, shape: PulseShape): { amplitude: number; explained: number } {
  const first = Math.max(0, Math.ceil((at - 2.6 * width) / step));
  const last = Math.min(window.length - 1, Math.floor((at + 2.6 * width) / step));
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
