import type { RuleSetData } from '../rule-set.ts';

const source = 'Russian rules for passenger ropeways';

export const russiaPassengerRopeway: RuleSetData = {
  id: 'russia-passenger-ropeway-interval',
  title: 'Passenger ropeways, Russia: interval of the magnetic test',
  edition: 'current rules as read; an older text has 5 years, then every 3',
  scope: { text: 'Ropes of passenger ropeways.', duties: ['ropeway-haul', 'ropeway-track', 'ropeway-tension'] },
  clauses: [],
  intervals: [
    { id: 'first', months: 0.5, when: { firstInspection: true }, provenance: 'published', sentence: 'A first test right after installation (taken here as within half a month).', source },
    { id: 'first-15-years', months: 36, when: { firstInspection: false, ageBelowYears: 15 }, provenance: 'published', sentence: 'Every three years for the first fifteen years.', source },
    { id: 'later', months: 12, when: { firstInspection: false, ageFromYears: 15 }, provenance: 'published', sentence: 'Every year after fifteen years.', source },
  ],
};
