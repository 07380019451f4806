import type { RuleSetData } from '../rule-set.ts';
import { areaOver } from './words.ts';

export const hongKong265a: RuleSetData = {
  id: 'hong-kong-265a',
  title: 'Funicular hauling ropes: reduction of area, Hong Kong Cap. 265A',
  edition: 'Cap. 265A, regulation 11',
  scope: { text: 'Hauling ropes of a funicular railway.', duties: ['funicular'], proposedFor: ['funicular'] },
  clauses: [{
    ...areaOver('area-40d', 40, 25, '>=', { provenance: 'published', source: 'Cap. 265A regulation 11(1)(b)(i) and 11(2)', consequence: 'inform' }),
    sentence: 'Loss of metallic area in 40 rope diameters at which the company must be told at once; several breaks of one wire count once, loose wires and those of deformed strands count as broken.',
  }],
};
