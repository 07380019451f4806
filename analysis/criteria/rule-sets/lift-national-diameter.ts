import type { RuleSetData } from '../rule-set.ts';
import { thinner } from './words.ts';

export const liftNationalDiameter: RuleSetData = {
  id: 'lift-national-diameter',
  title: 'Lift ropes: diameter below 90 % of nominal (a national lift code)',
  edition: 'national lift code, as quoted in print',
  scope: { text: 'Suspension ropes of lifts.', duties: ['lift'] },
  caution: 'A reprint of the lift rope standard says 6 % instead: the competent person chooses.',
  clauses: [thinner('diameter', 10, '>', 'nominal', { provenance: 'disputed', source: 'a national lift code; the reprint of ISO 4344 says 6 %' })],
};
