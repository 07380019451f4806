import { describe, expect, it } from 'vitest';
import { chooseRuleSets } from '../../analysis/criteria/choose-rule-sets.ts';
import { evaluateCriteria, findClause, measureOver } from '../../analysis/criteria/evaluate-criteria.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { ropePosition } from '../../analysis/rope/units.ts';
import { evidenceOf, surveyOf } from './rope-for-tests.ts';

// d 20 mm, area 100 mm2: an outer wire of 6x7 has d/9 = 2.222 mm and 3.878 mm2, that is 3.878 % of the area.
const rope = { diameter_mm: 20, construction: '6x7-FC', application: 'funicular haul rope', metallic_area_mm2: 100, length_m: 100 };
const WIRE = (Math.PI * (20 / 9) ** 2) / 4;

async function areas(evidence: ReturnType<typeof evidenceOf>) {
  const { sets } = chooseRuleSets(evidence.application, evidence.geometry, undefined, []);
  const outcome = await evaluateCriteria(evidence, sets, noCheckpoint);
  const by = (clause: string) => outcome.results.find((each) => each.ruleSet === 'ropeway-area-italy-2016' && each.clause === clause)!;
  return { outcome, sets, by };
}

describe('area reduction', () => {
  it('takes the mean loss of the worst window and names its place', async () => {
    // 8 % from 40 to 41 m: whole in 6 d (0.12 m) and 30 d (0.6 m), 1 m of 10 m in 500 d.
    const survey = surveyOf({ loss: (x) => (x >= 40 && x < 41 ? 8 : 0) });
    const { by } = await areas(evidenceOf(rope, [survey]));
    expect(by('area-6d').value).toBeCloseTo(8, 9);
    expect(by('area-6d').window).toBeCloseTo(0.12, 12);
    expect(by('area-6d').reached).toBe(true);
    expect(by('area-30d').value).toBeCloseTo(8, 9);
    expect(by('area-30d').reached).toBe(false);
    expect(by('area-500d').value).toBeCloseTo(0.8, 9);
    expect(by('area-500d').where.from).toBeLessThanOrEqual(40);
    expect(by('area-500d').where.to).toBeGreaterThanOrEqual(41 - 1e-9);
  });

  it('adds broken wires to distributed loss, once', async () => {
    const survey = surveyOf({ loss: (x) => (x >= 40 && x < 45 ? 3 : 0), faults: [{ at: 42 }], notes: [{ kind: 'broken-wires', from: 42.02, value: 1 }] });
    const { by } = await areas(evidenceOf(rope, [survey]));
    expect(by('area-30d').value).toBeCloseTo(3 + WIRE, 6);
  });

  it('does not add broken wires to the short dip of LMA that they are', async () => {
    const zone = { where: { from: ropePosition(41.85), to: ropePosition(42.15) }, peakLossPercent: 3, meanLossPercent: 3 };
    const survey = surveyOf({ loss: (x) => (x >= 41.85 && x < 42.15 ? 3 : 0), faults: [{ at: 42 }], zones: [zone] });
    const { by } = await areas(evidenceOf(rope, [survey]));
    expect(by('area-6d').value).toBeCloseTo(WIRE, 6);
    const deeper = surveyOf({ loss: (x) => (x >= 41.85 && x < 42.15 ? 9 : 0), faults: [{ at: 42 }], zones: [{ ...zone, peakLossPercent: 9 }] });
    expect((await areas(evidenceOf(rope, [deeper]))).by('area-6d').value).toBeCloseTo(9, 6);
  });

  it('counts several breaks of one named wire once', async () => {
    const notes = [{ kind: 'broken-wires' as const, from: 42, value: 1, remark: 'strand 2 wire 5' }, { kind: 'broken-wires' as const, from: 42.08, value: 1, remark: 'strand 2 wire 5' }];
    const { by } = await areas(evidenceOf(rope, [surveyOf({ notes })]));
    expect(by('area-6d').value).toBeCloseTo(WIRE, 6);
    const apart = notes.map((note, i) => ({ ...note, remark: `strand 2 wire ${i + 1}` }));
    expect((await areas(evidenceOf(rope, [surveyOf({ notes: apart })]))).by('area-6d').value).toBeCloseTo(2 * WIRE, 6);
  });

  it('never takes what was not inspected for sound, nor its numbers for loss', async () => {
    const survey = surveyOf({ loss: () => 1, blind: [[0, 1], [50, 60]] });
    const { by, outcome } = await areas(evidenceOf(rope, [survey]));
    expect(by('area-6d').value).toBeCloseTo(1, 9);
    expect(by('area-6d').note).toContain('11.00 m of 100.00 m were NOT INSPECTED');
    const strip = outcome.strips.find((each) => each.clause === 'area-6d')!;
    for (const [i, x] of strip.positions.entries()) {
      if ((x > 0.1 && x < 0.9) || (x > 50.1 && x < 59.9)) expect(strip.values[i]).toBeNull();
      else if ((x > 1.2 && x < 49.8) || (x > 60.2 && x < 99.8)) expect(strip.values[i]).toBeCloseTo(1 / 6, 6);
    }
  });

  it('draws nothing over a blind length that is short against the window', async () => {
    const { outcome } = await areas(evidenceOf(rope, [surveyOf({ loss: () => 1, blind: [[0, 2], [50, 51], [98, 100]] })]));
    const strip = outcome.strips.find((each) => each.clause === 'area-500d')!;
    for (const [i, x] of strip.positions.entries()) {
      if (x < 1.9 || (x > 50.1 && x < 50.9) || x > 98.1) expect(strip.values[i]).toBeNull();
      else if ((x > 2.1 && x < 49.9) || (x > 51.1 && x < 97.9)) expect(strip.values[i]).toBeCloseTo(1 / 25, 6);
    }
  });

  it('has no value where nothing was inspected', async () => {
    const { outcome } = await areas(evidenceOf(rope, [surveyOf({ blind: [[0, 100]] })]));
    expect(outcome.results.filter((each) => each.measure === 'area-reduction')).toEqual([]);
    expect(outcome.notEvaluated.filter((each) => each.clause.startsWith('area-')).length).toBeGreaterThan(2);
  });

  it('runs over the seam of an endless rope', async () => {
    const survey = surveyOf({ loss: (x) => (x < 0.3 || x >= 99.7 ? 11 : 0) });
    const { by, outcome } = await areas(evidenceOf({ ...rope, loop: true }, [survey]));
    expect(by('area-30d').value).toBeCloseTo(11, 6);
    // Half of the window still lies in the loss at 0.3 m on either side of the seam, and none of it from 0.6 m on.
    const strip = outcome.strips.find((each) => each.clause === 'area-30d')!;
    expect(strip.positions).toHaveLength(strip.values.length);
    for (const [i, x] of strip.positions.entries()) {
      const apart = Math.min(x, 100 - x);
      if (apart < 0.05) expect(strip.values[i]).toBeGreaterThan(1.0);
      if (apart > 0.7) expect(strip.values[i]).toBe(0);
    }
  });

  it('measures a fixed length at any inspection, and refuses one that was mostly not seen', () => {
    const survey = surveyOf({ loss: (x) => (x >= 40 && x < 41 ? 8 : 0), blind: [[70, 80]] });
    const evidence = evidenceOf(rope, [survey]);
    const { sets } = chooseRuleSets(evidence.application, evidence.geometry, undefined, []);
    const clause = findClause(sets, 'ropeway-area-italy-2016', 'area-30d')!;
    expect(measureOver(clause, evidence, survey, { from: ropePosition(40.5), to: ropePosition(41.5) })!.value).toBeCloseTo(4, 9);
    expect(measureOver(clause, evidence, survey, { from: ropePosition(72), to: ropePosition(73) })).toBeNull();
    expect(findClause(sets, 'ropeway-area-italy-2016', 'no such clause')).toBeNull();
  });
});
