import type { Clause, RuleSetData } from '../rule-set.ts';
import { brokenInLay, thinner } from './words.ts';

const given = { provenance: 'published' as const, source: 'Russian coal mine safety rules' };

/** Clauses for hoist ropes; `percent` of all wires broken in one lay bans the rope. */
export function hoistClauses(percent: number): Clause[] {
  return [
    brokenInLay('in-lay', percent, '>=', { ...given, limit: { kind: 'share-of-wires', percent, of: 'rope' }, wearLowersLimit: true, sentence: `${percent} % of the wires broken within one lay. Worn wires lower this limit: 10, 15, 20, 25, 30 % of wire diameter to 0.85, 0.75, 0.70, 0.60, 0.50 of it, 40 % to nothing.` }),
    brokenInLay('in-lay-to-log', 2, '>', { ...given, consequence: 'inform', limit: { kind: 'share-of-wires', percent: 2, of: 'rope' }, sentence: 'More than 2 % of the wires broken within one lay: that lay is entered in the log.' }),
    thinner('diameter', 10, '>', 'nominal', given),
  ];
}

interface Months { readonly first: number; readonly upTo12: number; readonly upTo15: number; readonly above15: number }

/** One row of the table of intervals by measured loss of section. Its first column was cut in the copy read. */
export function sectionLossIntervals(row: Months): NonNullable<RuleSetData['intervals']> {
  const source = 'Russian coal mine safety rules, table by loss of section; row labels partly inferred';
  const rule = (id: string, months: number, when: NonNullable<RuleSetData['intervals']>[number]['when'], words: string) =>
    ({ id, months, when, provenance: 'disputed' as const, sentence: `${words}: next test within ${months} month${months === 1 ? '' : 's'}.`, source });
  return [
    rule('first', row.first, { firstInspection: true }, 'First test after installation'),
    rule('up-to-12', row.upTo12, { firstInspection: false, lossUpToPercent: 12 }, 'Loss of section up to 12 %'),
    rule('up-to-15', row.upTo15, { firstInspection: false, lossAbovePercent: 12, lossUpToPercent: 15 }, 'Loss of section above 12 and up to 15 %'),
    rule('above-15', row.above15, { firstInspection: false, lossAbovePercent: 15 }, 'Loss of section above 15 %'),
  ];
}
