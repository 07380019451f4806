import type { RuleSetData } from '../rule-set.ts';
import { otherClauses, tableClauses } from './iso-4309-common.ts';

const column = { drum: 'single-layer', mechanism: 'M5-M8', reading: 'printed' } as const;

export const iso4309RotationResistantM5ToM8: RuleSetData = {
  id: 'iso-4309-rotation-resistant-m5-m8',
  title: 'Rotation-resistant crane ropes, single-layer drum, class M5 to M8: twice the count',
  edition: 'ISO 4309:2017 (5th), tables of the 2010 edition',
  scope: {
    text: 'Ropes of cranes and hoists. Not ropeways, funiculars, lifts or mine shafts.',
    duties: ['crane'], proposedFor: [], ropes: { rotationResistant: true },
  },
  caution: 'The whole table is from memory: confirm against your copy of the standard.',
  clauses: [...tableClauses(column, 'memory', 'Table 4, from memory, not found in print; doubling read as for Table 3'), ...otherClauses(column)],
};
