import { describe, expect, it } from 'vitest';
import { chooseRuleSets } from '../../analysis/criteria/choose-rule-sets.ts';
import { evaluateCriteria, measureOver } from '../../analysis/criteria/evaluate-criteria.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { Cancelled } from '../../analysis/rope/problem.ts';
import { ropePosition } from '../../analysis/rope/units.ts';
import { judge, judgeEvidence, shippedSet } from './judge.ts';
import { evidenceOf, surveyOf } from './rope-for-tests.ts';

const crane = { diameter_mm: 20, construction: '6x36WS-IWRC', lay: 'ordinary' as const, application: 'crane hoist rope' };

describe('broken wires', () => {
  it('counts seen wires exactly and marks LF indications as such', async () => {
    const faults = [{ at: 5, low: 1, estimate: 2, high: 4 }, { at: 5.05 }];
    const { find } = await judge('iso-4309-single-layer-drum', crane, { faults });
    expect(find('broken-wires-6d')).toMatchObject({ value: 3, limit: 9, valueUncertainty: 0.75, reached: false });
    expect(find('broken-wires-6d').note).toContain('magnetic (LF) indications, not a visible count');
    const seen = await judge('iso-4309-single-layer-drum', crane, { notes: [{ kind: 'broken-wires', from: 5, value: 3 }], noLf: true });
    expect(seen.find('broken-wires-6d')).toMatchObject({ value: 3, valueUncertainty: null });
    expect(seen.find('broken-wires-6d').note).toContain('counted by eye');
  });
  it('counts a break that was seen and indicated once, within the reach of the alignment', async () => {
    const together = await judge('iso-4309-single-layer-drum', crane, { faults: [{ at: 5 }], notes: [{ kind: 'broken-wires', from: 5.06, value: 1 }] });
    expect(together.find('broken-wires-30d').value).toBe(1);
    const apart = await judge('iso-4309-single-layer-drum', crane, { faults: [{ at: 5 }], notes: [{ kind: 'broken-wires', from: 5.3, value: 1 }] });
    expect(apart.find('broken-wires-30d').value).toBe(2);
    const more = await judge('iso-4309-single-layer-drum', crane, { faults: [{ at: 5 }], notes: [{ kind: 'broken-wires', from: 5.06, value: 4 }] });
    expect(more.find('broken-wires-30d').value).toBe(4);
  });
  it('takes a count in the valley as part of the total at the same place', async () => {
    const notes = [{ kind: 'broken-wires' as const, from: 5, value: 5 }, { kind: 'broken-wires-valley' as const, from: 5, value: 2 }];
    const { find } = await judge('iso-4309-single-layer-drum', crane, { notes });
    expect(find('broken-wires-30d').value).toBe(5);
    expect(find('valley')).toMatchObject({ value: 2, reached: true });
  });
  it('finds the worst window wherever it begins, to the end of the window', async () => {
    // 6 d is 0.12 m: breaks at its two ends belong to one window, a hair farther they do not.
    const pair = (apart: number) => judge('iso-4309-single-layer-drum', crane, { notes: [5.0037, 5.0037 + apart].map((from) => ({ kind: 'broken-wires' as const, from, value: 1 })) });
    expect((await pair(0.12)).find('broken-wires-6d').value).toBe(2);
    expect((await pair(0.121)).find('broken-wires-6d').value).toBe(1);
  });
  it('says that there are none only for what was inspected', async () => {
    const { find, strips } = await judge('iso-4309-single-layer-drum', { ...crane, length_m: 30 }, { blind: [[0, 3]] });
    expect(find('broken-wires-6d')).toMatchObject({ value: 0, reached: false });
    expect(find('broken-wires-6d').where.from).toBeGreaterThanOrEqual(3);
    expect(find('broken-wires-6d').note).toContain('3.00 m of 30.00 m were NOT INSPECTED');
    const strip = strips.find((each) => each.clause === 'broken-wires-6d')!;
    expect(strip.values[strip.positions.findIndex((x) => x > 1.5)]).toBeNull();
    expect(strip.values[strip.positions.findIndex((x) => x > 15)]).toBe(0);
  });
  it('does not count what LF shows inside a blind length', async () => {
    const { find } = await judge('iso-4309-single-layer-drum', crane, { blind: [[0, 3]], faults: [{ at: 1 }, { at: 1.1 }, { at: 10 }] });
    expect(find('broken-wires-30d').value).toBe(1);
  });
  it('needs a count or an LF trace', async () => {
    const { notEvaluated } = await judge('iso-4309-single-layer-drum', crane, { noLf: true });
    expect(notEvaluated.find((each) => each.clause === 'broken-wires-6d')!.needs).toBe('a count of broken wires or an LF trace');
  });
  it('uses the lower Lang-lay limit where the lay is not stated, and says so', async () => {
    const { find } = await judge('iso-4309-single-layer-drum', { ...crane, lay: undefined }, { faults: [{ at: 5 }] });
    expect(find('broken-wires-6d').limit).toBe(4);
    expect(find('broken-wires-6d').note).toContain('lay not stated');
  });
  it('finds breaks at a termination by its landmark', async () => {
    const survey = surveyOf({ length: 30, notes: [{ kind: 'broken-wires', from: 0.1, value: 2 }, { kind: 'broken-wires', from: 15, value: 9 }] });
    const { find } = await judgeEvidence('iso-4309-single-layer-drum', evidenceOf(crane, [survey], { landmarks: [{ name: 'socket at the car', position_m: 0 }] }));
    expect(find('termination')).toMatchObject({ value: 2, reached: true, consequence: 're-terminate' });
  });
});

