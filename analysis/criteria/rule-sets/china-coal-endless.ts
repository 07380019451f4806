import type { RuleSetData } from '../rule-set.ts';
import { brokenAreaInLay } from './china-coal-common.ts';

export const chinaCoalEndless: RuleSetData = {
  id: 'china-coal-endless',
  title: 'Endless ropes of underground chair lifts, China',
  edition: 'Coal mine safety rule',
  scope: { text: 'Endless ropes of chair lifts in coal mines.', duties: ['coal-mine-hoist'] },
  clauses: [brokenAreaInLay(25, 'China coal mine safety rule')],
};
