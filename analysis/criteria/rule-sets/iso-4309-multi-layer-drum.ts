import type { RuleSetData } from '../rule-set.ts';
import { otherClauses, tableClauses } from './iso-4309-common.ts';

const column = { drum: 'multi-layer', mechanism: 'M1-M4', reading: 'printed' } as const;

export const iso4309MultiLayerDrum: RuleSetData = {
  id: 'iso-4309-multi-layer-drum',
  title: 'Crane ropes on a multi-layer drum',
  edition: 'ISO 4309:2017 (5th), tables of the 2010 edition',
  scope: {
    text: 'Ropes of cranes and hoists. Not ropeways, funiculars, lifts or mine shafts.',
    duties: ['crane'], proposedFor: [], ropes: { rotationResistant: false },
  },
  caution: 'Applies at cross-over zones and where wraps interfere. Two reprints differ in rows 04 to 07; these are the values of twice the ordinary-lay column.',
  clauses: [...tableClauses(column, 'published', 'Table 3 as printed in two public reprints; the rows 04 to 07 differ between them'), ...otherClauses(column)],
};
