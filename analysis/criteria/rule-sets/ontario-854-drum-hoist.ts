import type { RuleSetData } from '../rule-set.ts';
import { brokenInLay, markedCorrosion } from './words.ts';

const given = { provenance: 'disputed' as const, source: 'Ontario Regulation 854, section 228, from memory and doubtful' };

export const ontario854DrumHoist: RuleSetData = {
  id: 'ontario-854-drum-hoist',
  title: 'Drum hoist ropes, Ontario',
  edition: 'Regulation 854, section 228',
  scope: { text: 'Ropes of drum hoists in mines. Friction, tail and guide ropes have lower limits (15 to 25 % loss) that are not held here.', duties: ['mine-hoist'] },
  caution: 'Every figure is from memory and doubtful: confirm against the regulation before use. The elongation of test pieces is not held here.',
  clauses: [
    { id: 'strength', measure: 'strength-loss', window: null, limit: { kind: 'number', value: 10 }, comparator: '>', unit: '%', needs: 'LMA trace and broken wires', sentence: 'Strength below 90 % of that of the new rope; estimated here from the loss of metallic area.', ...given },
    brokenInLay('in-lay', 5, '>', { ...given, limit: { kind: 'share-of-wires', percent: 5, of: 'rope' }, sentence: 'More than 5 % of the wires, fillers excluded, broken within one lay.' }),
    markedCorrosion(given),
  ],
};
