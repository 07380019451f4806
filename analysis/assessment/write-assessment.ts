import { describeUnderstanding } from '../intake/describe-understanding.ts';
import type { CriteriaOutcome } from '../criteria/criterion.ts';
import type { Place } from '../growth/place.ts';
import type { LifeOutcome } from '../life/forecast.ts';
import type { RopeGeometry } from '../rope/geometry.ts';
import type { Interval } from '../rope/interval.ts';
import type { RopeExtent } from '../rope/rope-extent.ts';
import type { Survey } from '../rope/survey.ts';
import { isSynthetic } from './cautions.ts';
import type { PlacedPhoto } from './place-photos.ts';
import type { FolderIntake, InspectionIntake } from './read-folder.ts';
import type { Assessment } from './schema.ts';
import { writeInspection, writeUnusedInspection } from './write-inspection.ts';

export interface AssessmentParts extends Omit<FolderIntake, 'photos'> {
  readonly geometry: RopeGeometry;
  readonly extent: RopeExtent;
  readonly surveys: readonly Survey[];
  readonly places: readonly Place[];
  readonly photos: readonly PlacedPhoto[];
  readonly criteria: CriteriaOutcome;
  readonly life: LifeOutcome;
  readonly notInspected: readonly { readonly where: Interval<'rope'>; readonly lastSeen: string | null }[];
  readonly summary: Assessment['summary'];
  readonly cautions: readonly string[];
  readonly options: { readonly generated: string; readonly product: string };
}

/** Turns what was found into the published output. Only names and units change here; nothing is computed. */
export function writeAssessment(parts: AssessmentParts): Assessment {
  const { record, geometry, extent, options } = parts;
  return {
    schema: 1, generated: options.generated, product: options.product, record_sha256: parts.recordSha256, synthetic: isSynthetic(record),
    rope: { id: record.rope.id, name: record.rope.name ?? record.rope.id, length_m: extent.ropeLength, loop: extent.loopLength !== null, geometry: [...geometry.sources] },
    files: filesOf(parts),
    cautions: [...parts.cautions],
    rule_sets: parts.criteria.ruleSets.map((each) => ({ ...each })),
    inspections: parts.inspections.map((each) => inspectionOf(each, parts.surveys)),
    not_inspected: parts.notInspected.map((each) => ({ ...span(each.where), last_seen: each.lastSeen })),
    growth: parts.places.map(writePlace),
    criteria: parts.criteria.results.map(writeCriterion),
    criteria_not_evaluated: parts.criteria.notEvaluated.map((each) => ({ rule_set: each.ruleSet, clause: each.clause, needs: each.needs })),
    life: parts.life.forecasts.map(writeForecast),
    notes: parts.inspections.flatMap((each) => each.notes.map((note) => ({
      id: note.id, inspection: note.inspection, from_m: note.from, to_m: note.to, kind: note.kind === 'other' ? note.kindAsWritten : note.kind,
      value: note.value, unit: note.unit, severity: note.severity, photo: note.photo, remark: note.remark,
    }))),
    photos: parts.photos.map((each) => ({ file: each.file, inspection: each.inspection, position_m: each.position, within_m: each.within, by: each.by, reason: each.reason, taken: each.taken, is_image: each.kind !== null })),
    summary: parts.summary,
  };
}

function span(where: Interval<'rope'>): { from_m: number; to_m: number } {
  return { from_m: where.from, to_m: where.to };
}

function filesOf(parts: AssessmentParts): Assessment['files'] {
  const runs = parts.inspections.flatMap((each) => each.runs).map((run) => ({ file: run.file, sha256: run.sha256, rows: run.rows, rows_rejected: run.rowsRejected, understood: describeUnderstanding(run) }));
  return [...runs, ...parts.otherFiles.map((each) => ({ file: each.file, sha256: each.sha256, rows: each.rows, rows_rejected: each.rowsRejected, understood: [`${each.rows} visual notes`] }))];
}

function inspectionOf(intake: InspectionIntake, surveys: readonly Survey[]): Assessment['inspections'][number] {
  const survey = surveys.find((each) => each.id === intake.record.id);
  return survey ? writeInspection(survey) : writeUnusedInspection(intake);
}

export function writePlace(place: Place): Assessment['growth'][number] {
  return {
    id: place.id, subject: place.subject, ...span(place.where), state: place.state,
    rate_per_year: place.ratePerYear, rate_low: place.rateLow, rate_high: place.rateHigh, p_value: place.pValue,
    rate_per_thousand_trips: place.tripRate?.perThousand ?? null, trip_rate_low: place.tripRate?.low ?? null, trip_rate_high: place.tripRate?.high ?? null,
    members: place.members.map((member) => ({ ...member })), reason: place.reason, series: place.series.map((point) => ({ ...point })),
  };
}

export function writeCriterion(result: CriteriaOutcome['results'][number]): Assessment['criteria'][number] {
  return {
    rule_set: result.ruleSet, clause: result.clause, provenance: result.provenance, measure: result.measure, window_m: result.window,
    inspection: result.inspection, ...span(result.where), value: result.value, value_uncertainty: result.valueUncertainty, limit: result.limit,
    comparator: result.comparator, unit: result.unit, utilisation: result.utilisation, reached: result.reached, verdict: result.verdict,
    sentence: result.sentence, note: result.note, consequence: result.consequence ?? 'discard',
  };
}

function writeForecast(forecast: LifeOutcome['forecasts'][number]): Assessment['life'][number] {
  const { date, trips } = forecast;
  return {
    rule_set: forecast.ruleSet, clause: forecast.clause, ...span(forecast.where), model: forecast.model, basis: forecast.basis,
    inspections_used: forecast.inspectionsUsed, date_low: date.low, date_median: date.median, date_high: date.high,
    trips_low: trips.low, trips_median: trips.median, trips_high: trips.high, not_before: forecast.notBefore, reason: forecast.reason,
    series: forecast.series.map((point) => ({ ...point })), limit: forecast.limit, unit: forecast.unit,
  };
}
