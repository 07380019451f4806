import type { RuleSetData } from '../rule-set.ts';
import { brokenInLay, brokenInStrand, thinnerWires } from './words.ts';

const given = { provenance: 'published' as const, source: 'WAC 296-874' };

export const washingtonScaffoldHoist: RuleSetData = {
  id: 'washington-scaffold-hoist',
  title: 'Ropes of scaffold hoists, Washington State',
  edition: 'WAC 296-874',
  scope: { text: 'Suspension ropes of scaffold hoists.', duties: ['scaffold-hoist'], proposedFor: ['scaffold-hoist'] },
  clauses: [brokenInLay('in-lay', 6, '>=', given), brokenInStrand('in-strand', 3, '>=', given), thinnerWires(100 / 3, '>', given)],
};
