import type { Analysis } from '../../analysis/assess.ts';
import { writeAssessment } from '../../analysis/assessment/write-assessment.ts';
import { chooseRuleSets } from '../../analysis/criteria/choose-rule-sets.ts';
import { evaluateCriteria } from '../../analysis/criteria/evaluate-criteria.ts';
import { judgeGrowth } from '../../analysis/growth/judge-growth.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { ropeExtent } from '../../analysis/rope/rope-extent.ts';
import { recordSchema } from '../../analysis/rope/record.ts';
import type { Survey } from '../../analysis/rope/survey.ts';
import { evidenceOf } from '../criteria/rope-for-tests.ts';

interface Made {
  readonly surveys: readonly Survey[];
  readonly length: number;
  readonly loop?: boolean;
  /** Inspections on record whose scans could not be used. */
  readonly unused?: readonly { readonly id: string; readonly date: string }[];
  /** Inspections by eye alone. */
  readonly visual?: readonly Survey[];
}

/** What the pipeline would hand on for hand-made inspections: reading, aligning and forecasting have tests of their own. */
export async function analysisOf({ surveys, length, loop = false, unused = [], visual = [] }: Made): Promise<Analysis> {
  const named = [...surveys, ...visual, ...unused].sort((a, b) => Date.parse(a.date) - Date.parse(b.date));
  const record = recordSchema.parse({
    schema: 1, rope: { id: 'SYNTHETIC-S', application: 'funicular haul rope', construction: '6x19S-FC', core: 'fibre', lay: 'ordinary', diameter_mm: 30, length_m: length, loop },
    inspections: named.map(({ id, date }) => ({ id, date, runs: [{ file: `${id}.csv` }] })),
  });
  const extent = ropeExtent(record);
  const places = await judgeGrowth(surveys, { diameterMm: 30, loopLength: extent.loopLength }, noCheckpoint);
  const judged = [...surveys, ...visual].sort((a, b) => Date.parse(a.date) - Date.parse(b.date));
  const evidence = evidenceOf(record.rope, judged, { places });
  const { sets, reasons } = chooseRuleSets(evidence.application, evidence.geometry, undefined, []);
  const criteria = { ruleSets: reasons, ...(await evaluateCriteria(evidence, sets, noCheckpoint)) };
  const life = { forecasts: [], nextInspection: { by: null, reasons: [] } } as unknown as Analysis['life'];
  const assessment = writeAssessment({
    record, recordSha256: '00'.repeat(32), inspections: record.inspections.map((each) => ({ record: each, runs: [], notes: [] })), otherFiles: [], geometry: evidence.geometry, extent,
    surveys, places, photos: [], criteria, life, notInspected: [], summary: { state: 'continue', reasons: [], next_inspection_by: null, advice: '', not_inspected_m: 0 }, cautions: ['a caution'], options: { generated: '2026-01-01T00:00:00Z', product: 'test' },
  });
  return { record, geometry: evidence.geometry, surveys, places, evidence, sets, criteria, life, assessment };
}
