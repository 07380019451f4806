import type { RuleSetData } from '../rule-set.ts';

export const italyMines1959: RuleSetData = {
  id: 'italy-mines-1959',
  title: 'Mine ropes, Italy',
  edition: 'DPR 128/1959, art. 222',
  scope: { text: 'Ropes of mine hoists.', duties: ['mine-hoist', 'coal-mine-hoist'] },
  caution: 'The rule also bans a rope whose safety factor is below 6, which needs the load.',
  clauses: [{
    id: 'broken-wires-2m', measure: 'broken-wires', window: { length: 2, unit: 'm' }, limit: { kind: 'share-of-wires', percent: 10, of: 'rope' }, comparator: '>', unit: 'wires', provenance: 'published',
    needs: 'broken wires by place, number of wires', sentence: 'More than a tenth of all wires broken within 2 m.', source: 'DPR 128/1959, art. 222',
  }],
};
