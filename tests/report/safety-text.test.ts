import { beforeAll, describe, expect, it } from 'vitest';
import { cautionsFor } from '../../analysis/assessment/cautions.ts';
import { buildReport } from '../../analysis/report/build-report.ts';
import type { Block } from '../../analysis/report/document.ts';
import { renderReport } from '../../main/report/html.ts';
import { surveyOf } from '../criteria/rope-for-tests.ts';
import { analysisOf } from '../section/analysis-of.ts';

/**
 * What every report must carry: contents after ASTM E1571 clause 9 [M] and common practice [C]; that magnetic testing is a
 * supplement, measures no strength and does not see terminations [P].
 */
let html = '';
let blocks: readonly Block[] = [];
beforeAll(async () => {
  const made = await analysisOf({ surveys: [2024, 2025].map((year) => surveyOf({ id: `y${year}`, date: `${year}-06-01`, blind: [[0, 1], [98, 100]], loss: () => 1 })), length: 100 });
  const assessment = {
    ...made.assessment, synthetic: true, cautions: cautionsFor({ ...made.record, rope: { ...made.record.rope, name: 'SYNTHETIC' } }, []), not_inspected: [{ from_m: 98, to_m: 100, last_seen: null }],
    life: [{ rule_set: 's', clause: 'c', from_m: 1, to_m: 2, model: 'linear', basis: 'trips' as const, inspections_used: 2, date_low: '2026-01-01', date_median: '2027-01-01', date_high: null, trips_low: 1000, trips_median: 2000, trips_high: null, not_before: null, reason: 'r', series: [], limit: 6, unit: '%' }],
  };
  const report = buildReport({ ...made, assessment });
  blocks = report.blocks;
  html = renderReport(report);
});
const rowsOf = (caption: RegExp) => blocks.flatMap((block) => (block.kind === 'table' && caption.test(block.caption) ? [block] : []))[0];

describe('the next inspection', () => {
  const said = async (by: string | null) => {
    const made = await analysisOf({ surveys: [surveyOf({ id: 'y', date: '2025-06-01' })], length: 100 });
    const facts = buildReport({ ...made, assessment: { ...made.assessment, summary: { ...made.assessment.summary, next_inspection_by: by } } }).blocks.find((block) => block.kind === 'facts')!;
    return facts.kind === 'facts' ? facts.rows[0].value : '';
  };
  it('is a date, or before further use, or cannot be said', async () => {
    expect(await said('2026-01-15')).toBe('2026-01-15');
    expect(await said('2025-06-01')).toBe('before further use');
    expect(await said(null)).toBe('cannot be said');
  });
});

describe('every report', () => {
  it.each([
    ['is advice, not a substitute for inspection or decision', /replaces neither the visual nor the internal inspection/],
    ['measures no strength', /No strength was measured.+not a percentage of strength/],
    ['says that what was not inspected may hold any damage', /may hold any damage; no indication there is no evidence of soundness/],
    ['says what gives no signal', /Closed breaks, cracks without corrosion and embrittled wires/],
    ['asks for the rule text to be confirmed', /must be confirmed before anyone relies on them/],
    ['puts judgement and rate above a forecast', /rate of increase counts.+whatever a forecast says/],
    ['voids forecasts after extraordinary events', /void after any extraordinary event/],
    ['keeps the rope out of service while a criterion is reached', /keep the rope out of service/],
    ['marks synthetic data', /SYNTHETIC DATA/],
    ['is no certified safety system', /not a certified safety system/],
    ['asks for the calibration', /Calibration of the instrument/],
    ['leaves the decision to a competent person who signs', /decision belongs to a competent person.+Signature/s],
  ])('%s', (_, words) => expect(html).toMatch(words));

  it('lists the lengths that were never inspected', () => {
    expect(rowsOf(/last seen/).rows).toEqual([[expect.stringMatching(/^98\.00.–.100\.00$/), '2.00', 'NEVER INSPECTED']]);
  });
  it('gives window, comparator, provenance and edition of every criterion', () => {
    const judged = rowsOf(/^Every criterion/);
    expect(judged.columns.map((column) => column.title)).toEqual(['Rule set, clause', 'Window [m]', 'Rope position [m]', 'Value', 'Limit', 'Share of limit', 'Verdict', 'Limit is']);
    const row = judged.rows.find((each) => each[0] === 'ropeway-area-italy-2016, area-500d')!;
    expect(row[1]).toBe('15.00');
    expect(row[4]).toMatch(/^>= 25/);
    expect(judged.below).toHaveLength(judged.rows.length);
    expect(judged.below![judged.rows.indexOf(row)]).toMatch(/25 %/);
    expect(rowsOf(/^Rule sets applied/).rows.every((each) => each[1] !== '')).toBe(true);
  });
  it('gives the uncertainty of alignment of every inspection', () => expect(rowsOf(/claimed 95 % bound/).rows).toHaveLength(2));
  it('gives a forecast in dates and trips, and says what is refused', () => {
    expect(rowsOf(/^When a criterion/).rows[0].slice(2, 5)).toEqual(['2026-01-01, 1000 trips', '2027-01-01, 2000 trips', 'refused']);
  });
});
