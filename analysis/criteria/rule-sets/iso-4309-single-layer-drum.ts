import type { RuleSetData } from '../rule-set.ts';
import { otherClauses, tableClauses } from './iso-4309-common.ts';

const column = { drum: 'single-layer', mechanism: 'M1-M4', reading: 'printed' } as const;

export const iso4309SingleLayerDrum: RuleSetData = {
  id: 'iso-4309-single-layer-drum',
  title: 'Crane ropes on steel sheaves or a single-layer drum, class M1 to M4 or unknown',
  edition: 'ISO 4309:2017 (5th), tables of the 2010 edition',
  scope: {
    text: 'Ropes of cranes and hoists. Not ropeways, funiculars, lifts or mine shafts.',
    duties: ['crane'], proposedFor: ['crane'], ropes: { rotationResistant: false },
  },
  caution: 'Check the table against a bought copy of the standard; the stated category of the rope maker overrides the one worked out here.',
  clauses: [...tableClauses(column, 'published', 'Table 3 as printed in two public reprints'), ...otherClauses(column)],
};
