import type { RuleSetData } from '../rule-set.ts';
import { otherClauses, tableClauses } from './iso-4309-common.ts';

const column = { drum: 'multi-layer', mechanism: 'M1-M4', reading: 'second-reprint' } as const;

export const iso4309MultiLayerSecondReprint: RuleSetData = {
  id: 'iso-4309-multi-layer-second-reprint',
  title: 'Crane ropes on a multi-layer drum, second reprint',
  edition: 'ISO 4309:2017 (5th), tables of the 2010 edition',
  scope: {
    text: 'Ropes of cranes and hoists. Not ropeways, funiculars, lifts or mine shafts.',
    duties: ['crane'], proposedFor: [], ropes: { rotationResistant: false },
  },
  caution: 'The second of two reprints that differ in rows 04 to 07: confirm against your copy of the standard.',
  clauses: [...tableClauses(column, 'disputed', 'Table 3, second public reprint'), ...otherClauses(column)],
};