describe('verdict', () => {
  const rope = { diameter_mm: 20 };
  it('is reached, may be reached or not reached by the uncertainty of the value', async () => {
    const at = async (loss: number) => (await judge('ropeway-area-italy-2016', rope, { loss: () => loss, repeatability: 0.3 })).find('area-30d');
    expect(await at(10)).toMatchObject({ reached: true, verdict: 'reached' });
    expect(await at(9.8)).toMatchObject({ reached: false, verdict: 'may-be-reached' });
    expect(await at(8.5)).toMatchObject({ reached: false, verdict: 'not-reached' });
  });
  it('keeps the comparator of the rule at the limit itself', async () => {
    expect((await judge('ropeway-area-italy-2016', rope, { loss: () => 6 })).find('area-6d').reached).toBe(true);
    expect((await judge('vorarlberg-2000-haul', rope, { loss: () => 6 })).find('area-6d').reached).toBe(false);
  });
  it('is never "not reached" where only part of the loss was measured', async () => {
    const { find } = await judge('ropeway-area-italy-2016', { diameter_mm: 20, construction: '6x7-FC' }, { noLma: true, faults: [{ at: 5 }] });
    expect(find('area-6d')).toMatchObject({ reached: false, verdict: 'may-be-reached' });
    expect(find('area-6d').note).toContain('no LMA was measured');
  });
  it('says how much of the governing length was not inspected', async () => {
    const { find } = await judge('ropeway-area-italy-2016', rope, { loss: (x) => (x < 6 ? 0 : 4), blind: [[5, 6]], length: 6.3 });
    expect(find('area-30d').note).toMatch(/of this length was NOT INSPECTED/);
  });
});

describe('locked coil outer wires that LF indicates', () => {
  const rope = { diameter_mm: 40, construction: 'full-locked coil', lay_length_mm: 360, outer_wires: 24 };
  const judged = async (parts: Parameters<typeof judge>[2]) => (await judge('locked-coil-outer-wires', rope, parts)).find('adjacent-outer-wires');
  it('leave the question open within one lay, and are clear beyond it', async () => {
    expect(await judged({ faults: [{ at: 5 }, { at: 5.3 }] })).toMatchObject({ value: 0, reached: false, verdict: 'may-be-reached' });
    expect(await judged({ faults: [{ at: 5 }, { at: 5.4 }] })).toMatchObject({ value: 0, reached: false, verdict: 'not-reached' });
    expect(await judged({ faults: [{ at: 5, estimate: 2, low: 1, high: 3 }] })).toMatchObject({ verdict: 'may-be-reached' });
    expect(await judged({ notes: [{ kind: 'broken-wires-adjacent', from: 5, value: 2 }] })).toMatchObject({ value: 1, verdict: 'reached' });
  });
});

