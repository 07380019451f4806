import type { RuleSetData } from '../rule-set.ts';
import { thinnerWires } from './words.ts';

const given = { provenance: 'published' as const, source: 'China metal mine rule' };

export const chinaMetalMine: RuleSetData = {
  id: 'china-metal-mine',
  title: 'Metal mine hoist ropes, China',
  edition: 'Metal mine rule',
  scope: { text: 'Hoist ropes of metal mines.', duties: ['mine-hoist'] },
  clauses: [
    { id: 'lay-length', measure: 'lay-length-change', window: null, limit: { kind: 'number', value: 0.5 }, comparator: '>=', unit: '%', needs: 'lay length, measured, and that of the new rope', sentence: 'Lay length changed by half a percent.', ...given },
    thinnerWires(30, '>=', given),
  ],
};
