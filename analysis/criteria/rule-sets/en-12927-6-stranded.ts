import type { RuleSetData } from '../rule-set.ts';
import { areaOver } from './words.ts';

const given = { provenance: 'memory' as const, source: 'EN 12927-6 as remembered; equal to the Italian report form, which is published' };

export const en12927Stranded: RuleSetData = {
  id: 'en-12927-6-stranded',
  title: 'Stranded ropeway ropes: reduction of metallic area (EN 12927-6, from memory)',
  edition: 'EN 12927-6:2004 / EN 12927:2019',
  scope: { text: 'Stranded haul, carrying-hauling and tension ropes of passenger ropeways and funiculars.', duties: ['funicular', 'ropeway-haul', 'ropeway-tension', 'surface-lift'], ropes: { cores: ['fibre', 'steel'] } },
  caution: 'The figures are from memory: confirm against your copy of the standard.',
  clauses: [areaOver('area-6d', 6, 6, '>=', given), areaOver('area-30d', 30, 10, '>=', given), areaOver('area-500d', 500, 25, '>=', given)],
  intervals: [{ id: 'european-norm', months: 36, when: {}, provenance: 'published', sentence: 'At least every three years; history and results may shorten it.', source: 'European ropeway norm, as quoted in print' }],
};
