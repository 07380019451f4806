import type { RuleSetData } from '../rule-set.ts';
import { badAttachment, brokenInDiameters, distorted, heated, markedCorrosion, thinner } from './words.ts';

const given = { provenance: 'published' as const, source: '29 CFR 1926.1413(a)(2)' };

export const cfr29RotationResistant: RuleSetData = {
  id: 'cfr-29-1926-1413-rotation-resistant',
  title: 'Construction cranes, rotation-resistant ropes: 29 CFR 1926.1413',
  edition: '29 CFR 1926.1413, categories I to III',
  scope: { text: 'Rotation-resistant ropes of cranes and derricks in construction.', duties: ['crane'], ropes: { rotationResistant: true } },
  clauses: [
    brokenInDiameters('in-6d', 6, 2, '>=', given),
    brokenInDiameters('in-30d', 30, 4, '>=', given),
    thinner('diameter', 5, '>', 'nominal', given),
    distorted({ ...given, sentence: 'Protrusion of the core or other distortion that points to failure of the core.' }),
    markedCorrosion(given), heated(given), badAttachment(given),
  ],
};
