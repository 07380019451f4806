import type { RuleSetData } from '../rule-set.ts';
import { badAttachment, brokenInLay, brokenInStrand, distorted, heated, markedCorrosion, thinner } from './words.ts';

const given = { provenance: 'published' as const, source: '29 CFR 1926.1413(a)(2)' };

export const cfr29Running: RuleSetData = {
  id: 'cfr-29-1926-1413-running',
  title: 'Construction cranes, running ropes: 29 CFR 1926.1413',
  edition: '29 CFR 1926.1413, categories I and II',
  scope: { text: 'Running ropes of cranes and derricks in construction.', duties: ['crane'], ropes: { rotationResistant: false } },
  clauses: [
    brokenInLay('in-lay', 6, '>=', given),
    brokenInStrand('in-strand', 3, '>=', given),
    thinner('diameter', 5, '>', 'nominal', given),
    distorted(given), markedCorrosion(given), heated(given), badAttachment(given),
  ],
};
