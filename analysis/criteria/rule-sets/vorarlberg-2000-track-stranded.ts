import type { RuleSetData } from '../rule-set.ts';
import { areaOver } from './words.ts';

const given = { provenance: 'published' as const, source: 'Vorarlberg LGBl 55/2000, section 21(4)' };

export const vorarlberg2000TrackStranded: RuleSetData = {
  id: 'vorarlberg-2000-track-stranded',
  title: 'Ropeways, Austrian state ordinance: stranded-spiral track ropes',
  edition: 'LGBl 55/2000',
  scope: { text: 'Ropeway stranded-spiral track ropes under the ordinance of Vorarlberg.', duties: ['ropeway-track'], proposedFor: ['ropeway-track'], ropes: { cores: ['fibre', 'steel'] } },
  // The ordinance speaks of a reduction that goes beyond the limit.
  clauses: [areaOver('area-30d', 30, 8, '>', given), areaOver('area-200d', 200, 15, '>', given)],
};
