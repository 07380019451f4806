import type { Run } from '../intake/run.ts';
import type { Checkpoint } from '../rope/checkpoint.ts';
import { unionOf } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import type { Repeatability } from '../rope/survey.ts';
import type { Channel, Trace } from '../rope/trace.ts';
import { measuredPosition } from '../rope/units.ts';
import type { MeasuredPosition } from '../rope/units.ts';
import { medianAbsoluteDeviation, NORMAL_MAD } from '../signal/mad.ts';
import { alignInspections } from './align-inspections.ts';
import { toRope } from './rope-map.ts';
import type { RopeMap } from './rope-map.ts';
import { resampleOnRope } from './resample-on-rope.ts';
import { intervalsOnRope } from './measured-intervals.ts';

export interface RunFrame {
  readonly run: Run;
  readonly toInspection: (measured: MeasuredPosition) => MeasuredPosition;
}

export interface CombinedRuns {
  readonly primary: Run;
  readonly trace: Trace<'measured'>;
  readonly covered: readonly Interval<'measured'>[];
  readonly repeatability: Repeatability;
  readonly used: readonly Run[];
  /** How the positions of each run that is used become those of the combined trace. */
  readonly frames: readonly RunFrame[];
  readonly remarks: readonly string[];
}

/** A run whose match to the best run is weaker than this is left out of the combination, and said to be. */
const LEAST_CONFIDENCE = 0.2;

/**
 * Several runs of one inspection made one trace in the frame of the run that covers most: LMA is the median of three or more,
 * the mean of two, at each position over the runs that saw it; LF is the best run's. Repeatability is the robust spread of a run about the others. One run passes through.
 */
export async function combineRuns(runs: readonly Run[], checkpoint: Checkpoint): Promise<CombinedRuns> {
  const ordered = [...runs].sort((a, b) => lengthOf(b.covered) - lengthOf(a.covered));
  const primary = ordered[0];
  if (ordered.length === 1) return { primary, trace: primary.trace, covered: primary.covered, repeatability: { lossPercent: null, fault: null }, used: ordered, frames: [{ run: primary, toInspection: (measured) => measured }], remarks: [] };
  const maps = await alignInspections(
    ordered.map((run) => ({ id: run.file, date: '2000-01-01', trace: run.trace, statedDirection: null, positionsFell: false, tiePoints: [] })),
    { ropeLength: null, loopLength: null, landmarks: [], events: [], checkpoint },
  );
  const matched = ordered.map((run, i) => ({ run, map: maps[i] })).filter(({ map }) => map.confidence >= LEAST_CONFIDENCE);
  const remarks = ordered.filter((run) => !matched.some((each) => each.run === run)).map((run) => `run ${run.file} could not be matched to run ${primary.file} and is not combined with it`);
  const covered = unionOf(matched.flatMap(({ run, map }) => intervalsOnRope(run.covered, map).map((each) => ({ from: measuredPosition(each.from), to: measuredPosition(each.to) }))));
  const axis = axisOver(primary.trace, covered);
  const traces = matched.map(({ run, map }) => resampleOnRope(run.trace, map, axis));
  const loss = combine(traces.map((trace) => trace.loss), true);
  const fault = combine(traces.map((trace, i) => signed(trace.fault, matched[i].map)), false);
  return {
    primary, covered, used: matched.map((each) => each.run), frames: matched.map(({ run, map }) => ({ run, toInspection: (measured) => measuredPosition(toRope(map, measured)) })),
    trace: { ...primary.trace, start: measuredPosition(axis.start), length: axis.length, loss: loss.channel, fault: fault.channel, speed: traces[0].speed },
    repeatability: { lossPercent: loss.spread, fault: fault.spread },
    remarks: matched.length > 1 ? [...remarks, `${matched.length} runs combined in the frame of ${primary.file}`] : remarks,
  };
}

function lengthOf(intervals: readonly Interval<'measured'>[]): number {
  return intervals.reduce((sum, each) => sum + each.to - each.from, 0);
}

/** The primary run's own grid, carried on to where the other runs reach. */
function axisOver(trace: Trace<'measured'>, covered: readonly Interval<'measured'>[]): { start: number; step: number; length: number } {
  const low = Math.min(trace.start, ...covered.map((each) => each.from + trace.step / 2));
  const high = Math.max(trace.start + (trace.length - 1) * trace.step, ...covered.map((each) => each.to - trace.step / 2));
  const before = Math.ceil((trace.start - low) / trace.step - 1e-6);
  const start = trace.start - before * trace.step;
  return { start, step: trace.step, length: Math.floor((high - start) / trace.step + 1e-6) + 1 };
}

/** LF of a run against the best run's direction is not compared: whether its sign turns depends on the head. */
function signed(channel: Channel | null, map: RopeMap): Channel | null {
  return channel === null || !map.reversed ? channel : null;
}

function combine(channels: readonly (Channel | null)[], level: boolean): { channel: Channel | null; spread: number | null } {
  const present = channels.filter((channel) => channel !== null);
  if (present.length === 0) return { channel: null, spread: null };
  const zeros = level ? present.map((channel) => zeroAgainst(channel, present[0])) : present.map(() => 0);
  const length = present[0].values.length;
  const values = new Float64Array(length);
  const valid = new Uint8Array(length);
  const differences: number[] = [];
  const here: number[] = [];
  const stride = Math.max(1, Math.floor(length / 20_000));
  for (let i = 0; i < length; i += 1) {
    here.length = 0;
    present.forEach((channel, k) => {
      if (channel.valid[i] === 1) here.push(channel.values[i] - zeros[k]);
    });
    if (here.length === 0) continue;
    valid[i] = 1;
    // A mean of pulses a centimetre apart is no pulse: LF is taken from the best run that saw the place.
    values[i] = level ? middleOf(here) : here[0];
    if (here.length > 1 && i % stride === 0 && present[0].valid[i] === 1 && present[1]?.valid[i] === 1) differences.push(present[0].values[i] - zeros[0] - present[1].values[i] + zeros[1]);
  }
  // The difference of two runs spreads by the root of two more than one run.
  return { channel: { values, valid }, spread: differences.length >= 100 ? (NORMAL_MAD * medianAbsoluteDeviation(Float64Array.from(differences))) / Math.SQRT2 : null };
}

function middleOf(values: number[]): number {
  if (values.length === 1) return values[0];
  if (values.length === 2) return (values[0] + values[1]) / 2;
  values.sort((a, b) => a - b);
  const half = values.length >> 1;
  return values.length % 2 === 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

/** Median difference of two channels where both are valid, from at most some thousands of places. */
function zeroAgainst(channel: Channel, reference: Channel): number {
  if (channel === reference) return 0;
  const stride = Math.max(1, Math.floor(channel.values.length / 20_000));
  const differences: number[] = [];
  for (let i = 0; i < channel.values.length; i += stride) if (channel.valid[i] === 1 && reference.valid[i] === 1) differences.push(channel.values[i] - reference.values[i]);
  differences.sort((a, b) => a - b);
  return differences.length === 0 ? 0 : differences[differences.length >> 1];
}
