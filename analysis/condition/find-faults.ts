import type { Trace } from '../rope/trace.ts';
import { positionAt } from '../rope/trace.ts';
import { measuredPosition } from '../rope/units.ts';
import type { Checkpoint } from '../rope/checkpoint.ts';
import { bankResponse } from './bank-response.ts';
import type { Candidates } from './bank-response.ts';
import { calibrateFaults } from './calibrate-faults.ts';
import type { ConditionContext } from './condition-context.ts';
import { countBreaks } from './count-breaks.ts';
import type { Fault } from './condition.ts';
import { evenTails } from './even-tails.ts';
import { falseCallThreshold } from './false-call-threshold.ts';
import type { FalseCallThreshold } from './false-call-threshold.ts';
import { faultNoise } from './fault-noise.ts';
import { levelFault } from './level-fault.ts';
import type { LevelledFault } from './level-fault.ts';
import { noiseLevels } from './noise-levels.ts';
import type { NoiseLevels } from './noise-levels.ts';
import type { ConditionParameters } from './parameters.ts';
import { awayFromStrong } from './quiet-maxima.ts';
import { isOdd, PULSE_SHAPES, widthOf } from './pulse-shapes.ts';
import type { PulseShape } from './pulse-shapes.ts';
import { resolvePulses } from './resolve-pulses.ts';
import type { ResolvedPulse } from './resolve-pulses.ts';
import { removeStrandPattern } from './strand-pattern.ts';
import { strongestNearby } from './strongest-nearby.ts';

/** What LF says: the faults, and what their detection rested on. */
export interface FaultSearch {
  readonly faults: readonly Fault<'measured'>[];
  readonly levelled: LevelledFault;
  /** LF without level and strand pattern. */
  readonly clean: Float64Array;
  readonly spacing: number | null;
  readonly levels: NoiseLevels;
  readonly candidates: Candidates;
  readonly threshold: { readonly sound: FalseCallThreshold; readonly raised: FalseCallThreshold };
  /** Root mean square of noise with strand pattern by block of `levelled`. */
  readonly noise: Float64Array;
}

/** Maxima nearer than this are one when noise is counted, m. */
const SEPARATE = 0.04;
/** Half length of the window in which pulses are told apart, in widest pulses. */
const WINDOW = 4;
/** Candidates nearer than this are told apart together, m. */
const GROUP = 0.15;

/** Finds local faults in LF within `mask`. Null where the mask leaves nothing to judge. */
export async function findFaults(trace: Trace<'measured'>, mask: Uint8Array, context: ConditionContext, parameters: ConditionParameters, checkpoint: Checkpoint): Promise<FaultSearch | null> {
  if (!trace.fault) return null;
  const { step } = trace;
  const levelled = levelFault(trace.fault.values, mask, step, parameters);
  await checkpoint('Removing strand pattern', 0.1);
  const { values: clean, spacing } = removeStrandPattern(levelled, mask, step, context.nominalStrandSpacing, parameters);
  const levels = noiseLevels(clean, mask, levelled.blockWidth, parameters.noiseChangePenalty);
  if (!levels) return null;
  const responses = await bankResponse(clean, mask, step, levels, parameters, (stage, share) => checkpoint(stage, 0.2 + 0.6 * share));
  const candidates = evenTails(responses, SEPARATE / step, step, lengthOf(mask) * step, parameters.falseCallsPer100m);
  const kept = strongestNearby(candidates, SEPARATE / step);
  const threshold = thresholds(candidates, kept, levels, mask, step, parameters);
  const noise = faultNoise(levelled, mask);
  await checkpoint('Telling pulses apart', 0.85);
  const search = { levelled, clean, spacing, levels, candidates, threshold, noise };
  const faults = describe(trace, search, resolveAll(search, kept, step, parameters), context, parameters);
  return { ...search, faults };
}

type Search = Omit<FaultSearch, 'faults'>;

/** Root mean square of noise with strand pattern at a sample. */
function noiseAt({ noise, levelled }: Search, index: number): number {
  return noise[Math.min(noise.length - 1, Math.max(0, Math.floor(index / levelled.blockWidth)))];
}

function lengthOf(mask: Uint8Array): number {
  let members = 0;
  for (let i = 0; i < mask.length; i += 1) members += mask[i];
  return members;
}

