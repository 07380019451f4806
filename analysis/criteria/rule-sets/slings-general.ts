import type { RuleSetData } from '../rule-set.ts';
import { brokenInDiameters, brokenInLay, brokenInStrand, thinner, thinnerWires } from './words.ts';

const given = { provenance: 'published' as const, source: 'general sling rule, as printed' };

export const slingsGeneral: RuleSetData = {
  id: 'slings-general',
  title: 'Wire rope slings',
  edition: 'general rule',
  scope: { text: 'Slings of wire rope.', duties: ['sling'], proposedFor: ['sling'] },
  clauses: [brokenInStrand('in-strand', 5, '>=', given), brokenInLay('in-lay', 10, '>=', given), thinnerWires(100 / 3, '>=', given), thinner('diameter', 10, '>=', 'nominal', given)],
};

const russian = { provenance: 'published' as const, source: 'Russian sling rule' };

export const slingsRussia: RuleSetData = {
  id: 'slings-russia',
  title: 'Wire rope slings, Russia',
  edition: 'sling rule as printed',
  scope: { text: 'Slings of wire rope.', duties: ['sling'] },
  clauses: [brokenInDiameters('in-3d', 3, 4, '>=', russian), brokenInDiameters('in-6d', 6, 6, '>=', russian), brokenInDiameters('in-30d', 30, 16, '>=', russian)],
};
