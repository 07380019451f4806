/**
 * Outside source: 30 CFR 56.19024 (same wording 57.19024, 75.1434, 77.1434) and 29 CFR 1926.1413, US federal regulation, public domain;
 * boundary cases worked out with exact fractions from the quoted wording (data/discard_rules_public.json). [P]
 */
import { describe, expect, it } from 'vitest';
import { judge, judgeEvidence, shippedSet } from '../criteria/judge.ts';
import { evidenceOf, surveyOf } from '../criteria/rope-for-tests.ts';
import type { VisualNote } from '../../analysis/intake/visual-note.ts';
import { minimumStrengthFactor } from '../../analysis/criteria/minimum-strength.ts';
import published from './data/discard_rules_public.json' with { type: 'json' };

const rope = { diameter_mm: 28, construction: '6x19S-FC', lay: 'ordinary' as const };
const note = (kind: VisualNote['kind'], value: number, more: Partial<VisualNote> = {}): Partial<VisualNote> => ({ kind, value, from: 10, ...more });

/** Every field that some case of the file holds. */
interface Case {
  rule: string; discard: boolean;
  total_wires?: number; broken_in_lay?: number; wires_in_strand?: number; broken_in_strand_in_lay?: number; baseline_mm?: number; measured_mm?: number;
  original_mm?: number; remaining_mm?: number; strength_loss_percent?: number; valley_breaks_in_lay?: number;
  in_lay?: number; in_strand?: number; in_6d?: number; in_30d?: number; beyond?: number; at_end?: number; nominal_mm?: number;
}

async function reachedBy30Cfr(set: string, each: Case): Promise<boolean> {
  switch (each.rule) {
    case 'a1': return (await judge(set, rope, { notes: [note('broken-wires', each.broken_in_lay!)] }, { wires: each.total_wires! })).find('a-total').reached;
    case 'a2': return (await judge(set, rope, { notes: [note('broken-wires-strand', each.broken_in_strand_in_lay!)] }, { wiresPerStrand: each.wires_in_strand! })).find('a-strand').reached;
    case 'b': return (await judge(set, rope, { notes: [note('broken-wires-valley', each.valley_breaks_in_lay!)] })).find('b-valley').reached;
    case 'c': return (await judge(set, rope, { notes: [note('outer-wire-wear', each.remaining_mm!, { unit: 'mm' })] }, { outerWireDiameterMm: each.original_mm! })).find('c-outer-wires').reached;
    case 'g': return (await judge(set, rope, { notes: [note('diameter', each.baseline_mm!, { unit: 'mm', remark: 'baseline' }), note('diameter', each.measured_mm!, { unit: 'mm' })] })).find('g-diameter').reached;
    case 'h': return (await judge(set, rope, { loss: () => each.strength_loss_percent! })).find('h-strength').reached;
    default: throw new Error(`no way to judge rule ${each.rule}`);
  }
}

describe.each(['cfr-30-part-56', 'cfr-30-part-57', 'cfr-30-part-75', 'cfr-30-part-77'])('%s', (set) => {
  const cases = published.us_30cfr_56_19024.cases as Case[];
  it('has 35 cases', () => expect(cases).toHaveLength(35));
  it.each(cases.map((each) => [JSON.stringify(each), each] as const))('%s', async (_name, each) => {
    expect(await reachedBy30Cfr(set, each)).toBe(each.discard);
  });
});

describe('29 CFR 1926.1413', () => {
  const cases = published.us_29cfr_1926_1413.cases as Case[];
  it('has twelve cases', () => expect(cases).toHaveLength(12));
  it.each(cases.map((each) => [JSON.stringify(each), each] as const))('%s', async (_name, each) => {
    expect(await reachedBy29Cfr(each)).toBe(each.discard);
  });
  it('check value 10: six in a lay, two in 6d, 5.0 % passes and 5.1 % does not', async () => {
    expect(await reachedBy29Cfr({ rule: 'A1', in_lay: 6, in_strand: 0, discard: true })).toBe(true);
    expect(await reachedBy29Cfr({ rule: 'A2', in_6d: 2, in_30d: 2, discard: true })).toBe(true);
    expect(await reachedBy29Cfr({ rule: 'B', nominal_mm: 100, measured_mm: 95, discard: false })).toBe(false);
    expect(await reachedBy29Cfr({ rule: 'B', nominal_mm: 100, measured_mm: 94.9, discard: true })).toBe(true);
  });
});