const stretchAt = (levels: NoiseLevels, index: number): number => levels.stretchOf[Math.max(0, Math.min(levels.stretchOf.length - 1, Math.floor(index / levels.blockWidth)))];

function thresholds(candidates: Candidates, kept: readonly number[], levels: NoiseLevels, mask: Uint8Array, step: number, parameters: ConditionParameters): FaultSearch['threshold'] {
  const isRaised = levels.stretches.map((stretch) => stretch.ratio > parameters.textureRaised);
  const length = { sound: 0, raised: 0 };
  for (let block = 0; block < levels.stretchOf.length; block += 1) {
    const end = Math.min(mask.length, (block + 1) * levels.blockWidth);
    let members = 0;
    for (let i = block * levels.blockWidth; i < end; i += 1) members += mask[i];
    length[isRaised[levels.stretchOf[block]] ? 'raised' : 'sound'] += members * step;
  }
  const maxima = { sound: [] as number[], raised: [] as number[] };
  const isQuiet = awayFromStrong(candidates, kept, step);
  for (const k of kept) {
    const index = candidates.index[k];
    if (isQuiet(index)) maxima[isRaised[stretchAt(levels, index)] ? 'raised' : 'sound'].push(Math.abs(candidates.score[k]));
  }
  const sound = falseCallThreshold(maxima.sound, length.sound, parameters.falseCallsPer100m);
  const raised = falseCallThreshold(maxima.raised, length.raised, parameters.falseCallsPer100m);
  return { sound, raised: raised.score > sound.score ? raised : { ...raised, score: sound.score } };
}

interface PlacedPulse extends ResolvedPulse {
  readonly index: number; // samples of the trace, fractional
  readonly stretch: number;
}

/** Pulses with more than this score show their form, and this many of them the rope's. */
const STRONG = 8;
const ENOUGH_STRONG = 40;

const NO_FAVOUR: Readonly<Record<PulseShape, number>> = { bell: 0, axial: 0, hat: 0, radial: 0, slope: 0, coil: 0 };

function resolveAll(search: Search, kept: readonly number[], step: number, parameters: ConditionParameters): PlacedPulse[] {
  const loud = kept.filter((k) => Math.abs(search.candidates.score[k]) > STRONG);
  const every = Math.ceil(loud.length / ENOUGH_STRONG);
  const strong = resolveEach(search, loud.filter((_, i) => i % every === 0), step, parameters, null).filter((pulse) => pulse.score > STRONG);
  if (strong.length < 3) return resolveEach(search, kept, step, parameters, null);
  // One instrument draws its pulses alike: the forms of the strong ones are expected of the weak.
  const share = {} as Record<PulseShape, number>;
  for (const shape of PULSE_SHAPES) share[shape] = (strong.filter((pulse) => pulse.shape === shape).length + 0.4) / (strong.length + 2);
  return resolveEach(search, kept, step, parameters, share);
}

function resolveEach(search: Search, kept: readonly number[], step: number, parameters: ConditionParameters, share: Readonly<Record<PulseShape, number>> | null): PlacedPulse[] {
  const { candidates, levels } = search;
  const score = (k: number) => Math.abs(candidates.score[k]);
  const seeds = kept.filter((k) => score(k) >= needed(search, candidates.index[k], parameters));
  const groups: { members: number[]; strongest: number }[] = [];
  for (const k of seeds) {
    const last = groups[groups.length - 1];
    if (last && (candidates.index[k] - candidates.index[last.members[last.members.length - 1]]) * step < GROUP) {
      last.members.push(k);
      if (score(k) > score(last.strongest)) last.strongest = k;
    } else groups.push({ members: [k], strongest: k });
  }
  // The strongest first: their far shoulders are off before the weak are judged.
  groups.sort((a, b) => score(b.strongest) - score(a.strongest));
  const rest = search.clean.slice();
  const placed: PlacedPulse[] = [];
  for (const { members, strongest } of groups) {
    const reach = Math.ceil((WINDOW * parameters.faultWidest) / step);
    const from = Math.max(0, Math.floor(candidates.index[members[0]]) - reach);
    const end = Math.min(rest.length, Math.ceil(candidates.index[members[members.length - 1]]) + reach + 1);
    const stretch = stretchAt(levels, candidates.index[strongest]);
    const known = placed.filter((pulse) => pulse.index > from && pulse.index < end).map((pulse) => ({ ...pulse, at: (pulse.index - from) * step }));
    const pulses = resolvePulses(rest.subarray(from, end), known, {
      step, noise: candidates.noise, stretch, parameters, least: parameters.faultLeastShare * noiseAt(search, candidates.index[strongest]), favour: favourOf(share, levels.stretches[stretch].scale),
      threshold: needed(search, candidates.index[strongest], parameters) * levels.louder[Math.min(levels.louder.length - 1, Math.floor(candidates.index[strongest] / levels.blockWidth))] * 0.98,
      from: (candidates.index[members[0]] - from) * step - GROUP / 2, to: (candidates.index[members[members.length - 1]] - from) * step + GROUP / 2,
    });
    for (const pulse of pulses) placed.push({ ...pulse, index: from + pulse.at / step, stretch });
  }
  return placed.sort((a, b) => a.index - b.index);
}

