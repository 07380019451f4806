import type { RuleSetData } from '../rule-set.ts';
import { areaOver, thinner } from './words.ts';

const source = 'Italian authority rope report form, point 2.5, technical annex to D.D. 144/2016, citing EN 12927-6:2005, 6.1.4';
const given = { provenance: 'published' as const, source };

export const ropewayAreaItaly2016: RuleSetData = {
  id: 'ropeway-area-italy-2016',
  title: 'Ropeway and funicular ropes: reduction of metallic area (Italian report form)',
  edition: 'D.D. 144/2016, after EN 12927-6:2005',
  scope: {
    text: 'Ropes of passenger ropeways and funiculars. Printed for full-locked track ropes; a footnote prints the same figures for stranded ropes.',
    duties: ['funicular', 'ropeway-haul', 'ropeway-track', 'ropeway-tension', 'surface-lift'],
    proposedFor: ['funicular', 'ropeway-haul', 'ropeway-track', 'ropeway-tension', 'surface-lift', 'unknown'],
  },
  caution: 'For full-locked coil ropes an Austrian ordinance gives 5 % over 30 d and 10 % over 200 d instead: the competent person chooses.',
  clauses: [
    // The form passes a rope while the reduction is below the limit, so the limit itself is discard.
    areaOver('area-6d', 6, 6, '>=', given),
    areaOver('area-30d', 30, 10, '>=', given),
    areaOver('area-500d', 500, 25, '>=', given),
    thinner('diameter', 10, '>=', 'nominal', given),
    {
      id: 'lay-length', measure: 'lay-length-change', window: null, limit: { kind: 'number', value: 15 }, comparator: '>', unit: '%',
      needs: 'lay length, measured, and that of the new rope', sentence: 'Change of the lay length, longer or shorter.', ...given,
    },
  ],
  intervals: [{ id: 'european-norm', months: 36, when: {}, provenance: 'published', sentence: 'The European norm asks for a magnetic test at least every three years (every four in its older edition); history and results may shorten it.', source: 'European ropeway norm, as quoted in print' }],
};
