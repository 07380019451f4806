import type { RuleSetData } from '../rule-set.ts';
import { areaOver } from './words.ts';

const given = { provenance: 'published' as const, source: 'Vorarlberg LGBl 55/2000, section 21(4)' };

export const vorarlberg2000TrackLocked: RuleSetData = {
  id: 'vorarlberg-2000-track-locked',
  title: 'Ropeways, Austrian state ordinance: full-locked track ropes',
  edition: 'LGBl 55/2000',
  scope: { text: 'Ropeway full-locked track ropes under the ordinance of Vorarlberg.', duties: ['ropeway-track', 'funicular'], proposedFor: ['ropeway-track', 'funicular'], ropes: { cores: ['locked-coil'] } },
  // The ordinance speaks of a reduction that goes beyond the limit.
  clauses: [areaOver('area-30d', 30, 5, '>', given), areaOver('area-200d', 200, 10, '>', given)],
};