/** Score needed at a sample. */
function needed({ levels, threshold }: Search, index: number, parameters: ConditionParameters): number {
  return levels.stretches[stretchAt(levels, index)].ratio > parameters.textureRaised ? threshold.raised.score : threshold.sound.score;
}

/** What a form's share among the strong pulses adds to its merit: twice the logarithm, in units of the noise variance. */
function favourOf(share: Readonly<Record<PulseShape, number>> | null, scale: number): Readonly<Record<PulseShape, number>> {
  if (!share) return NO_FAVOUR;
  return Object.fromEntries(PULSE_SHAPES.map((shape) => [shape, 2 * scale ** 2 * Math.log(share[shape])])) as Record<PulseShape, number>;
}

function describe(trace: Trace<'measured'>, search: Search, pulses: readonly PlacedPulse[], context: ConditionContext, parameters: ConditionParameters): Fault<'measured'>[] {
  const { step } = trace;
  const places = pulses.map((pulse) => ({ position: trace.start + pulse.index * step, amplitude: pulse.amplitude }));
  const calibration = calibrateFaults(places, context, parameters.visualMatch);
  const counts = countBreaks(pulses.map((pulse) => ({ ...pulse, width: widthOf(pulse.shape, pulse.width) })));
  return pulses.map((pulse, i) => {
    const rms = noiseAt(search, pulse.index);
    const odd = isOdd(pulse.shape);
    const amplitude = odd ? -pulse.amplitude : pulse.amplitude;
    const sigma = search.levels.stretches[pulse.stretch].scale;
    const width = widthOf(pulse.shape, pulse.width);
    return {
      id: `f${i + 1}`, position: measuredPosition(positionAt(trace, 0) + pulse.index * step),
      lossPercent: calibration.percentPerUnit === null ? null : Math.abs(amplitude) * calibration.percentPerUnit, lossCalibration: calibration.basis,
      amplitude, snr: Math.abs(amplitude) / rms, width, positionUncertainty: placeBound(sigma / Math.abs(amplitude), pulse.width, step),
      count: counts[i],
      falseCallsPer100m: falseCallsAt(pulse, search, parameters),
      shape: odd ? (amplitude > 0 ? 'positive-negative' : 'negative-positive') : 'single',
    };
  });
}

/** The rate of noise maxima at a score, from the rate at the threshold along the tail that the threshold rests on. */
function falseCallsAt(pulse: PlacedPulse, search: Search, parameters: ConditionParameters): number {
  const raised = search.levels.stretches[pulse.stretch].ratio > parameters.textureRaised;
  const { score, tail } = raised ? search.threshold.raised : search.threshold.sound;
  return parameters.falseCallsPer100m * Math.min(1, Math.exp(-tail * (pulse.score ** 2 - score ** 2) / 2));
}

/** 95 % bound of a pulse's place: the Cramer-Rao bound of a bell in white noise, doubled for what the form is not known of, and a quarter of a sample. */
function placeBound(noiseOverPeak: number, width: number, step: number): number {
  const spread = width / 2.355;
  const energy = (Math.sqrt(Math.PI) / 2) * (1 / (spread * step));
  return Math.hypot(2 * 1.96 * noiseOverPeak / Math.sqrt(energy), step / 4);
}
