import type { RuleSetData } from '../rule-set.ts';
import { hoistClauses, sectionLossIntervals } from './russia-coal-hoist-common.ts';

export const russiaCoalHoistSteep: RuleSetData = {
  id: 'russia-coal-hoist-steep',
  title: 'Coal mine hoist ropes, Russia: inclined shafts above 60 degrees',
  edition: 'Coal mine safety rules',
  scope: { text: 'Stranded hoist ropes of coal mines: inclined shafts above 60 degrees.', duties: ['coal-mine-hoist'] },
  caution: 'The first column of the published table of intervals was cut and row labels are partly inferred: confirm against the rules.',
  clauses: hoistClauses(5),
  intervals: sectionLossIntervals({ first: 6, upTo12: 2, upTo15: 1, above15: 0.5 }),
};
