import type { RuleSetData } from '../rule-set.ts';
import { atTermination, brokenInLay } from './words.ts';

const given = { provenance: 'published' as const, source: 'ASME B30.5 to B30.8, older edition' };

export const asmeB30Standing: RuleSetData = {
  id: 'asme-b30-standing',
  title: 'Standing ropes of cranes (ASME B30, older edition)',
  edition: 'ASME B30.5 to B30.8, older edition',
  scope: { text: 'Pendants and standing ropes of cranes.', duties: ['crane-standing'] },
  caution: 'Read in an older edition: check the edition in force.',
  clauses: [brokenInLay('in-lay', 3, '>=', given), atTermination(2, '>=', given)],
};
