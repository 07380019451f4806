import type { RuleSetData } from '../rule-set.ts';
import { brokenInLay, brokenInStrand, inValley } from './words.ts';

const given = { provenance: 'published' as const, source: 'ASME B30.2, B30.3 and B30.16' };

export const asmeB30TwelveInALay: RuleSetData = {
  id: 'asme-b30-twelve-in-a-lay',
  title: 'Overhead, gantry and tower cranes and overhead hoists, running ropes (ASME B30)',
  edition: 'ASME B30.2, B30.3 and B30.16',
  scope: { text: 'Running ropes of cranes and hoists under B30.2, B30.3 or B30.16.', duties: ['crane'], ropes: { rotationResistant: false } },
  clauses: [brokenInLay('in-lay', 12, '>=', given), brokenInStrand('in-strand', 4, '>=', given), inValley(1, '>=', given)],
};
