import type { Condition } from '../condition/condition.ts';
import type { RopeExtent } from '../rope/rope-extent.ts';
import type { Survey } from '../rope/survey.ts';
import type { Trace } from '../rope/trace.ts';
import { measuredPosition, ropePosition } from '../rope/units.ts';
import type { InspectionIntake } from './read-folder.ts';

/**
 * Adds inspections that brought visual notes and no usable scan, so that what was seen by eye is held against the criteria.
 * They cover no length magnetically: nothing they did not note is judged by them. Oldest first.
 */
export function withVisualInspections(surveys: readonly Survey[], inspections: readonly InspectionIntake[], extent: RopeExtent): Survey[] {
  const axis = surveys[0]?.rope ?? { start: ropePosition(0), step: 0.1, length: Math.max(1, Math.ceil((extent.ropeLength ?? 1) / 0.1)) };
  const visual = inspections.filter((each) => each.notes.length > 0 && !surveys.some((survey) => survey.id === each.record.id)).map((each) => visualSurvey(each, axis, extent));
  return [...surveys, ...visual].sort((a, b) => Date.parse(a.date) - Date.parse(b.date));
}

function visualSurvey(intake: InspectionIntake, axis: Pick<Trace<'rope'>, 'start' | 'step' | 'length'>, extent: RopeExtent): Survey {
  const end = axis.start + axis.step * axis.length;
  const empty = { start: axis.start, step: axis.step, length: axis.length, loss: null, fault: null, faultUnit: '', speed: null, averagingLength: 0.3 };
  return {
    id: intake.record.id, date: intake.record.date, trips: intake.record.trips ?? null, runs: intake.runs, measured: { ...empty, start: measuredPosition(axis.start) }, rope: empty,
    map: {
      knots: [axis.start, end].map((at) => ({ measured: measuredPosition(at), rope: ropePosition(at) })), reversed: false, uncertainty: [], confidence: 0, basis: 'visual inspection: positions as noted',
      loopLength: extent.loopLength, slips: [], remarks: [],
    },
    covered: [], condition: NOTHING, quality: [], repeatability: { lossPercent: null, fault: null }, mapUncertainty: { positions: [], values: [] }, notes: intake.notes,
  };
}

const NONE = { positions: [], values: [] };
const NOTHING: Condition<'rope'> = {
  faults: [], zones: [], faultNoise: NONE, smallestZoneLoss: NONE, smallestFaultAmplitude: NONE, baseline: { where: null, level: NONE, basis: 'no scan' }, lossFromBaseline: null,
  texture: NONE, noiseOfLoss: 0, strandSpacing: null, parameters: {},
};
