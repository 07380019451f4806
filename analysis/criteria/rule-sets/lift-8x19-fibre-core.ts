import type { RuleSetData } from '../rule-set.ts';
import { liftClauses } from './lift-common.ts';

export const lift8x19FibreCore: RuleSetData = {
  id: 'lift-8x19-fibre-core',
  title: 'Lift ropes 8x19 with fibre core on cast-iron or steel sheaves',
  edition: 'ISO 4344:2004 / EN 12385-5, table as reprinted',
  scope: { text: 'Suspension ropes of lifts, 8x19 class, fibre core.', duties: ['lift'], proposedFor: ['lift'] },
  caution: 'The diameter limit differs between sources: 6 % below nominal here, 10 % in a national lift code.',
  clauses: liftClauses({ spread: [15, 30], concentrated: [8, 10] }),
};
