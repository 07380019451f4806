import type { RuleSetData } from '../rule-set.ts';

export const austriaSmallRopewayInterval: RuleSetData = {
  id: 'austria-small-ropeway-interval',
  title: 'Small ropeways, Austria: interval of the magnetic test',
  edition: 'Austrian state ordinance',
  scope: { text: 'Small ropeways.', duties: ['ropeway-haul', 'ropeway-track'] },
  caution: 'After the first test the authority sets the next date from the result: there is no fixed interval.',
  clauses: [],
  intervals: [{ id: 'first', months: 72, when: { firstInspection: true }, provenance: 'published', sentence: 'A first test six years after the rope was laid; the authority sets the next date from its result.', source: 'Austrian state ordinance' }],
};
