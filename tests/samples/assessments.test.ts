import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../analysis/assess.ts';
import { assessmentSchema } from '../../analysis/assessment/schema.ts';
import type { Assessment } from '../../analysis/assessment/schema.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import type { RopeRecord } from '../../analysis/rope/record.ts';
import { openRopeFolder } from '../../main/folder/rope-folder.ts';
import { nodeHasher } from '../../main/hasher.ts';

/** Fields that the agreed output must hold under these very names. */
const FIELDS = {
  top: ['schema', 'generated', 'product', 'record_sha256', 'files', 'cautions', 'inspections', 'growth', 'criteria', 'criteria_not_evaluated', 'life', 'summary'],
  files: ['file', 'sha256', 'rows', 'rows_rejected'],
  inspections: ['id', 'date', 'coverage', 'alignment', 'faults', 'zones', 'quality'],
  alignment: ['reversed', 'knots', 'uncertainty_m', 'confidence', 'basis'],
  faults: ['id', 'position_m', 'loss_percent', 'amplitude', 'snr', 'width_m', 'position_uncertainty_m'],
  zones: ['id', 'from_m', 'to_m', 'kind', 'mean_loss_percent', 'peak_loss_percent', 'texture_ratio', 'uncertainty_percent'],
  quality: ['code', 'level', 'message', 'from_m', 'to_m'],
  growth: ['id', 'subject', 'from_m', 'to_m', 'state', 'rate_per_year', 'rate_low', 'rate_high', 'p_value', 'members'],
  criteria: ['rule_set', 'clause', 'provenance', 'measure', 'window_m', 'inspection', 'from_m', 'to_m', 'value', 'limit', 'comparator', 'unit', 'utilisation', 'reached'],
  criteria_not_evaluated: ['rule_set', 'clause', 'needs'],
  life: ['rule_set', 'clause', 'from_m', 'to_m', 'model', 'basis', 'inspections_used', 'date_low', 'date_median', 'date_high', 'trips_low', 'trips_median', 'trips_high', 'reason'],
  summary: ['state', 'reasons', 'next_inspection_by', 'not_inspected_m'],
} as const;