describe('a limit that worn wires lower', () => {
  it('is 6 of 120 as new, 4.2 at 20 % wear, nothing at 40 %', async () => {
    const rope = { diameter_mm: 20, wires: 120, strands: 6 };
    const judged = async (wear: number | null, count: number) => (await judge('russia-coal-hoist-steep', rope, { notes: [{ kind: 'broken-wires', from: 5, value: count }, ...(wear === null ? [] : [{ kind: 'outer-wire-wear' as const, from: 9, value: wear, unit: '%' }])] })).find('in-lay');
    expect(await judged(null, 5)).toMatchObject({ limit: 6, reached: false, note: expect.stringContaining('wear of the wires, which would lower this limit, is not known') });
    expect(await judged(20, 4)).toMatchObject({ reached: false });
    expect(await judged(20, 5)).toMatchObject({ reached: true });
    expect((await judged(20, 5)).limit).toBeCloseTo(4.2, 12);
    const worn = await judged(40, 1);
    expect(worn).toMatchObject({ limit: 0, reached: true });
    expect(Number.isFinite(worn.utilisation)).toBe(true);
  });
});

describe('evidence of several inspections', () => {
  const diameters = (values: number[]) => values.map((value, i) => ({ kind: 'diameter' as const, from: 1 + i, value, unit: 'mm' }));
  const first = surveyOf({ id: 'a', date: '2024-01-10', length: 30, notes: diameters([20.4, 20.6]) });
  const second = surveyOf({ id: 'b', date: '2025-01-12', length: 30, notes: diameters([19.4, 19.0]) });
  const third = surveyOf({ id: 'c', date: '2026-03-31', length: 30 });
  it('judges a clause at the newest inspection that can, and lists what the newest lacks', async () => {
    const { find, notEvaluated } = await judgeEvidence('iso-4309-single-layer-drum', evidenceOf(crane, [first, second, third]));
    // Reference 20.5 (mean of the first), 19.0 measured: 7.5 % of 20 mm, steel core: discard.
    expect(find('diameter-severity')).toMatchObject({ inspection: 'b', value: 100, reached: true });
    expect(find('diameter-severity').note).toContain('judged at the inspection of 2025-01-12');
    expect(notEvaluated.find((each) => each.clause === 'diameter-severity')!.needs).toContain('last judged from 2025-01-12, 14 months before');
    expect(find('broken-wires-6d').inspection).toBe('c');
  });
  it('does not take the first diameters as their own reference', async () => {
    const { notEvaluated } = await judgeEvidence('iso-4309-single-layer-drum', evidenceOf(crane, [first]));
    expect(notEvaluated.find((each) => each.clause === 'diameter-severity')!.needs).toContain('reference diameter measured just after running-in');
  });
  it('averages two readings at right angles at one place', async () => {
    const notes = [{ kind: 'diameter' as const, from: 3, value: 18.9, unit: 'mm' }, { kind: 'diameter' as const, from: 3, value: 19.3, unit: 'mm' }];
    expect((await judge('cfr-29-1926-1413-running', crane, { notes })).find('diameter').value).toBeCloseTo(4.5, 9);
  });
  it('gives the same measure over a fixed length for every inspection', () => {
    const clause = shippedSet('ropeway-area-italy-2016').clauses[1];
    const surveys = [1, 2, 3].map((loss) => surveyOf({ id: `i${loss}`, date: `202${loss}-01-01`, loss: () => loss, blind: loss === 2 ? [[0, 100]] : [] }));
    const evidence = evidenceOf({ diameter_mm: 20 }, surveys);
    const where = { from: ropePosition(40), to: ropePosition(40.6) };
    expect(surveys.map((survey) => measureOver(clause, evidence, survey, where)?.value ?? null)).toEqual([expect.closeTo(1, 9), null, expect.closeTo(3, 9)]);
  });
});

