import type { RuleSetData } from '../rule-set.ts';
import { brokenInStrand, markedCorrosion, thinnerWires } from './words.ts';

const given = { provenance: 'published' as const, source: 'California Title 8, section 7135' };

export const californiaMineHoist: RuleSetData = {
  id: 'california-mine-hoist',
  title: 'Mine hoist ropes, California',
  edition: 'Title 8, section 7135',
  scope: { text: 'Hoisting ropes of mines.', duties: ['mine-hoist'] },
  caution: 'The rule also sets safety factors when new and at discard by length, which need the load.',
  clauses: [
    brokenInStrand('in-strand', 6, '>=', given),
    // Worn to 65 % of the original diameter is a loss of 35 %.
    { ...thinnerWires(35, '>=', given), id: 'crown-wires' },
    brokenInStrand('in-worn-strand', 3, '>', { ...given, consequence: 'inform', sentence: 'More than three wires broken in one strand: discard where the section of its wires is worn by more than 30 % as well, which the competent person has to measure.' }),
    markedCorrosion(given),
  ],
};
