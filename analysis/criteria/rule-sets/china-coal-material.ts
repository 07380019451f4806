import type { RuleSetData } from '../rule-set.ts';
import { brokenAreaInLay } from './china-coal-common.ts';
import { thinner } from './words.ts';

const given = { provenance: 'published' as const, source: 'China coal mine safety rule' };

export const chinaCoalMaterial: RuleSetData = {
  id: 'china-coal-material',
  title: 'Coal mine hoist ropes for material, and balance ropes, China',
  edition: 'Coal mine safety rule',
  scope: { text: 'Hoist ropes for material and balance ropes.', duties: ['coal-mine-hoist'] },
  clauses: [brokenAreaInLay(10, given.source), thinner('diameter', 10, '>=', 'nominal', given)],
};
