/**
 * Outside sources, as published or remembered: ISO 4309:2010 clause 6 (waviness, diameter, corrosion, distortion, heat) [M],
 * 29 CFR 1926.1413 category I and 30 CFR (d)-(f) [P], California T8 7135, China coal mines [P], Ontario Reg. 854 [M, doubtful],
 * ASME B30 (one valley break) [P], ISO 4344 lift table as reprinted [P], slings [P], intervals of Poland, ASME B30.19, EN 12927 [P].
 */
import { describe, expect, it } from 'vitest';
import { maximumInterval } from '../../analysis/criteria/maximum-interval.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { judge, shippedSet } from '../criteria/judge.ts';
import { evidenceOf, surveyOf } from '../criteria/rope-for-tests.ts';
import type { SurveyParts } from '../criteria/rope-for-tests.ts';
import { count, EDGES, kind, six } from './clause-edges.ts';
import type { Edge } from './clause-edges.ts';

const graded = (name: 'corrosion-external' | 'distortion' | 'heat' | 'end-attachment', severity: string): SurveyParts => ({ notes: [{ kind: name, severity, from: 5 }] });
const grown = (mm: number): SurveyParts => ({ notes: [{ kind: 'diameter', value: 20, unit: 'mm', from: 1, remark: 'reference' }, { kind: 'diameter', value: mm, unit: 'mm', from: 5 }] });
const steel = { ...six, construction: '6x36WS-IWRC' };
const bad = (name: 'distortion' | 'heat' | 'end-attachment', word: string): [SurveyParts, SurveyParts] => [graded(name, 'none'), graded(name, word)];

/** Corrosion that the rule calls marked counts from the grade high (60 %) on. */
const MARKED = [graded('corrosion-external', '59 %'), graded('corrosion-external', 'rough to the touch')] as const;

const iso = RULE_SETS.filter((set) => set.id.startsWith('iso-4309')).map((set) => set.id).filter((id) => RULE_SETS.find((set) => set.id === id)!.clauses.length > 2);
const ISO: Edge[] = iso.flatMap((id): Edge[] => [
  [id, 'valley', six, kind('broken-wires-valley', 1), kind('broken-wires-valley', 2)],
  [id, 'termination', six, kind('broken-wires-termination', 1), kind('broken-wires-termination', 2)],
  [id, 'waviness-running', six, kind('waviness', 1.99, 'mm'), kind('waviness', 2, 'mm')], // d/10
  [id, 'waviness-standing', six, kind('waviness', 6.66, 'mm'), kind('waviness', 6.67, 'mm')], // d/3
  [id, 'diameter-increase', six, grown(id.includes('rotation') ? 20.99 : 21.99), grown(id.includes('rotation') ? 21 : 22)],
  [id, 'diameter-severity', steel, grown(id.includes('rotation') ? 19.01 : 18.51), grown(id.includes('rotation') ? 19 : 18.5)],
  [id, 'corrosion-severity', six, graded('corrosion-external', 'very high'), graded('corrosion-external', 'heavily pitted, slack wires')],
  [id, 'combined-severity', six, graded('corrosion-external', 'very high'), graded('corrosion-external', 'heavily pitted, slack wires')],
  [id, 'distortion', six, ...bad('distortion', 'bird-cage')],
  [id, 'heat-damage', six, ...bad('heat', 'arc mark')],
]);
const CATEGORY_I: Edge[] = ['running', 'rotation-resistant', 'standing'].flatMap((name): Edge[] => {
  const id = `cfr-29-1926-1413-${name}`;
  return [
    [id, 'distortion', six, ...bad('distortion', 'kink')], [id, 'heat-damage', six, ...bad('heat', 'blue wires')], [id, 'end-attachment', six, ...bad('end-attachment', 'cracked')],
    [id, 'corrosion', six, ...MARKED], [id, 'diameter', six, kind('diameter', 19, 'mm'), kind('diameter', 18.99, 'mm')],
  ];
});
const CFR_30: Edge[] = [56, 57, 75, 77].flatMap((part): Edge[] => {
  const id = `cfr-30-part-${part}`;
  return [
    [id, 'd-corrosion', six, ...MARKED], [id, 'e-distortion', six, ...bad('distortion', 'kink')], [id, 'f-heat', six, ...bad('heat', 'arc mark')],
    [id, 'attachment-broken-wires', six, kind('broken-wires-termination', 1), kind('broken-wires-termination', 2)], [id, 'attachment-condition', six, ...bad('end-attachment', 'corroded')],
  ];
});
const OTHERS: Edge[] = [
  ...['asme-b30-six-in-a-lay', 'asme-b30-twelve-in-a-lay', 'asme-b30-rotation-resistant', 'lift-6x19-fibre-core', 'lift-8x19-fibre-core']
    .map((id): Edge => [id, id.startsWith('lift') ? 'valley-watch' : 'valley', six, kind('broken-wires-valley', 0), kind('broken-wires-valley', 1)]),
  ['asme-b30-19-cableways', 'in-6d', six, count(1), count(2)],
  ['asme-b30-19-cableways', 'in-30d', six, count(3), count(4)],
  ['lift-8x19-fibre-core', 'valley-scrap', six, kind('broken-wires-valley', 1), kind('broken-wires-valley', 2)],
  ['lift-6x19-fibre-core', 'diameter', six, kind('diameter', 18.8, 'mm'), kind('diameter', 18.79, 'mm')],
  ['california-mine-hoist', 'corrosion', six, ...MARKED],
  ['china-coal-man-riding', 'corrosion', six, ...MARKED],
  ['ontario-854-drum-hoist', 'corrosion', six, ...MARKED],
  ['china-coal-material', 'diameter', six, kind('diameter', 18.01, 'mm'), kind('diameter', 18, 'mm')],
  ['slings-general', 'outer-wire-wear', six, kind('outer-wire-wear', 33.3, '%'), kind('outer-wire-wear', 100 / 3, '%')],
  ['slings-general', 'diameter', six, kind('diameter', 18.01, 'mm'), kind('diameter', 18, 'mm')],
  ...['zinc-vertical', 'bare-vertical', 'steep', 'inclined'].flatMap((row): Edge[] => [
    [`russia-coal-hoist-${row}`, 'in-lay', six, count(5), count(6)], // reaches 5.7
    [`russia-coal-hoist-${row}`, 'in-lay-to-log', six, count(2), count(3)], // more than 2.28
    [`russia-coal-hoist-${row}`, 'diameter', six, kind('diameter', 18, 'mm'), kind('diameter', 17.99, 'mm')],
  ]),
  ['russia-coal-freight-and-guide', 'in-lay-to-log', six, count(2), count(3)],
  ['russia-coal-freight-and-guide', 'diameter', six, kind('diameter', 18, 'mm'), kind('diameter', 17.99, 'mm')],
];
const ALL = [...ISO, ...CATEGORY_I, ...CFR_30, ...OTHERS];

