import type { Clause, RuleSetData } from '../rule-set.ts';
import { atTermination, brokenInDiameters, brokenInLay, thinner } from './words.ts';

const given = { provenance: 'published' as const, source: 'ASME B30.19' };
const resistant: Clause['ropes'] = { rotationResistant: true };

export const asmeB3019Cableways: RuleSetData = {
  id: 'asme-b30-19-cableways',
  title: 'Cableways for material handling (ASME B30.19)',
  edition: 'ASME B30.19',
  scope: { text: 'Ropes of cableways that carry loads.', duties: ['ropeway-haul', 'ropeway-track'] },
  clauses: [
    brokenInDiameters('in-6d', 6, 2, '>=', { ...given, ropes: resistant }),
    brokenInDiameters('in-30d', 30, 4, '>=', { ...given, ropes: resistant }),
    thinner('diameter', 5, '>', 'nominal', given),
    brokenInLay('standing-in-lay', 2, '>', { ...given, sentence: 'Standing ropes: wires broken within one lay.' }),
    atTermination(1, '>', { ...given, id: 'standing-termination' }),
  ],
  intervals: [{ id: 'yearly', months: 12, when: {}, provenance: 'published', sentence: 'A periodic inspection at least every year, or every 1000 hours of work where that comes first.', source: 'ASME B30.19' }],
};
