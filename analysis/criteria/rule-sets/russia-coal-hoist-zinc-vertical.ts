import type { RuleSetData } from '../rule-set.ts';
import { hoistClauses, sectionLossIntervals } from './russia-coal-hoist-common.ts';

export const russiaCoalHoistZincVertical: RuleSetData = {
  id: 'russia-coal-hoist-zinc-vertical',
  title: 'Coal mine hoist ropes, Russia: vertical shafts, zinc-coated wires',
  edition: 'Coal mine safety rules',
  scope: { text: 'Stranded hoist ropes of coal mines: vertical shafts, zinc-coated wires.', duties: ['coal-mine-hoist'] },
  caution: 'The first column of the published table of intervals was cut and row labels are partly inferred: confirm against the rules.',
  clauses: hoistClauses(5),
  intervals: sectionLossIntervals({ first: 12, upTo12: 6, upTo15: 1, above15: 0.5 }),
};
