import type { RuleSetData } from '../rule-set.ts';

const source = 'Quebec r.14, section 297';

export const quebecGuideRope: RuleSetData = {
  id: 'quebec-guide-rope',
  title: 'Guide and rubbing ropes of shafts, Quebec: interval of the magnetic test',
  edition: 'r.14, section 297',
  scope: { text: 'Guide and rubbing ropes of mine shafts.', duties: ['mine-guide'], proposedFor: ['mine-guide'] },
  clauses: [],
  intervals: [
    { id: 'first', months: 12, when: { firstInspection: true }, provenance: 'published', sentence: 'A first electromagnetic test within twelve months of installation.', source },
    { id: 'usual', months: 6, when: { firstInspection: false, lossUpToPercent: 15 }, provenance: 'published', sentence: 'After that at least every six months.', source },
    { id: 'loss-above-15', months: 3, when: { firstInspection: false, lossAbovePercent: 15 }, provenance: 'published', sentence: 'At least every three months once the loss goes beyond 15 %.', source },
  ],
};
