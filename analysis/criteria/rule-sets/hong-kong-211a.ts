import type { RuleSetData } from '../rule-set.ts';
import { thinner } from './words.ts';

const given = { provenance: 'published' as const, source: 'Cap. 211A regulation 21' };

export const hongKong211a: RuleSetData = {
  id: 'hong-kong-211a',
  title: 'Aerial ropeways: broken wires and diameter, Hong Kong Cap. 211A',
  edition: 'Cap. 211A, regulation 21',
  scope: { text: 'Ropes of an aerial ropeway.', duties: ['ropeway-haul', 'ropeway-track', 'ropeway-tension'] },
  clauses: [
    { id: 'broken-wires-30d', measure: 'broken-wires', window: { length: 30, unit: 'd' }, limit: { kind: 'share-of-wires', percent: 10, of: 'rope' }, comparator: '>', unit: 'wires', needs: 'broken wires by place, number of wires', sentence: 'More than one wire in ten broken within 30 rope diameters.', ...given },
    thinner('diameter', 10, '>=', 'nominal', given),
  ],
};
