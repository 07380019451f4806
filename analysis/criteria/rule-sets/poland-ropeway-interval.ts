import type { RuleSetData } from '../rule-set.ts';

const source = 'Polish notes on magnetic testing of ropeways';

export const polandRopewayInterval: RuleSetData = {
  id: 'poland-ropeway-interval',
  title: 'Ropeways, Poland: interval of the magnetic test',
  edition: 'as noted in print',
  scope: { text: 'Ropes of ropeways.', duties: ['ropeway-haul', 'ropeway-track', 'ropeway-tension', 'funicular'] },
  clauses: [],
  intervals: [{ id: 'ropeways', months: 36, when: {}, provenance: 'published', sentence: 'Ropeways every three years.', source }],
};

export const polandSurfaceLiftInterval: RuleSetData = {
  id: 'poland-surface-lift-interval',
  title: 'Surface lifts, Poland: interval of the magnetic test',
  edition: 'as noted in print',
  scope: { text: 'Haul ropes of surface lifts.', duties: ['surface-lift'] },
  clauses: [],
  intervals: [
    { id: 'until-year-6', months: 72, when: { firstInspection: true }, provenance: 'published', sentence: 'Surface lifts: tests begin in the sixth year.', source },
    { id: 'later', months: 36, when: { firstInspection: false }, provenance: 'published', sentence: 'Surface lifts: every three years from the sixth year on.', source },
  ],
};
