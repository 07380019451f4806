import type { RuleSetData } from '../rule-set.ts';
import { hoistClauses } from './russia-coal-hoist-common.ts';

export const russiaCoalFreightAndGuide: RuleSetData = {
  id: 'russia-coal-freight-and-guide',
  title: 'Coal mines, Russia: freight inclines below 30 degrees, balance, brake, guide and rubbing ropes',
  edition: 'Coal mine safety rules',
  scope: { text: 'Ropes of freight inclines below 30 degrees, balance, brake, guide and rubbing ropes.', duties: ['coal-mine-hoist', 'mine-guide'] },
  clauses: hoistClauses(10),
};