async function reachedBy29Cfr(each: Case): Promise<boolean> {
  const any = (found: { results: readonly { reached: boolean }[] }) => found.results.some((result) => result.reached);
  if (each.rule === 'A1') return any(await judge('cfr-29-1926-1413-running', rope, { notes: [note('broken-wires', each.in_lay!), note('broken-wires-strand', each.in_strand!)] }));
  if (each.rule === 'A2') {
    // Those within 6 d stand together; the rest of the 30 d count stands apart from them and from each other.
    const d = 0.02;
    const apart = Array.from({ length: each.in_30d! - each.in_6d! }, (_, i) => note('broken-wires', 1, { from: 10 + (i + 1) * 8 * d }));
    return any(await judge('cfr-29-1926-1413-rotation-resistant', { diameter_mm: 20, construction: '18x7-FC' }, { notes: [note('broken-wires', each.in_6d!), ...apart] }));
  }
  if (each.rule === 'A3') {
    const notes = [...(each.beyond! > 0 ? [note('broken-wires', each.beyond!)] : []), ...(each.at_end! > 0 ? [note('broken-wires-termination', each.at_end!, { from: 0.1 })] : [])];
    return any(await judge('cfr-29-1926-1413-standing', rope, { notes }));
  }
  if (each.rule === 'B') return any(await judge('cfr-29-1926-1413-running', { ...rope, diameter_mm: each.nominal_mm! }, { notes: [note('diameter', each.measured_mm!, { unit: 'mm' })] }));
  throw new Error(`no way to judge rule ${each.rule}`);
}

describe('check value 9: 30 CFR on a 6x19', () => {
  it.each([[5, false], [6, true]])('%i in a lay', async (count, reached) => {
    const { find } = await judge('cfr-30-part-57', rope, { notes: [note('broken-wires', count)] });
    expect(find('a-total')).toMatchObject({ value: count, reached, comparator: '>' });
    expect(find('a-total').limit).toBeCloseTo(5.7, 12);
  });
  it.each([[2, false], [3, true]])('%i in a strand', async (count, reached) => {
    expect((await judge('cfr-30-part-57', rope, { notes: [note('broken-wires-strand', count)] })).find('a-strand').reached).toBe(reached);
  });
  it.each([[94, false], [93.9, true]])('diameter 100 to %f', async (measured, reached) => {
    const notes = [note('diameter', 100, { unit: 'mm', remark: 'baseline' }), note('diameter', measured, { unit: 'mm' })];
    expect((await judge('cfr-30-part-57', { ...rope, diameter_mm: 100 }, { notes })).find('g-diameter').reached).toBe(reached);
  });
  it.each([[10, false], [10.1, true]])('strength loss %f', async (loss, reached) => {
    expect((await judge('cfr-30-part-57', rope, { loss: () => loss })).find('h-strength').reached).toBe(reached);
  });
  it('sees one broken wire at the attachment as allowed and two as a case for re-termination, not for discard', async () => {
    const judged = await Promise.all([1, 2].map((count) => judge('cfr-30-part-77', rope, { notes: [note('broken-wires-termination', count, { from: 0.1 })] })));
    expect(judged.map((each) => each.find('attachment-broken-wires').reached)).toEqual([false, true]);
    expect(judged[1].find('attachment-broken-wires').consequence).toBe('re-terminate');
  });
  it('leaves the valley rule aside for Lang lay, to which it does not apply', async () => {
    const { results, notEvaluated } = await judge('cfr-30-part-57', { ...rope, lay: 'lang' }, { notes: [note('broken-wires-valley', 5)] });
    expect([...results, ...notEvaluated].some((each) => each.clause === 'b-valley')).toBe(false);
  });
});

describe('check value 11: 30 CFR minimum strength [forms P, constants M]', () => {
  it.each([['drum', 1000, 6], ['drum', 2500, 4.5], ['drum', 3000, 4], ['friction', 2000, 6], ['friction', 4000, 5], ['tail', 1000, 7], ['guide', 1000, 5]] as const)('%s %i ft', (duty, feet, factor) => {
    expect(minimumStrengthFactor(duty, feet)).toBeCloseTo(factor, 12);
  });
});

describe('what the rule does not put into numbers', () => {
  it('is asked for, never passed over', async () => {
    const { notEvaluated } = await judgeEvidence('cfr-30-part-57', evidenceOf(rope, [surveyOf({ length: 10 })]));
    for (const clause of ['b-valley', 'd-corrosion', 'e-distortion', 'f-heat', 'g-diameter', 'attachment-broken-wires', 'attachment-condition']) expect(notEvaluated.map((each) => each.clause)).toContain(clause);
  });
  it('cites the section of each part', () => {
    expect(shippedSet('cfr-30-part-75').clauses[0].source).toBe('30 CFR 75.1434(a)');
    expect(shippedSet('cfr-30-part-56').clauses[0].source).toBe('30 CFR 56.19024(a)');
  });
});
