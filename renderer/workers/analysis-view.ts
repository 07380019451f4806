import type { Analysis } from '../../analysis/assess.ts';
import type { RopeMap } from '../../analysis/alignment/rope-map.ts';
import type { Assessment } from '../../analysis/assessment/schema.ts';
import type { Fault, Profile, Zone } from '../../analysis/condition/condition.ts';
import type { CriteriaOutcome } from '../../analysis/criteria/criterion.ts';
import type { Place } from '../../analysis/growth/place.ts';
import type { Run } from '../../analysis/intake/run.ts';
import type { VisualNote } from '../../analysis/intake/visual-note.ts';
import type { LifeOutcome } from '../../analysis/life/forecast.ts';
import type { RopeGeometry } from '../../analysis/rope/geometry.ts';
import type { Interval } from '../../analysis/rope/interval.ts';
import type { RopeRecord } from '../../analysis/rope/record.ts';
import type { QualityFinding } from '../../analysis/rope/finding.ts';
import type { Channel } from '../../analysis/rope/trace.ts';
import type { Repeatability, Survey } from '../../analysis/rope/survey.ts';

/** What the page keeps of an analysis: everything but the samples, which stay in the worker. */
export interface AnalysisView {
  readonly record: RopeRecord;
  readonly geometry: RopeGeometry;
  readonly assessment: Assessment;
  readonly inspections: readonly InspectionView[]; // oldest first
  readonly runs: readonly RunView[];
  readonly places: readonly Place[];
  readonly criteria: CriteriaOutcome;
  readonly life: LifeOutcome;
  /** The rope as drawn: its length as recorded, and whatever was measured beyond it. Metres. */
  readonly extent: { readonly from: number; readonly to: number };
  readonly loopLength: number | null;
}

export interface InspectionView {
  readonly id: string;
  readonly date: string;
  readonly trips: number | null;
  readonly covered: readonly Interval<'rope'>[];
  readonly faults: readonly Fault<'rope'>[];
  readonly zones: readonly Zone<'rope'>[];
  readonly quality: readonly QualityFinding<'rope'>[];
  readonly repeatability: Repeatability;
  readonly noiseOfLoss: number; // percent
  readonly map: RopeMap;
  readonly mapUncertainty: Profile<'rope'>;
  readonly baseline: string;
  readonly notes: readonly VisualNote[];
  readonly hasLoss: boolean;
  readonly hasFault: boolean;
  readonly faultUnit: string;
  /** From the lowest to the highest LF of the whole inspection, so that a quiet length is drawn quiet. */
  readonly faultSpan: number;
  readonly averagingLength: number; // m
  readonly step: number; // m
}

export type RunView = Omit<Run, 'trace' | 'clock'> & {
  readonly inspection: string;
  /** What tells the time of day of the scan; null where nothing does, or no photo asked for it. */
  readonly clock: string | null;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly faultUnit: string;
};

export function viewOf(analysis: Analysis): AnalysisView {
  const { record, geometry, assessment, surveys, places, criteria, life } = analysis;
  const length = record.rope.length_m ?? null;
  const ends = surveys.flatMap((each) => [each.rope.start, each.rope.start + each.rope.step * (each.rope.length - 1)]);
  const loopLength = record.rope.loop === true ? length : null;
  return {
    record, geometry, assessment, places, criteria, life, loopLength,
    inspections: surveys.map(inspectionOf),
    runs: surveys.flatMap((survey) => survey.runs.map((run) => runOf(run, survey.id))),
    extent: loopLength !== null ? { from: 0, to: loopLength } : { from: Math.min(0, ...ends), to: Math.max(length ?? 0, ...ends, 1) },
  };
}

function inspectionOf(survey: Survey): InspectionView {
  const { id, date, trips, covered, condition, quality, repeatability, map, mapUncertainty, notes, rope } = survey;
  return {
    id, date, trips, covered, quality, repeatability, map, mapUncertainty, notes,
    faults: condition.faults, zones: condition.zones, noiseOfLoss: condition.noiseOfLoss, baseline: condition.baseline.basis,
    hasLoss: rope.loss !== null, hasFault: rope.fault !== null, faultUnit: rope.faultUnit, faultSpan: spanOf(rope.fault), averagingLength: rope.averagingLength, step: rope.step,
  };
}

function spanOf(channel: Channel | null): number {
  if (channel === null) return 0;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < channel.values.length; i += 1) {
    if (channel.valid[i] !== 1) continue;
    if (channel.values[i] < low) low = channel.values[i];
    if (channel.values[i] > high) high = channel.values[i];
  }
  return high > low ? high - low : 0;
}

function runOf(run: Run, inspection: string): RunView {
  const { trace, clock, ...rest } = run;
  return { ...rest, clock: clock?.basis ?? null, inspection, from: trace.start, to: trace.start + trace.step * Math.max(0, trace.length - 1), step: trace.step, faultUnit: trace.faultUnit };
}
