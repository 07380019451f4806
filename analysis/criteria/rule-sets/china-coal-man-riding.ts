import type { RuleSetData } from '../rule-set.ts';
import { brokenAreaInLay } from './china-coal-common.ts';
import { markedCorrosion, thinner } from './words.ts';

const given = { provenance: 'published' as const, source: 'China coal mine safety rule' };

export const chinaCoalManRiding: RuleSetData = {
  id: 'china-coal-man-riding',
  title: 'Coal mine hoist ropes that carry persons, China',
  edition: 'Coal mine safety rule',
  scope: { text: 'Hoist ropes that carry persons.', duties: ['coal-mine-hoist'] },
  clauses: [brokenAreaInLay(5, given.source), thinner('diameter', 10, '>=', 'nominal', given), markedCorrosion({ ...given, sentence: 'Pitted or blackened wires: the rope may not carry persons. A grade of high (60 %) counts as reached.' })],
};
