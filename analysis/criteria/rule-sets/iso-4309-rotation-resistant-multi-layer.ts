import type { RuleSetData } from '../rule-set.ts';
import { otherClauses, tableClauses } from './iso-4309-common.ts';

const column = { drum: 'multi-layer', mechanism: 'M1-M4', reading: 'printed' } as const;

export const iso4309RotationResistantMultiLayer: RuleSetData = {
  id: 'iso-4309-rotation-resistant-multi-layer',
  title: 'Rotation-resistant crane ropes on a multi-layer drum',
  edition: 'ISO 4309:2017 (5th), tables of the 2010 edition',
  scope: {
    text: 'Ropes of cranes and hoists. Not ropeways, funiculars, lifts or mine shafts.',
    duties: ['crane'], proposedFor: [], ropes: { rotationResistant: true },
  },
  caution: 'The whole table is from memory: confirm against your copy of the standard.',
  clauses: [...tableClauses(column, 'memory', 'Table 4, from memory, not found in print'), ...otherClauses(column)],
};
