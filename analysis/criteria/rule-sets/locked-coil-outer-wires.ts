import type { RuleSetData } from '../rule-set.ts';

export const lockedCoilOuterWires: RuleSetData = {
  id: 'locked-coil-outer-wires',
  title: 'Locked coil ropes: broken outer wires side by side',
  edition: 'Italian report form, D.D. 144/2016',
  scope: { text: 'Full-locked and half-locked coil ropes.', duties: ['ropeway-track', 'funicular'], proposedFor: ['ropeway-track', 'funicular', 'ropeway-haul', 'unknown'], ropes: { cores: ['locked-coil'] } },
  clauses: [{
    id: 'adjacent-outer-wires', measure: 'adjacent-broken-outer-wires', window: { length: 1, unit: 'lay' }, limit: { kind: 'number', value: 1 }, comparator: '>=', unit: 'pairs',
    provenance: 'published', needs: 'outer wires noted as adjacent, or by number',
    sentence: 'Two neighbouring outer wires broken, or two with one sound wire between them, less than one lay of the outer wires apart: a wire may climb out of the rope, whatever the area left.',
    source: 'Italian report form, D.D. 144/2016; an Austrian ordinance forbids breaks that let a wire climb out',
  }],
};