const NUMBER_WITHOUT_MEANING = /NaN|Infinity|undefined|null|\[object/;
type Span = { readonly from_m: number; readonly to_m: number };

function expectFields(things: readonly object[], names: readonly string[]): void {
  for (const thing of things) expect(Object.keys(thing)).toEqual(expect.arrayContaining([...names]));
}

function expectDisjoint(spans: readonly Span[]): void {
  spans.forEach((each, i) => {
    expect(each.to_m).toBeGreaterThan(each.from_m);
    if (i > 0) expect(each.from_m).toBeGreaterThanOrEqual(spans[i - 1].to_m);
  });
}

const lengthOf = (spans: readonly Span[]): number => spans.reduce((sum, each) => sum + each.to_m - each.from_m, 0);

describe.each(['haul-rope', 'ropeway-loop', 'hoist-rope', 'parted-rope'])('the assessment of the sample %s', (name) => {
  let record: RopeRecord;
  let assessment: Assessment;
  beforeAll(async () => {
    const folder = await openRopeFolder(join(import.meta.dirname, '../../sample-signals', name));
    const analysis = await assess(folder, { generated: '2026-04-01T08:00:00Z', product: 'test', createHash: nodeHasher, journal: [], checkpoint: noCheckpoint });
    record = analysis.record;
    // What is written is JSON: whatever does not survive it is not there.
    assessment = assessmentSchema.parse(JSON.parse(JSON.stringify(analysis.assessment)));
  }, 120_000);

  it('recognises the rope in every scan', () => {
    for (const inspection of assessment.inspections) if (inspection.alignment) expect(inspection.alignment.confidence).toBeGreaterThan(0.7);
  });

  it('holds every agreed field', () => {
    expectFields([assessment], FIELDS.top);
    for (const list of ['files', 'inspections', 'growth', 'criteria', 'criteria_not_evaluated', 'life'] as const) expectFields(assessment[list], FIELDS[list]);
    expectFields([assessment.summary], FIELDS.summary);
    for (const inspection of assessment.inspections) {
      expectFields(inspection.alignment ? [inspection.alignment] : [], FIELDS.alignment);
      for (const list of ['faults', 'zones', 'quality'] as const) expectFields(inspection[list], FIELDS[list]);
    }
  });

  it('names every inspection and every file of the record, with its hash', () => {
    expect(assessment.inspections.map((each) => each.id)).toEqual(record.inspections.map((each) => each.id));
    const named = record.inspections.flatMap((each) => [...each.runs.map((run) => run.file), ...(each.notes ? [each.notes] : [])]);
    expect(assessment.files.map((each) => each.file).sort()).toEqual(named.sort());
    for (const file of assessment.files) expect(file.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(assessment.record_sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(assessment.synthetic).toBe(true);
    expect(assessment.cautions[0]).toMatch(/SYNTHETIC/);
  });

  it('has lengths that are half-open, in order and on the rope', () => {
    const length = assessment.rope.length_m!;
    for (const inspection of assessment.inspections) {
      expectDisjoint(inspection.coverage);
      for (const each of inspection.coverage) {
        expect(each.from_m).toBeGreaterThanOrEqual(-0.5);
        expect(each.to_m).toBeLessThanOrEqual(length + 0.5);
      }
      for (const zone of inspection.zones) expect(zone.to_m).toBeGreaterThan(zone.from_m);
      for (const finding of inspection.quality) expect(finding.to_m).toBeGreaterThanOrEqual(finding.from_m);
      // A fault stands in a length that was seen.
      for (const fault of inspection.faults) expect(inspection.coverage.some((each) => fault.position_m >= each.from_m && fault.position_m < each.to_m)).toBe(true);
    }
    expectDisjoint(assessment.not_inspected);
    for (const each of [...assessment.growth, ...assessment.criteria, ...assessment.life]) expect(each.to_m).toBeGreaterThanOrEqual(each.from_m);
  });

  it('counts every metre of the rope as it is now as either covered or not inspected', () => {
    const newest = assessment.inspections[assessment.inspections.length - 1];
    const cut = record.events.filter((event) => event.kind === 'shortened').reduce((sum, event) => sum + (event.length_m ?? 0), 0);
    const left = (record.rope.loop ? assessment.rope.length_m! : assessment.rope.length_m! - cut);
    expect(assessment.summary.not_inspected_m).toBeCloseTo(lengthOf(assessment.not_inspected), 6);
    expect(lengthOf(newest.coverage) + assessment.summary.not_inspected_m).toBeCloseTo(left, 1);
  });

  it('has maps that run one way, with a bound and a basis', () => {
    for (const { alignment } of assessment.inspections) {
      expect(alignment!.knots.length).toBeGreaterThanOrEqual(2);
      const rope = alignment!.knots.map((knot) => (alignment!.reversed ? -knot.rope_m : knot.rope_m));
      alignment!.knots.forEach((knot, i) => {
        if (i === 0) return;
        expect(knot.measured_m).toBeGreaterThan(alignment!.knots[i - 1].measured_m);
        expect(rope[i]).toBeGreaterThan(rope[i - 1]);
      });
      for (const bound of alignment!.uncertainty_m) expect(bound.value_m).toBeGreaterThanOrEqual(0);
      expect(alignment!.confidence).toBeGreaterThanOrEqual(0);
      expect(alignment!.confidence).toBeLessThanOrEqual(1);
      expect(alignment!.basis).not.toBe('');
    }
  });

  it('joins faults and zones of the inspections into places, each once', () => {
    const ids = assessment.growth.map((each) => each.id);
    expect(new Set(ids).size).toBe(ids.length);
    const used = new Set<string>();
    for (const place of assessment.growth) {
      expect(place.members.length).toBeGreaterThan(0);
      for (const { inspection, ref } of place.members) {
        const found = assessment.inspections.find((each) => each.id === inspection)!;
        expect((place.subject === 'fault' ? found.faults : found.zones).map((each) => each.id)).toContain(ref);
        expect(used.has(`${inspection} ${ref}`)).toBe(false);
        used.add(`${inspection} ${ref}`);
      }
      if (place.rate_per_year !== null) {
        expect(place.rate_low).toBeLessThanOrEqual(place.rate_per_year);
        expect(place.rate_high).toBeGreaterThanOrEqual(place.rate_per_year);
      }
      expect(place.reason).not.toMatch(NUMBER_WITHOUT_MEANING);
    }
    const all = assessment.inspections.reduce((sum, each) => sum + each.faults.length + each.zones.length, 0);
    expect(used.size).toBe(all);
  });

  it('evaluates every clause of every chosen set or says what it needs', () => {
    expect(assessment.rule_sets.length).toBeGreaterThan(0);
    for (const { id, reason } of assessment.rule_sets) {
      expect(reason).not.toBe('');
      for (const clause of RULE_SETS.find((set) => set.id === id)!.clauses) {
        const judged = assessment.criteria.some((each) => each.rule_set === id && each.clause === clause.id) || assessment.criteria_not_evaluated.some((each) => each.rule_set === id && each.clause === clause.id);
        if (clause.ropes === undefined) expect(judged, `${id} ${clause.id}`).toBe(true);
      }
    }
    for (const each of assessment.criteria) {
      const share = each.comparator.startsWith('>') ? each.value / each.limit : each.limit / each.value;
      expect(each.utilisation).toBeCloseTo(share, 9);
      expect(each.reached).toBe(each.verdict === 'reached');
      expect(assessment.inspections.map((inspection) => inspection.id)).toContain(each.inspection);
      expect(`${each.sentence} ${each.note}`).not.toMatch(NUMBER_WITHOUT_MEANING);
    }
    for (const each of assessment.criteria_not_evaluated) expect(each.needs).not.toBe('');
  });

  it('forecasts in order, or gives a reason', () => {
    expect(assessment.life.length).toBeGreaterThan(0);
    for (const each of assessment.life) {
      const dates = [each.date_low, each.date_median, each.date_high].filter((date) => date !== null);
      expect([...dates].sort()).toEqual(dates);
      const trips = [each.trips_low, each.trips_median, each.trips_high].filter((count) => count !== null);
      expect([...trips].sort((a, b) => a - b)).toEqual(trips);
      expect(each.reason).not.toBe('');
      expect(each.reason).not.toMatch(NUMBER_WITHOUT_MEANING);
      const newest = assessment.inspections[assessment.inspections.length - 1].date;
      if (each.model !== 'reached' && each.date_low !== null) expect(each.date_low >= newest).toBe(true);
    }
  });

  it('sums up in words, and asks for the next inspection after the newest one or says why at once', () => {
    const { state, reasons, next_inspection_by: next } = assessment.summary;
    const newest = assessment.inspections[assessment.inspections.length - 1].date;
    const discard = assessment.criteria.some((each) => each.reached && each.consequence === 'discard' && each.provenance !== 'disputed');
    expect(state === 'discard-criterion-reached').toBe(discard);
    expect(reasons.length).toBeGreaterThan(0);
    for (const reason of reasons) expect(reason).not.toMatch(NUMBER_WITHOUT_MEANING);
    if (next !== null && next > newest) expect(reasons.join('\n')).toContain(next);
    else expect(reasons.join('\n')).toMatch(/next inspection: .+ before further use|parted/);
  });
});
