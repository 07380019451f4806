import { intervalsOnFile, intervalsOnRope } from '../alignment/measured-intervals.ts';
import { resampleOnRope, ropeAxis } from '../alignment/resample-on-rope.ts';
import type { RopeMap } from '../alignment/rope-map.ts';
import { toMeasured, toRope, uncertaintyAt } from '../alignment/rope-map.ts';
import { assessCondition } from '../condition/assess-condition.ts';
import type { Condition, Profile } from '../condition/condition.ts';
import { conditionOnRope } from '../condition/condition-on-rope.ts';
import { blindLengths, knownFeatures } from '../intake/blind-lengths.ts';
import type { VisualNote } from '../intake/visual-note.ts';
import type { Checkpoint } from '../rope/checkpoint.ts';
import type { QualityFinding } from '../rope/finding.ts';
import type { RopeGeometry } from '../rope/geometry.ts';
import { complementOf, intersectionOf } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import type { RopeRecord } from '../rope/record.ts';
import type { RopeExtent } from '../rope/rope-extent.ts';
import type { Survey } from '../rope/survey.ts';
import type { Trace } from '../rope/trace.ts';
import { ropePosition } from '../rope/units.ts';
import type { RopePosition } from '../rope/units.ts';
import type { CombinedInspection } from './combine-inspections.ts';

interface SurveyContext {
  readonly record: RopeRecord;
  readonly geometry: RopeGeometry;
  readonly extent: RopeExtent;
  readonly parameters: Readonly<Record<string, number>> | undefined;
}

/** Faults and zones are found in each file's own frame, where no resampling has touched the noise, and then placed on the rope. */
export async function surveyInspections(combined: readonly CombinedInspection[], maps: readonly RopeMap[], context: SurveyContext, checkpoint: Checkpoint): Promise<Survey[]> {
  if (combined.length === 0) return [];
  const axis = ropeAxis(combined.map((each) => each.trace), maps, context.extent.ropeLength, context.extent.loopLength);
  const blind = blindLengths(context.record.landmarks, context.extent.ropeLength, context.extent.loopLength !== null).map((each) => each.where);
  const surveys: Survey[] = [];
  for (const [index, each] of combined.entries()) {
    const map = maps[index];
    const condition = await conditionOf(each, map, blind, context, (stage, share) => checkpoint(`${each.id} ${stage}`.trim(), (index + share) / combined.length));
    const counted: Trace<'measured'> = condition.lossFromBaseline ? { ...each.trace, loss: condition.lossFromBaseline } : each.trace;
    const covered = intersectionOf(intervalsOnRope(each.covered, map), complementOf(blind, wholeRope(axis)));
    surveys.push({
      id: each.id, date: each.date, trips: each.trips, runs: each.runs, map, measured: each.trace,
      rope: masked(resampleOnRope(counted, map, axis), covered), covered,
      condition: conditionOnRope(condition, map),
      quality: [...each.quality.flatMap((finding) => placeFinding(finding, map)), ...remarksOf(each, map, axis)],
      repeatability: each.repeatability, mapUncertainty: mapUncertainty(map), notes: each.notes,
    });
  }
  return surveys;
}

async function conditionOf(each: CombinedInspection, map: RopeMap, blind: readonly Interval<'rope'>[], context: SurveyContext, checkpoint: Checkpoint): Promise<Condition<'measured'>> {
  const { geometry, record } = context;
  return assessCondition(each.trace, {
    known: intervalsOnFile(knownFeatures(record.landmarks), map),
    blind: intervalsOnFile(blind, map),
    nominalStrandSpacing: geometry.layLengthMm !== null && geometry.strands !== null ? geometry.layLengthMm / geometry.strands / 1000 : null,
    outerWireSharePercent: geometry.outerWireSharePercent, outerWireDiameterMm: geometry.outerWireDiameterMm,
    knownWireCalibration: null,
    visualBreaks: each.notes.filter(isBreakCount).map((note) => ({ position: toMeasured(map, ropePosition((note.from + note.to) / 2)), count: note.value ?? 1 })),
    parameters: context.parameters, seed: 1, checkpoint,
  });
}

function isBreakCount(note: VisualNote): boolean {
  return note.kind.startsWith('broken-wires') && (note.value ?? 1) > 0;
}

function wholeRope(axis: { start: number; step: number; length: number }): Interval<'rope'> {
  return { from: ropePosition(axis.start - axis.step), to: ropePosition(axis.start + axis.step * axis.length) };
}

/** Blind lengths are not judged, whatever the head recorded there. */
function masked(trace: Trace<'rope'>, covered: readonly Interval<'rope'>[]): Trace<'rope'> {
  const seen = new Uint8Array(trace.length);
  for (const { from, to } of covered) {
    const first = Math.max(0, Math.ceil((from - trace.start) / trace.step - 1e-9));
    const end = Math.min(trace.length, Math.ceil((to - trace.start) / trace.step - 1e-9));
    seen.fill(1, first, Math.max(first, end));
  }
  const both = (valid: Uint8Array) => valid.map((value, i) => value & seen[i]);
  return {
    ...trace,
    loss: trace.loss && { ...trace.loss, valid: both(trace.loss.valid) },
    fault: trace.fault && { ...trace.fault, valid: both(trace.fault.valid) },
  };
}

function placeFinding(finding: QualityFinding<'measured'>, map: RopeMap): QualityFinding<'rope'>[] {
  const pieces = intervalsOnRope([finding.where], map);
  if (pieces.length > 0) return pieces.map((where) => ({ ...finding, where }));
  const at = toRope(map, finding.where.from);
  return [{ ...finding, where: { from: at, to: at } }];
}

/** What combining and aligning had to say, as findings over the whole inspection. */
function remarksOf(each: CombinedInspection, map: RopeMap, axis: { start: number; step: number; length: number }): QualityFinding<'rope'>[] {
  const where = wholeRope(axis);
  return [
    ...each.remarks.map((message) => ({ code: 'runs-combined', level: 'info' as const, message, where })),
    ...map.remarks.map((message) => ({ code: 'alignment', level: 'warning' as const, message, where })),
  ];
}

function mapUncertainty(map: RopeMap): Profile<'rope'> {
  const points = map.uncertainty.map((point) => ({ at: toRope(map, point.measured), value: uncertaintyAt(map, point.measured) }));
  points.sort((a, b) => a.at - b.at);
  return { positions: points.map((p) => p.at as RopePosition), values: points.map((p) => p.value) };
}
