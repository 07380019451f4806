import type { RuleSetData } from '../rule-set.ts';
import { hoistClauses, sectionLossIntervals } from './russia-coal-hoist-common.ts';

export const russiaCoalHoistInclined: RuleSetData = {
  id: 'russia-coal-hoist-inclined',
  title: 'Coal mine hoist ropes, Russia: inclined shafts below 60 degrees',
  edition: 'Coal mine safety rules',
  scope: { text: 'Stranded hoist ropes of coal mines: inclined shafts below 60 degrees.', duties: ['coal-mine-hoist'] },
  caution: 'The first column of the published table of intervals was cut and row labels are partly inferred: confirm against the rules.',
  clauses: hoistClauses(5),
  intervals: sectionLossIntervals({ first: 2, upTo12: 1, upTo15: 0.5, above15: 0.25 }),
};
