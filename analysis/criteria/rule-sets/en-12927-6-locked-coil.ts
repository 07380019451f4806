import type { RuleSetData } from '../rule-set.ts';
import { areaOver } from './words.ts';

const given = { provenance: 'disputed' as const, source: 'EN 12927-6 as remembered; the Italian report form prints 6, 10 and 25 % instead' };

export const en12927LockedCoil: RuleSetData = {
  id: 'en-12927-6-locked-coil',
  title: 'Full-locked coil ropes: reduction of metallic area (EN 12927-6, from memory)',
  edition: 'EN 12927-6:2004 / EN 12927:2019',
  scope: { text: 'Full-locked coil track ropes.', duties: ['ropeway-track', 'funicular'], ropes: { cores: ['locked-coil'] } },
  caution: 'Sources disagree on the limits for locked coil ropes: confirm against your copy of the standard.',
  clauses: [areaOver('area-30d', 30, 5, '>=', given), areaOver('area-200d', 200, 10, '>=', given)],
  intervals: [{ id: 'european-norm', months: 36, when: {}, provenance: 'published', sentence: 'At least every three years; history and results may shorten it.', source: 'European ropeway norm, as quoted in print' }],
};
