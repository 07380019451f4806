import type { RuleSetData } from '../rule-set.ts';
import { areaOver } from './words.ts';

const given = { provenance: 'published' as const, source: 'Vorarlberg LGBl 55/2000, section 21(4)' };

export const vorarlberg2000Tension: RuleSetData = {
  id: 'vorarlberg-2000-tension',
  title: 'Ropeways, Austrian state ordinance: tension ropes',
  edition: 'LGBl 55/2000',
  scope: { text: 'Ropeway tension ropes under the ordinance of Vorarlberg.', duties: ['ropeway-tension'], proposedFor: ['ropeway-tension'], ropes: {} },
  // The ordinance speaks of a reduction that goes beyond the limit.
  clauses: [areaOver('area-6d', 6, 4, '>', given), areaOver('area-40d', 40, 8, '>', given)],
};
