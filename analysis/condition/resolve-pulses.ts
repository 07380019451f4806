import type { BankNoise } from './bank-response.ts';
import { fitPulse, subtractPulse } from './fit-pulse.ts';
import type { PulseFit } from './fit-pulse.ts';
import { isOdd, widthOf } from './pulse-shapes.ts';
import type { PulseShape } from './pulse-shapes.ts';
import type { ConditionParameters } from './parameters.ts';
import { splitPulse } from './split-pulse.ts';

export interface ResolvedPulse extends PulseFit {
  readonly score: number;
  /** Pulses too near to be told apart from this one. */
  merged: number;
}

export interface ResolveContext {
  readonly step: number;
  readonly noise: readonly BankNoise[];
  readonly stretch: number;
  /** Score that a pulse must reach here. */
  readonly threshold: number;
  /** Lowest peak that is called at all: taking off what is lower than the noise would leave a dent in it. */
  readonly least: number;
  /** Where new pulses may stand, m from the first sample of the window. */
  readonly from: number;
  readonly to: number;
  readonly favour: Readonly<Record<PulseShape, number>>;
  readonly parameters: ConditionParameters;
}

/** More pulses than this in one window are texture, not breaks to be told apart. */
const MOST_PULSES = 12;
/** What is left beside a pulse shows that it is more than one; how many more than this it does not show. */
const MOST_MERGED = 2;
/** Share of a pulse's explained sum that two must explain beyond it: the forms sought miss some percent of real ones. */
const SPLIT_GAIN = 0.06;
/** Two neighbours that would each be called alone reach together at least this many thresholds. */
const SPLIT_FROM = 1.4;

/**
 * Takes pulses off a window in place, strongest first, each fitted anew when a neighbour has been found, until nothing above
 * the threshold is left that is not the misfit of a stronger pulse. `known` are stronger pulses found before and taken off.
 */
export function resolvePulses(rest: Float64Array, known: readonly PulseFit[], context: ResolveContext): ResolvedPulse[] {
  const widest = context.parameters.faultWidest;
  const pulses: ResolvedPulse[] = [];
  const barred: number[] = [];
  while (pulses.length < MOST_PULSES && barred.length < 6) {
    const seed = strongestLeft(rest, barred, context);
    if (!seed) break;
    const fit = fitPulse(rest, context.step, seed.at, seed.width, widest, context.favour);
    if (!fit || fit.amplitude === 0) break;
    const near = pulses.find((each) => isUnresolved(each, fit, context));
    if (near) near.merged = Math.min(MOST_MERGED, near.merged + 1);
    if (near || Math.abs(fit.amplitude) < context.least || !agrees(seed, fit) || isMisfit([...pulses, ...known], fit, context)) {
      barred.push(seed.at);
      continue;
    }
    // What two must explain beyond one: more than noise that passes the threshold, and more than the misfit of a form.
    const score = Math.abs(seed.score);
    const needed = fit.explained * Math.max((context.threshold / score) ** 2, SPLIT_GAIN);
    const parts = score < SPLIT_FROM * context.threshold ? null : splitPulse(rest, context.step, fit, context.parameters.secondPulseShare, needed, fit.explained / score ** 2);
    for (const part of parts ?? [fit]) {
      pulses.push({ ...part, score: score * Math.min(1, Math.abs(part.amplitude / fit.amplitude)), merged: 0 });
      subtractPulse(rest, context.step, part);
    }
    if (pulses.length > 1) refit(rest, pulses, context);
  }
  // Fitted beside each other, some turn out to be lower than they seemed alone.
  return pulses.filter((pulse) => Math.abs(pulse.amplitude) >= context.least && !isLow(pulse, [...pulses, ...known], context));
}

/** Extent of the main form, at half height: a pair of opposite peaks is about twice its lobe wide. */
const extentOf = (fit: PulseFit): number => widthOf(fit.shape, fit.width) * (isOdd(fit.shape) ? 1.6 : 1);

