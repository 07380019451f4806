import type { SurveyParts } from '../criteria/rope-for-tests.ts';

/** Clauses with a limit that one number decides: evidence on either side of it. Sources are named where the tests use them. */
export const six = { diameter_mm: 20, construction: '6x19S-FC', lay: 'ordinary' as const };
export const count = (value: number): SurveyParts => ({ notes: [{ kind: 'broken-wires', value, from: 5 }] });
export const kind = (name: NonNullable<SurveyParts['notes']>[number]['kind'], value: number, unit = ''): SurveyParts => ({ notes: [{ kind: name, value, unit, from: 5 }] });

/** Set, clause, rope, evidence below the limit, evidence at which it is reached. */
export type Edge = [string, string, object, SurveyParts, SurveyParts];

export const EDGES: Edge[] = [
  ['russia-coal-hoist-zinc-vertical', 'in-lay', six, count(5), count(6)], // 5 % of 114 is 5.7
  ['russia-coal-hoist-steep', 'in-lay', { ...six, strands: 6, construction: undefined, wires: 120 }, count(5), count(6)], // reaches: exactly 6 of 120
  ['russia-coal-freight-and-guide', 'in-lay', six, count(11), count(12)],
  ['russia-coal-hoist-inclined', 'in-lay-to-log', six, count(2), count(3)],
  ['russia-coal-hoist-bare-vertical', 'diameter', six, kind('diameter', 18, 'mm'), kind('diameter', 17.99, 'mm')],
  ['china-coal-man-riding', 'broken-area', six, count(3), count(4)], // one wire is 1.476 %
  ['china-coal-material', 'broken-area', six, count(6), count(7)],
  ['china-coal-endless', 'broken-area', six, count(16), count(17)],
  ['china-coal-man-riding', 'diameter', six, kind('diameter', 18.01, 'mm'), kind('diameter', 18, 'mm')],
  ['china-metal-mine', 'lay-length', { ...six, lay_length_mm: 120 }, kind('lay-length', 120.5, 'mm'), kind('lay-length', 120.6, 'mm')],
  ['china-metal-mine', 'outer-wire-wear', six, kind('outer-wire-wear', 29, '%'), kind('outer-wire-wear', 30, '%')],
  ['south-africa-16-33', 'breaking-force', six, { loss: () => 10 }, { loss: () => 10.1 }],
  ['ontario-854-drum-hoist', 'strength', six, { loss: () => 10 }, { loss: () => 10.1 }],
  ['ontario-854-drum-hoist', 'in-lay', six, count(5), count(6)],
  ['italy-mines-1959', 'broken-wires-2m', six, count(11), count(12)],
  ['california-mine-hoist', 'in-strand', six, kind('broken-wires-strand', 5), kind('broken-wires-strand', 6)],
  ['california-mine-hoist', 'crown-wires', six, kind('outer-wire-wear', 34.9, '%'), kind('outer-wire-wear', 35, '%')],
  ['california-mine-hoist', 'in-worn-strand', six, kind('broken-wires-strand', 3), kind('broken-wires-strand', 4)],
  ['washington-scaffold-hoist', 'in-lay', six, count(5), count(6)],
  ['washington-scaffold-hoist', 'in-strand', six, kind('broken-wires-strand', 2), kind('broken-wires-strand', 3)],
  ['washington-scaffold-hoist', 'outer-wire-wear', six, kind('outer-wire-wear', 33.3, '%'), kind('outer-wire-wear', 33.4, '%')],
  ['washington-crane-strength', 'strength', six, { loss: () => 14.9 }, { loss: () => 15 }],
  ['asme-b30-twelve-in-a-lay', 'in-lay', six, count(11), count(12)],
  ['asme-b30-twelve-in-a-lay', 'in-strand', six, kind('broken-wires-strand', 3), kind('broken-wires-strand', 4)],
  ['asme-b30-six-in-a-lay', 'in-lay', six, count(5), count(6)],
  ['asme-b30-six-in-a-lay', 'in-strand', six, kind('broken-wires-strand', 2), kind('broken-wires-strand', 3)],
  ['asme-b30-rotation-resistant', 'in-6d', six, count(1), count(2)],
  ['asme-b30-rotation-resistant', 'in-30d', six, count(3), count(4)],
  ['asme-b30-standing', 'in-lay', six, count(2), count(3)],
  ['asme-b30-standing', 'termination', six, kind('broken-wires-termination', 1), kind('broken-wires-termination', 2)],
  ['asme-b30-19-cableways', 'standing-in-lay', six, count(2), count(3)],
  ['asme-b30-19-cableways', 'standing-termination', six, kind('broken-wires-termination', 1), kind('broken-wires-termination', 2)],
  ['asme-b30-19-cableways', 'diameter', six, kind('diameter', 19, 'mm'), kind('diameter', 18.99, 'mm')],
  ['lift-6x19-fibre-core', 'spread-watch', six, count(12), count(13)],
  ['lift-6x19-fibre-core', 'spread-scrap', six, count(24), count(25)],
  ['lift-6x19-fibre-core', 'concentrated-watch', six, kind('broken-wires-strand', 6), kind('broken-wires-strand', 7)],
  ['lift-6x19-fibre-core', 'concentrated-scrap', six, kind('broken-wires-strand', 8), kind('broken-wires-strand', 9)],
  ['lift-6x19-fibre-core', 'adjacent-watch', six, kind('broken-wires-adjacent', 3), kind('broken-wires-adjacent', 4)],
  ['lift-6x19-fibre-core', 'adjacent-scrap', six, kind('broken-wires-adjacent', 4), kind('broken-wires-adjacent', 5)],
  ['lift-6x19-fibre-core', 'valley-scrap', six, kind('broken-wires-valley', 1), kind('broken-wires-valley', 2)],
  ['lift-8x19-fibre-core', 'spread-watch', six, count(15), count(16)],
  ['lift-8x19-fibre-core', 'spread-scrap', six, count(30), count(31)],
  ['lift-8x19-fibre-core', 'concentrated-watch', six, kind('broken-wires-strand', 8), kind('broken-wires-strand', 9)],
  ['lift-8x19-fibre-core', 'concentrated-scrap', six, kind('broken-wires-strand', 10), kind('broken-wires-strand', 11)],
  ['lift-8x19-fibre-core', 'adjacent-watch', six, kind('broken-wires-adjacent', 3), kind('broken-wires-adjacent', 4)],
  ['lift-8x19-fibre-core', 'adjacent-scrap', six, kind('broken-wires-adjacent', 4), kind('broken-wires-adjacent', 5)],
  ['lift-8x19-fibre-core', 'diameter', six, kind('diameter', 18.8, 'mm'), kind('diameter', 18.79, 'mm')],
  ['lift-national-diameter', 'diameter', six, kind('diameter', 18, 'mm'), kind('diameter', 17.99, 'mm')],
  ['slings-general', 'in-strand', six, kind('broken-wires-strand', 4), kind('broken-wires-strand', 5)],
  ['slings-general', 'in-lay', six, count(9), count(10)],
  ['slings-russia', 'in-3d', six, count(3), count(4)],
  ['slings-russia', 'in-6d', six, count(5), count(6)],
  ['slings-russia', 'in-30d', six, count(15), count(16)],
  ['crane-gb-5972-86', 'in-lay', six, count(11), count(12)], // 114 wires: printed as 12
  ['crane-gb-5972-86', 'in-lay', { ...six, strands: 6, construction: undefined, wires: 222 }, count(21), count(22)], // 6x37: printed as 22
  ['crane-gb-5972-86', 'outer-wire-wear', six, kind('outer-wire-wear', 39.9, '%'), kind('outer-wire-wear', 40, '%')],
  ['crane-gb-5972-86', 'diameter', six, kind('diameter', 18.61, 'mm'), kind('diameter', 18.6, 'mm')],
];
