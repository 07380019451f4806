import { alignInspections } from './alignment/align-inspections.ts';
import { cautionsFor } from './assessment/cautions.ts';
import { combineInspections } from './assessment/combine-inspections.ts';
import { readFolder } from './assessment/read-folder.ts';
import type { RopeFolder } from './assessment/read-folder.ts';
import { placePhotos } from './assessment/place-photos.ts';
import { settleSigns } from './assessment/settle-signs.ts';
import { surveyInspections } from './assessment/survey-inspections.ts';
import { withVisualInspections } from './assessment/visual-inspections.ts';
import { writeAssessment } from './assessment/write-assessment.ts';
import type { Assessment } from './assessment/schema.ts';
import { chooseRuleSets } from './criteria/choose-rule-sets.ts';
import type { CriteriaOutcome, Evidence } from './criteria/criterion.ts';
import { ownRuleSets } from './criteria/own-rule-sets.ts';
import { evaluateCriteria } from './criteria/evaluate-criteria.ts';
import type { RuleSet } from './criteria/rule-set.ts';
import { comparableSurveys } from './growth/comparable-surveys.ts';
import { judgeGrowth } from './growth/judge-growth.ts';
import { onOneScale } from './growth/one-scale.ts';
import type { Place } from './growth/place.ts';
import { neverInspected } from './intake/coverage.ts';
import { forecastLife } from './life/forecast-life.ts';
import type { LifeOutcome } from './life/forecast.ts';
import { intervalShare } from './life/interval-share.ts';
import { summarise } from './life/summarise.ts';
import type { Checkpoint } from './rope/checkpoint.ts';
import { completeGeometry } from './rope/complete-geometry.ts';
import type { RopeGeometry } from './rope/geometry.ts';
import type { CreateHasher } from './rope/hasher.ts';
import type { JournalEntry } from './rope/journal.ts';
import type { RopeRecord } from './rope/record.ts';
import type { Survey } from './rope/survey.ts';
import { cutOffs, goneLengths, stillThere, withoutLengths } from './rope/cut-off.ts';
import { ropeExtent } from './rope/rope-extent.ts';
import { newestOf, tiePointsOf } from './rope/journal.ts';
import { stageOf } from './rope/checkpoint.ts';

export type { RopeFolder } from './assessment/read-folder.ts';

export interface AssessOptions {
  /** ISO date and time that the assessment carries; the judgement is made as of the newest inspection. */
  readonly generated: string;
  readonly product: string;
  readonly createHash: CreateHasher;
  readonly checkpoint: Checkpoint;
  readonly journal: readonly JournalEntry[];
}

/** Everything found about one rope: the parts the app draws, and the assessment that leaves the program. */
export interface Analysis {
  readonly record: RopeRecord;
  readonly geometry: RopeGeometry;
  readonly surveys: readonly Survey[];
  readonly places: readonly Place[];
  /** What the criteria were judged from: also inspections by eye alone. */
  readonly evidence: Evidence;
  /** The rule sets that were applied, a user's own among them. */
  readonly sets: readonly RuleSet[];
  readonly criteria: CriteriaOutcome;
  readonly life: LifeOutcome;
  readonly assessment: Assessment;
}

/**
 * The main job, in the order in which a specialist would do it by hand: read, judge quality, align, find, compare,
 * hold against criteria, look ahead, sum up. Throws UnusableInput with every problem found, Cancelled when stopped.
 */
export async function assess(folder: RopeFolder, options: AssessOptions): Promise<Analysis> {
  const { checkpoint, journal } = options;
  const intake = await readFolder(folder, options, stageOf(checkpoint, 'Reading', 0, 0.35));
  const { record, recordSha256, inspections } = intake;
  const geometry = completeGeometry(record.rope);

  const combined = await combineInspections(inspections, stageOf(checkpoint, 'Combining runs', 0.35, 0.4));
  const extent = ropeExtent(record);
  const maps = await alignInspections(
    combined.map((each) => ({ ...each.alignmentInput, tiePoints: tiePointsOf(journal, each.id).map((t) => ({ measured: t.measured_m, rope: t.rope_m })) })),
    { ...extent, landmarks: record.landmarks, events: record.events, checkpoint: stageOf(checkpoint, 'Aligning', 0.4, 0.6) },
  );
  const surveys = await surveyInspections(settleSigns(combined, maps), maps, { record, geometry, extent, parameters: newestOf(journal, 'parameters')?.values }, stageOf(checkpoint, 'Finding faults and zones', 0.6, 0.8));
  const asOf = surveys.length > 0 ? surveys[surveys.length - 1].date : options.generated;
  const cut = surveys.length > 0 ? cutOffs(record.events, extent, surveys[0].date, asOf) : [];
  const gone = surveys.length > 0 ? goneLengths(cut, surveys[surveys.length - 1].covered) : [];
  const places = await judgeGrowth(surveys, { diameterMm: geometry.diameterMm, loopLength: extent.loopLength, cutOffs: cut }, stageOf(checkpoint, 'Comparing inspections', 0.8, 0.85));

  const evidence: Evidence = { geometry, application: record.rope.application ?? '', ...extent, installed: record.rope.installed ?? null, surveys, places, landmarks: record.landmarks, events: record.events, cutOffs: cut };
  const { sets, reasons } = chooseRuleSets(evidence.application, geometry, newestOf(journal, 'rule-choice')?.rules ?? record.rules, ownRuleSets(journal));
  const seen = { ...evidence, surveys: withVisualInspections(surveys, inspections, extent) };
  const evaluated = await evaluateCriteria(seen, sets, stageOf(checkpoint, 'Evaluating criteria', 0.85, 0.92));
  const criteria: CriteriaOutcome = { ruleSets: reasons, ...evaluated };

  // Inspections that cannot be told place from place make no series. What was cut off wears no further, and is neither inspected nor uninspected rope.
  const comparable = { ...evidence, surveys: onOneScale(comparableSurveys(surveys)).map((survey) => withoutLengths(survey, gone)) };
  const life = await forecastLife(comparable, criteria, { sets, asOf, intervalFactor: intervalShare(newestOf(journal, 'parameters')?.values), seed: 20260101, checkpoint: stageOf(checkpoint, 'Forecasting', 0.92, 0.99) });
  const notInspected = stillThere(neverInspected(surveys, extent), gone);
  const summary = summarise(evidence, criteria, life, notInspected);
  const photos = placePhotos(intake.photos, { combined, maps, extent, journal });
  const assessment = writeAssessment({ ...intake, photos, recordSha256, geometry, extent, surveys, places, criteria, life, notInspected, summary, cautions: cautionsFor(record, inspections), options });
  await checkpoint('Done', 1);
  return { record, geometry, surveys, places, evidence: seen, sets, criteria, life, assessment };
}
