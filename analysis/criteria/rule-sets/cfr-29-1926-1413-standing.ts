import type { RuleSetData } from '../rule-set.ts';
import { atTermination, badAttachment, brokenInLay, distorted, heated, markedCorrosion, thinner } from './words.ts';

const given = { provenance: 'published' as const, source: '29 CFR 1926.1413(a)(2)' };

export const cfr29Standing: RuleSetData = {
  id: 'cfr-29-1926-1413-standing',
  title: 'Construction cranes, pendants and standing ropes: 29 CFR 1926.1413',
  edition: '29 CFR 1926.1413, categories I and II',
  scope: { text: 'Pendants and standing ropes of cranes and derricks in construction.', duties: ['crane-standing'], proposedFor: ['crane-standing'] },
  clauses: [
    brokenInLay('in-lay', 2, '>', { ...given, sentence: 'Wires broken within one lay beyond the end connections.' }),
    atTermination(1, '>', given),
    thinner('diameter', 5, '>', 'nominal', given),
    distorted(given), markedCorrosion(given), heated(given), badAttachment(given),
  ],
};