function isUnresolved(each: PulseFit, fit: PulseFit, { parameters }: ResolveContext): boolean {
  const limit = parameters.resolutionWidths * Math.max(extentOf(each), extentOf(fit));
  return Math.abs(each.at - fit.at) < limit && Math.abs(fit.amplitude) > 1.6 * parameters.secondPulseShare * Math.abs(each.amplitude);
}

/** Inside a stronger pulse, or so low beside stronger ones that it is what their forms miss: what each misses adds up. */
function isMisfit(pulses: readonly PulseFit[], fit: PulseFit, context: ResolveContext): boolean {
  return pulses.some((each) => Math.abs(each.at - fit.at) < context.parameters.resolutionWidths * extentOf(each)) || isLow(fit, pulses, context);
}

function isLow(fit: PulseFit, pulses: readonly PulseFit[], { parameters }: ResolveContext): boolean {
  let beside = 0;
  for (const each of pulses) {
    if (Math.abs(each.amplitude) > Math.abs(fit.amplitude) && Math.abs(each.at - fit.at) < 3 * (each.width + fit.width)) beside += Math.abs(each.amplitude);
  }
  return Math.abs(fit.amplitude) < parameters.secondPulseShare * beside;
}

function refit(rest: Float64Array, pulses: ResolvedPulse[], context: ResolveContext): void {
  for (let i = 0; i < pulses.length; i += 1) {
    const old = pulses[i];
    subtractPulse(rest, context.step, old, -1);
    const fit = fitPulse(rest, context.step, old.at, old.width, context.parameters.faultWidest, context.favour) ?? old;
    const moved = Math.abs(fit.at - old.at) > old.width ? old : fit;
    pulses[i] = { ...old, ...moved };
    subtractPulse(rest, context.step, moved);
  }
}

interface Seed { readonly at: number; readonly score: number; readonly width: number; /** As the filter that found it estimates it. */ readonly amplitude: number }

/** A fit this many times higher or lower than the filter's estimate follows the noise that the filter leaves out. */
const MOST_APART = 4;

function agrees(seed: Seed, fit: PulseFit): boolean {
  const ratio = Math.abs(fit.amplitude / seed.amplitude);
  return ratio < MOST_APART && ratio > 1 / MOST_APART;
}

/** The strongest response of the bank in what is left of the window, or null where none passes the threshold. */
function strongestLeft(rest: Float64Array, barred: readonly number[], context: ResolveContext): Seed | null {
  let best: Seed | null = null;
  let least = context.threshold;
  const { step } = context;
  for (const { width, shape, sigma, phase, half } of context.noise) {
    const deviation = sigma[context.stretch];
    if (!(deviation > 0)) continue;
    const odd = isOdd(shape);
    // Wide pulses are scanned in hops of a sixth of their width: between hops the score changes by a few percent.
    const hop = Math.max(1, Math.floor(width / step / 6));
    const first = Math.max(half.length, Math.round(context.from / step));
    const end = Math.min(rest.length - half.length - 1, Math.round(context.to / step) + 1);
    const shift = phase === 0 ? 0 : 1;
    for (let i = first; i < end; i += hop) {
      let sum = shift === 0 && !odd ? -rest[i] * half[0] : 0;
      if (odd) for (let k = 0; k < half.length; k += 1) sum += (rest[i + k + shift] - rest[i - k]) * half[k];
      else for (let k = 0; k < half.length; k += 1) sum += (rest[i + k + shift] + rest[i - k]) * half[k];
      const score = sum / deviation;
      if (Math.abs(score) <= least) continue;
      const at = (i + phase) * step;
      if (barred.some((each) => Math.abs(each - at) < Math.max(width, 1.5 * step))) continue;
      least = Math.abs(score);
      best = { at, score, width, amplitude: sum };
    }
  }
  return best;
}