describe('combined effect at one place [M]', () => {
  const reference = { kind: 'diameter' as const, from: 0, value: 20, unit: 'mm', remark: 'reference' };
  const rope = { diameter_mm: 20, construction: '6x19W-FC', lay: 'ordinary' as const };
  it('adds 40 % of broken wires, 60 % of diameter and no corrosion', async () => {
    // Category 04: 5 in 6 d; 2 of 5 is 40 %. 18.3 mm on a fibre core is 8.5 %: 60 %.
    const notes = [reference, { kind: 'broken-wires' as const, from: 10, value: 2 }, { kind: 'diameter' as const, from: 10.05, value: 18.3, unit: 'mm' }, { kind: 'corrosion-external' as const, from: 10, severity: 'superficial' }];
    const { find } = await judge('iso-4309-single-layer-drum', rope, { notes });
    expect(find('combined-severity')).toMatchObject({ value: 100, reached: true });
  });
  it('does not add what stands at different places', async () => {
    const notes = [reference, { kind: 'broken-wires' as const, from: 10, value: 2 }, { kind: 'diameter' as const, from: 20, value: 18.3, unit: 'mm' }];
    const { find } = await judge('iso-4309-single-layer-drum', rope, { notes });
    expect(find('combined-severity')).toMatchObject({ value: 60, reached: false, verdict: 'may-be-reached' });
    expect(find('combined-severity').note).toContain('corrosion not known');
  });
});

describe('what cannot be judged', () => {
  it('names an unknown rule set instead of failing', async () => {
    const evidence = evidenceOf(crane, [surveyOf({ length: 10 })]);
    const { sets, reasons } = chooseRuleSets('crane', evidence.geometry, ['no-such-set', 'cfr-30-part-57'], []);
    const outcome = await evaluateCriteria(evidence, sets, noCheckpoint);
    expect(outcome.notEvaluated.find((each) => each.ruleSet === 'no-such-set')).toMatchObject({ clause: '*', needs: expect.stringContaining('no rule set is called "no-such-set"') });
    expect(reasons.map((each) => each.id)).toEqual(['cfr-30-part-57', 'no-such-set']);
    expect(outcome.results.some((each) => each.ruleSet === 'cfr-30-part-57')).toBe(true);
  });
  it('is silent about nothing: every clause that applies has a result or a need', async () => {
    for (const application of ['funicular', 'mine hoist', 'crane', 'passenger lift', '']) {
      const evidence = evidenceOf({ ...crane, application }, [surveyOf({ length: 10, loss: () => 1 })]);
      const { sets } = chooseRuleSets(application, evidence.geometry, undefined, []);
      const outcome = await evaluateCriteria(evidence, sets, noCheckpoint);
      const said = new Set([...outcome.results, ...outcome.notEvaluated].map((each) => `${each.ruleSet} ${each.clause}`));
      for (const set of sets) for (const clause of set.clauses) if (clause.ropes === undefined) expect(said).toContain(`${set.id} ${clause.id}`);
    }
  });
  it('has nothing to judge without inspections', async () => {
    const outcome = await judgeEvidence('ropeway-area-italy-2016', evidenceOf(crane, []));
    expect(outcome.results).toEqual([]);
    expect(outcome.notEvaluated.every((each) => each.needs === 'an inspection')).toBe(true);
  });
  it('needs a diameter for windows counted in diameters', async () => {
    const { notEvaluated } = await judge('ropeway-area-italy-2016', {}, { loss: () => 20 });
    expect(notEvaluated.find((each) => each.clause === 'area-6d')!.needs).toBe('the rope diameter');
  });
  it('never takes a grade that it does not know for none', async () => {
    const { notEvaluated } = await judge('cfr-30-part-57', crane, { notes: [{ kind: 'corrosion-external', from: 5, severity: 'as before' }] });
    expect(notEvaluated.find((each) => each.clause === 'd-corrosion')!.needs).toContain('as before');
  });
  it('stops when asked to', async () => {
    const stop = () => Promise.reject(new Cancelled());
    await expect(evaluateCriteria(evidenceOf(crane, [surveyOf({ length: 10 })]), [shippedSet('ropeway-area-italy-2016')], stop)).rejects.toThrow('cancelled');
  });
});
