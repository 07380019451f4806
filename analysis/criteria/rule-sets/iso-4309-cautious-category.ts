import type { RuleSetData } from '../rule-set.ts';
import { otherClauses, tableClauses } from './iso-4309-common.ts';

const column = { drum: 'single-layer', mechanism: 'M1-M4', reading: 'two-rows-up' } as const;

export const iso4309CautiousCategory: RuleSetData = {
  id: 'iso-4309-cautious-category',
  title: 'Crane ropes on a single-layer drum, Warrington-Seale strands two rows up',
  edition: 'ISO 4309:2017 (5th), tables of the 2010 edition',
  scope: {
    text: 'Ropes of cranes and hoists. Not ropeways, funiculars, lifts or mine shafts.',
    duties: ['crane'], proposedFor: [], ropes: { rotationResistant: false },
  },
  caution: 'The more cautious of two readings: the printed note moves Seale strands of 19 wires or fewer only.',
  clauses: [...tableClauses(column, 'disputed', 'Table 3, second public reprint, which moves Warrington-Seale strands two rows up as well'), ...otherClauses(column)],
};
