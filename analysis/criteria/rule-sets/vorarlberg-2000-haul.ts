import type { RuleSetData } from '../rule-set.ts';
import { areaOver } from './words.ts';

const given = { provenance: 'published' as const, source: 'Vorarlberg LGBl 55/2000, section 21(4)' };

export const vorarlberg2000Haul: RuleSetData = {
  id: 'vorarlberg-2000-haul',
  title: 'Ropeways, Austrian state ordinance: haul ropes',
  edition: 'LGBl 55/2000',
  scope: { text: 'Ropeway haul ropes under the ordinance of Vorarlberg.', duties: ['ropeway-haul', 'funicular', 'surface-lift'], proposedFor: [], ropes: { cores: ['fibre', 'steel'] } },
  // The ordinance speaks of a reduction that goes beyond the limit.
  clauses: [areaOver('area-6d', 6, 6, '>', given), areaOver('area-40d', 40, 8, '>', given), areaOver('area-500d', 500, 25, '>', given)],
};
