import type { RuleSetData } from '../rule-set.ts';
import { brokenInLay, brokenInStrand, inValley } from './words.ts';

const given = { provenance: 'published' as const, source: 'ASME B30.4, B30.5, B30.6, B30.7, B30.8 and B30.29' };

export const asmeB30SixInALay: RuleSetData = {
  id: 'asme-b30-six-in-a-lay',
  title: 'Derricks, mobile, floating and portal cranes, running ropes (ASME B30)',
  edition: 'ASME B30.4, B30.5, B30.6, B30.7, B30.8 and B30.29',
  scope: { text: 'Running ropes of cranes and winches under B30.4 to B30.8 or B30.29.', duties: ['crane'], ropes: { rotationResistant: false } },
  clauses: [brokenInLay('in-lay', 6, '>=', given), brokenInStrand('in-strand', 3, '>=', given), inValley(1, '>=', given)],
};
