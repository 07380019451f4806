import type { RuleSetData } from '../rule-set.ts';
import { brokenInDiameters, inValley } from './words.ts';

const given = { provenance: 'published' as const, source: 'ASME B30.3, B30.5, B30.16 and B30.29' };

export const asmeB30RotationResistant: RuleSetData = {
  id: 'asme-b30-rotation-resistant',
  title: 'Rotation-resistant crane ropes (ASME B30)',
  edition: 'ASME B30.3, B30.5, B30.16 and B30.29',
  scope: { text: 'Rotation-resistant ropes under these volumes.', duties: ['crane'], ropes: { rotationResistant: true } },
  clauses: [brokenInDiameters('in-6d', 6, 2, '>=', given), brokenInDiameters('in-30d', 30, 4, '>=', given), inValley(1, '>=', given)],
};
