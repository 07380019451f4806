import type { Analysis } from '../../analysis/assess.ts';
import { cautionsFor } from '../../analysis/assessment/cautions.ts';
import { writeAssessment } from '../../analysis/assessment/write-assessment.ts';
import { chooseRuleSets } from '../../analysis/criteria/choose-rule-sets.ts';
import type { Evidence } from '../../analysis/criteria/criterion.ts';
import { evaluateCriteria } from '../../analysis/criteria/evaluate-criteria.ts';
import { judgeGrowth } from '../../analysis/growth/judge-growth.ts';
import { neverInspected } from '../../analysis/intake/coverage.ts';
import type { Run } from '../../analysis/intake/run.ts';
import { forecastLife } from '../../analysis/life/forecast-life.ts';
import { summarise } from '../../analysis/life/summarise.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { completeGeometry } from '../../analysis/rope/complete-geometry.ts';
import { ropeExtent } from '../../analysis/rope/rope-extent.ts';
import type { RopeRecord } from '../../analysis/rope/record.ts';
import { recordSchema } from '../../analysis/rope/record.ts';
import type { Survey } from '../../analysis/rope/survey.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';
import { surveyOf } from '../criteria/rope-for-tests.ts';

/** A rope of 100 m with four inspections, worked out by hand: one zone that grows, one that does not, one fault from the third year on. */
export const RECORD: RopeRecord = recordSchema.parse({
  schema: 1, synthetic: true,
  rope: { id: 'SYN-1', name: 'Test incline haul rope', application: 'funicular haul rope', construction: '6x19S-FC', core: 'fibre', lay: 'ordinary', diameter_mm: 32, length_m: 100, grade_mpa: 1770, installed: '2018-05-01' },
  landmarks: [{ name: 'Socket A', kind: 'socket', position_m: 0 }, { name: 'Drive sheave', kind: 'sheave', from_m: 60, to_m: 66 }, { name: 'Socket B', kind: 'socket', position_m: 100 }],
  events: [{ date: '2022-02-01', kind: 'lubricated' }],
  inspections: [2022, 2023, 2024, 2025].map((year) => ({ id: `y${year}`, date: `${year}-05-10`, trips: (year - 2018) * 10_000, runs: [{ file: `scans/${year}.csv` }], photos: 'photos' })),
});

const noise = (i: number) => (((Math.sin(i * 12.9898) * 43758.5453) % 1) + 1) % 1 - 0.5;

function survey(index: number): Survey {
  const { id, date, trips } = RECORD.inspections[index];
  const zone = (from: number, to: number, mean: number, kind: 'corrosion' | 'wear', n: number) => ({ id: `${id}-z${n}`, where: { from, to } as never, edgeUncertainty: 0.1, kind, meanLossPercent: mean, peakLossPercent: mean * 1.3, textureRatio: 1.6, uncertaintyPercent: 0.2, lossRangePercent: null });
  const grown = 1 + 1.1 * index;
  const made = surveyOf({
    id, date, length: 100, step: 0.01, blind: index === 3 ? [[0, 0.6], [40, 44], [99.4, 100]] : [[0, 0.6], [99.4, 100]],
    loss: (at) => 0.12 * noise(Math.round(at * 100) + 7919 * index) + (at > 20 && at < 25 ? grown * Math.sin(((at - 20) / 5) * Math.PI) : 0) + (at > 60 && at < 66 ? 1.4 : 0),
    zones: [zone(20, 25, grown * 0.64, 'corrosion', 1), zone(60, 66, 1.4, 'wear', 2)],
    faults: index >= 2 ? [{ at: 80.25 }, ...(index === 3 ? [{ at: 80.9 }] : [])] : [],
    notes: index === 3 ? [{ from: 80.25, to: 80.25, kind: 'broken-wires', value: 2, unit: 'wires', photo: 'break.png', remark: 'crown breaks' }, { from: 22, to: 22, kind: 'corrosion-external', severity: 'medium', photo: 'not-a-photo.png' }] : [],
  });
  const fault = made.rope.fault!;
  const lf = fault.values.map((_, i) => 4 * noise(i + 31 * index) + (index >= 2 ? 90 * Math.exp(-(((i - 8025) / 3) ** 2)) : 0));
  const knots = [[0, 0.4], [50, 50.5], [99.4, 100]].map(([measured, rope]) => ({ measured: measuredPosition(measured), rope: rope as never }));
  return {
    ...made, trips: trips ?? null, rope: { ...made.rope, fault: { ...fault, values: lf } },
    map: { ...made.map, knots, uncertainty: [{ measured: measuredPosition(0), value: 0.02 }, { measured: measuredPosition(99), value: 0.06 }], slips: index === 2 ? [{ measured: measuredPosition(50), size: 0.2 }] : [], basis: 'the rope’s own signal' },
    mapUncertainty: { positions: [0, 100] as never, values: [0.02, 0.06] },
    runs: [runFor(RECORD.inspections[index].runs[0].file, made)],
    quality: index === 3 ? [{ code: 'dropout', level: 'warning', message: 'no signal over 4 m', where: { from: 40, to: 44 } as never }] : [],
  };
}

function runFor(file: string, { rope, covered }: Survey): Run {
  return {
    file, sha256: 'ab'.repeat(32), rows: rope.length, rowsRejected: 0, rejected: false, positionsFell: false, statedDirection: null,
    trace: rope as never, covered: covered as never, quality: [{ code: 'dropout', level: 'warning', message: 'no signal over 4 m', where: { from: 40, to: 44 } as never }],
    understanding: { encoding: 'utf-8', delimiter: ';', decimalMark: ',', headerLine: 1, preambleLines: 0, columns: [], decisions: ['fields parted by semicolon'] },
  };
}

/** The pipeline from surveys on, with the real criteria, growth and life; reading and aligning have tests of their own. */
export async function analysisForTests(): Promise<Analysis> {
  const geometry = completeGeometry(RECORD.rope);
  const extent = ropeExtent(RECORD);
  const surveys = RECORD.inspections.map((_, index) => survey(index));
  const places = await judgeGrowth(surveys, { diameterMm: geometry.diameterMm, loopLength: null }, noCheckpoint);
  const evidence: Evidence = { geometry, application: RECORD.rope.application ?? '', ...extent, installed: RECORD.rope.installed ?? null, surveys, places, landmarks: RECORD.landmarks, events: RECORD.events };
  const { sets, reasons } = chooseRuleSets(evidence.application, geometry, undefined, []);
  const criteria = { ruleSets: reasons, ...(await evaluateCriteria(evidence, sets, noCheckpoint)) };
  const life = await forecastLife(evidence, criteria, { sets, asOf: '2025-05-10', intervalFactor: 0.5, seed: 1, checkpoint: noCheckpoint });
  const notInspected = neverInspected(surveys, extent);
  const summary = summarise(evidence, criteria, life, notInspected);
  const inspections = RECORD.inspections.map((record, index) => ({ record, runs: surveys[index].runs, notes: surveys[index].notes }));
  const assessment = writeAssessment({
    record: RECORD, recordSha256: 'cd'.repeat(32), inspections, otherFiles: [], geometry, extent, surveys, places, criteria, life, notInspected, summary,
    cautions: cautionsFor(RECORD, inspections), options: { generated: '2025-06-01T08:00:00Z', product: 'Strandbook test' },
  });
  return { record: RECORD, geometry, surveys, places, evidence, criteria, life, assessment };
}
