import type { RuleSetData } from '../rule-set.ts';
import { liftClauses } from './lift-common.ts';

export const lift6x19FibreCore: RuleSetData = {
  id: 'lift-6x19-fibre-core',
  title: 'Lift ropes 6x19 with fibre core on cast-iron or steel sheaves',
  edition: 'ISO 4344:2004 / EN 12385-5, table as reprinted',
  scope: { text: 'Suspension ropes of lifts, 6x19 class, fibre core.', duties: ['lift'], proposedFor: ['lift'] },
  caution: 'The diameter limit differs between sources: 6 % below nominal here, 10 % in a national lift code.',
  clauses: liftClauses({ spread: [12, 24], concentrated: [6, 8] }),
};
