import { PULSE_SHAPES, pulseOf } from './pulse-shapes.ts';
import type { PulseShape } from './pulse-shapes.ts';
import { parabolicOffset } from '../signal/parabolic-offset.ts';
import { modulo } from '../signal/modulo.ts';

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
const BETWEEN = 1.12;
/** Widths to either side over which each form is fitted: as far as it holds energy, or wide forms would seem to explain more. */
const REACH: Readonly<Record<PulseShape, number>> = { bell: 1.5, axial: 4, hat: 2, radial: 4, slope: 2, coil: 3 };

/**
 * Best pulse in a window: position about `guess` within `reach`, width about `width` but not over `widest`, all forms, by least squares.
 * `favour` adds to the explained sum of each form: what is known of the rope's other pulses.
 */
export function fitPulse(window: Float64Array, step: number, guess: number, width: number, widest: number, favour: Readonly<Record<PulseShape, number>>): PulseFit | null {
  const fit = (tried: number, shape: PulseShape) => bestPlace(window, step, guess, Math.max(Math.min(tried, widest), 0.9 * step), shape);
  let best: PulseFit | null = null;
  for (const factor of WIDTHS) for (const shape of PULSE_SHAPES) best = better(best, fit(width * factor, shape), favour);
  return best && refineWidth(best, fit, favour);
}

/** The width between those tried where a parabola through the explained sums of three of them has its summit. */
function refineWidth(found: PulseFit, fit: (width: number, shape: PulseShape) => PulseFit, favour: Readonly<Record<PulseShape, number>>): PulseFit {
  const narrower = fit(found.width / BETWEEN, found.shape);
  const wider = fit(found.width * BETWEEN, found.shape);
  const best = [narrower, wider].reduce((most, each) => better(most, each, favour), found);
  if (best !== found) return best;
  const offset = parabolicOffset(narrower.explained, found.explained, wider.explained);
  return better(found, fit(found.width * BETWEEN ** offset, found.shape), favour);
}

function better(best: PulseFit | null, fit: PulseFit, favour: Readonly<Record<PulseShape, number>>): PulseFit {
  return best && best.explained + favour[best.shape] >= fit.explained + favour[fit.shape] ? best : fit;
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
      if (modulo(k * hop, shares) !== share) continue;
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
interface SampledPulse { readonly reach: number; readonly form: Float64Array; readonly square: number }

function samplePulse(step: number, width: number, shape: PulseShape, share: number): SampledPulse {
  const reach = Math.max(1, Math.floor((REACH[shape] * width) / step));
  const pulse = pulseOf(shape, width);
  const form = new Float64Array(2 * reach + 1);
  let square = 0;
  for (let k = 0; k < form.length; k += 1) {
    const value = pulse((k - reach - share) * step);
    form[k] = value;
    square += value * value;
  }
  return { reach, form, square };
}

/** Sum of squares that the pulse explains about sample `centre`; what lies beyond the window is left out. */
function explainedAt(window: Float64Array, centre: number, { reach, form, square }: SampledPulse): number {
  const from = centre - reach;
  const first = Math.max(0, -from);
  const last = Math.min(form.length, window.length - from);
  if (last - first < 3) return 0;
  let product = 0;
  for (let k = first; k < last; k += 1) product += form[k] * window[from + k];
  let energy = square;
  if (last - first < form.length) {
    energy = 0;
    for (let k = first; k < last; k += 1) energy += form[k] * form[k];
  }
  return energy <= 1e-12 ? 0 : (product * product) / energy;
}

/**
 * Height of a pulse of given form, place and width by least squares over the samples within its reach. The window has been
 * freed of its slow level before: a constant of its own would take part of a narrow pulse's lobes and favour wide forms.
 */
export function leastSquares(window: Float64Array, step: number, at: number, width: number, shape: PulseShape): { amplitude: number; explained: number } {
  const first = Math.max(0, Math.ceil((at - REACH[shape] * width) / step));
  const last = Math.min(window.length - 1, Math.floor((at + REACH[shape] * width) / step));
  const pulse = pulseOf(shape, width);
  let energy = 0;
  let product = 0;
  for (let i = first; i <= last; i += 1) {
    const form = pulse(i * step - at);
    energy += form * form;
    product += form * window[i];
  }
  if (last - first < 2 || energy <= 1e-12) return { amplitude: 0, explained: 0 };
  return { amplitude: product / energy, explained: (product * product) / energy };
}

/** Takes a fitted pulse off the window (or with `sign` -1 puts it back), in place. */
export function subtractPulse(window: Float64Array, step: number, fit: PulseFit, sign: 1 | -1 = 1): void {
  const pulse = pulseOf(fit.shape, fit.width);
  const first = Math.max(0, Math.ceil((fit.at - 6 * fit.width) / step));
  const last = Math.min(window.length - 1, Math.floor((fit.at + 6 * fit.width) / step));
  for (let i = first; i <= last; i += 1) window[i] -= sign * fit.amplitude * pulse(i * step - fit.at);
}
