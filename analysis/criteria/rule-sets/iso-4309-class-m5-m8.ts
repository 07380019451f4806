import type { RuleSetData } from '../rule-set.ts';
import { otherClauses, tableClauses } from './iso-4309-common.ts';

const column = { drum: 'single-layer', mechanism: 'M5-M8', reading: 'printed' } as const;

export const iso4309ClassM5ToM8: RuleSetData = {
  id: 'iso-4309-class-m5-m8',
  title: 'Crane ropes on steel sheaves or a single-layer drum, class M5 to M8: twice the count',
  edition: 'ISO 4309:2017 (5th), tables of the 2010 edition',
  scope: {
    text: 'Ropes of cranes and hoists. Not ropeways, funiculars, lifts or mine shafts.',
    duties: ['crane'], proposedFor: [], ropes: { rotationResistant: false },
  },
  caution: 'Only for a mechanism whose class is known; it is permitted, not required, to double the count.',
  clauses: [...tableClauses(column, 'published', 'Table 3 as printed in two public reprints; twice the count may be applied to mechanisms known to be of class M5 to M8'), ...otherClauses(column)],
};
