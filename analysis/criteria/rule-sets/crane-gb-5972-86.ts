import type { RuleSetData } from '../rule-set.ts';
import { brokenInLay, thinner, thinnerWires } from './words.ts';

const given = { provenance: 'published' as const, source: 'crane rule of the GB 5972-86 era, as reprinted' };

/** Printed as a tenth, with 12 of 114 and 22 of 222 wires as its counts: 22.2 cannot be the limit for 222. This share gives both. */
const PRINTED_SHARE = 9.9;

export const craneGb597286: RuleSetData = {
  id: 'crane-gb-5972-86',
  title: 'Crane ropes, old rule (superseded)',
  edition: 'GB 5972-86 era',
  scope: { text: 'Crane ropes; kept to read old reports.', duties: ['crane'] },
  caution: 'Superseded. In ropes of mixed wires a thick wire counts 1.7, and half the count holds for molten metal: neither is worked out here.',
  clauses: [
    brokenInLay('in-lay', 10, '>=', { ...given, limit: { kind: 'share-of-wires', percent: PRINTED_SHARE, of: 'rope' }, sentence: 'A tenth of all wires broken within one lay, as printed: 12 of 114, 22 of 222.' }),
    thinnerWires(40, '>=', given),
    thinner('diameter', 7, '>=', 'nominal', given),
  ],
};