describe('clauses that the eye decides, and what was left', () => {
  it.each(ALL)('%s %s', async (set, clause, rope, below, at) => {
    const geometry = { rotationResistant: set.includes('rotation') || /^in-\d/.test(clause) };
    expect((await judge(set, rope, below, geometry)).find(clause).reached).toBe(false);
    expect((await judge(set, rope, at, geometry)).find(clause).reached).toBe(true);
  });
  it('a steel core may grow 5 %, a fibre core 10 % [M], and it is a case to look into, not to discard', async () => {
    const increase = async (rope: object, mm: number) => (await judge('iso-4309-single-layer-drum', rope, grown(mm))).find('diameter-increase');
    expect(await increase(steel, 20.99)).toMatchObject({ reached: false, limit: 5 });
    expect(await increase(steel, 21)).toMatchObject({ reached: true, consequence: 'inform' });
    expect(await increase(six, 21)).toMatchObject({ reached: false, limit: 10 });
  });
});

describe('further intervals [P]', () => {
  const months = (set: string, evidence = evidenceOf({}, [surveyOf({ length: 1 })])) => maximumInterval(shippedSet(set), evidence, 0)?.months;
  it('Polish surface lifts from year six, then each three years; European norm three years; ASME B30.19 yearly', () => {
    expect(months('poland-surface-lift-interval', evidenceOf({}, []))).toBe(72);
    expect(months('poland-surface-lift-interval')).toBe(36);
    expect(months('en-12927-6-stranded')).toBe(36);
    expect(months('en-12927-6-locked-coil')).toBe(36);
    expect(months('asme-b30-19-cableways')).toBe(12);
  });
});

/** Clauses whose limits are tested elsewhere in this folder, by set: a table, a list of cases or a window of area. */
const ELSEWHERE: [RegExp, RegExp, string][] = [
  [/^iso-4309/, /^broken-wires-(6d|30d)$/, 'iso-4309.test.ts'],
  [/^cfr-30-part/, /^(a-total|a-strand|b-valley|c-outer-wires|g-diameter|h-strength)$/, 'cfr-30-and-29.test.ts'],
  [/^cfr-29/, /^(in-lay|in-strand|in-6d|in-30d|termination|diameter)$/, 'cfr-30-and-29.test.ts'],
  [/^(ropeway-area|vorarlberg|en-12927|hong-kong|carinthia|locked-coil)/, /./, 'ropeway-area.test.ts'],
];

it('leaves no clause of any shipped set without its boundary tested', () => {
  const tested = new Set([...EDGES, ...ALL].map(([set, clause]) => `${set} ${clause}`));
  const open = RULE_SETS.flatMap((set) => set.clauses.map((clause) => [set.id, clause.id] as const))
    .filter(([set, clause]) => !tested.has(`${set} ${clause}`) && !ELSEWHERE.some(([sets, clauses]) => sets.test(set) && clauses.test(clause)));
  expect(open).toEqual([]);
});
