import type { RuleSetData } from '../rule-set.ts';

export const southAfrica1633: RuleSetData = {
  id: 'south-africa-16-33',
  title: 'Winding ropes, South Africa',
  edition: 'Regulation 16.33 (1991)',
  scope: { text: 'Winding ropes of mines.', duties: ['mine-hoist', 'coal-mine-hoist'] },
  clauses: [{
    id: 'breaking-force', measure: 'strength-loss', window: null, limit: { kind: 'number', value: 10 }, comparator: '>', unit: '%', provenance: 'published', needs: 'LMA trace and broken wires',
    sentence: 'Breaking force at any point below nine tenths of the original; estimated here from the loss of metallic area.', source: 'Regulation 16.33; methods in SANS 10293',
  }],
};
