import type { RuleSetData } from '../rule-set.ts';

export const washingtonCraneStrength: RuleSetData = {
  id: 'washington-crane-strength',
  title: 'Loss of strength, Washington State',
  edition: 'WAC 296-24-294',
  scope: { text: 'Ropes of cranes under the general safety rules.', duties: ['crane'] },
  caution: 'Other rules draw the line at 10 %: confirm which one holds.',
  clauses: [{
    id: 'strength', measure: 'strength-loss', window: null, limit: { kind: 'number', value: 15 }, comparator: '>=', unit: '%', provenance: 'disputed', needs: 'LMA trace and broken wires',
    sentence: 'Loss of 15 % of the strength of the rope; estimated here from the loss of metallic area.', source: 'WAC 296-24-294; differs from the 10 % of other rules',
  }],
};
