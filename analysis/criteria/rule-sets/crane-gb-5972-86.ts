import type { RuleSetData } from '../rule-set.ts';
import { brokenInLay, thinner, thinnerWires } from './words.ts';

const given = { provenance: 'published' as const, source: 'crane rule of the GB 5972-86 era, as reprinted' };

export const craneGb597286: RuleSetData = {
  id: 'crane-gb-5972-86',
  title: 'Crane ropes, old rule (superseded)',
  edition: 'GB 5972-86 era',
  scope: { text: 'Crane ropes; kept to read old reports.', duties: ['crane'] },
  caution: 'Superseded. In ropes of mixed wires a thick wire counts 1.7, and half the count holds for molten metal: neither is worked out here.',
  clauses: [
    brokenInLay('in-lay', 10, '>=', { ...given, limit: { kind: 'share-of-wires', percent: 10, of: 'rope' }, sentence: 'A tenth of all wires broken within one lay.' }),
    thinnerWires(40, '>=', given),
    thinner('diameter', 7, '>=', 'nominal', given),
  ],
};
