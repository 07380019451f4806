import type { Clause } from '../rule-set.ts';

/** Clauses that many sets share, so that one thing is said in one way. Numbers and sources stay with each set. */
type Given = Pick<Clause, 'provenance' | 'source'>;

export function areaOver(id: string, length: number, limit: number, comparator: Clause['comparator'], given: Given & Pick<Clause, 'looseWiresCount' | 'consequence' | 'ropes'>): Clause {
  return {
    id, measure: 'area-reduction', window: { length, unit: 'd' }, limit: { kind: 'number', value: limit }, comparator, unit: '%',
    needs: 'LMA trace, broken wires, rope diameter',
    sentence: `Loss of metallic area by wear, corrosion and broken wires together in the worst length of ${length} rope diameters.`, looseWiresCount: true, ...given,
  };
}

export function brokenInLay(id: string, count: number, comparator: Clause['comparator'], given: Given & Partial<Clause>): Clause {
  return {
    id, measure: 'broken-wires', window: { length: 1, unit: 'lay' }, limit: { kind: 'number', value: count }, comparator, unit: 'wires',
    needs: 'broken wires by place, lay length', sentence: 'Broken wires in the worst single lay of the rope.', ...given,
  };
}

export function brokenInStrand(id: string, count: number, comparator: Clause['comparator'], given: Given & Partial<Clause>): Clause {
  return {
    id, measure: 'broken-wires-in-strand', window: { length: 1, unit: 'lay' }, limit: { kind: 'number', value: count }, comparator, unit: 'wires',
    needs: 'broken wires counted by strand', sentence: 'Broken wires in one strand within the worst lay.', ...given,
  };
}

export function brokenInDiameters(id: string, diameters: number, count: number, comparator: Clause['comparator'], given: Given & Partial<Clause>): Clause {
  return {
    id, measure: 'broken-wires', window: { length: diameters, unit: 'd' }, limit: { kind: 'number', value: count }, comparator, unit: 'wires',
    needs: 'broken wires by place, rope diameter', sentence: `Broken wires in the worst length of ${diameters} rope diameters.`, ...given,
  };
}

export function inValley(count: number, comparator: Clause['comparator'], given: Given & Partial<Clause>): Clause {
  return {
    id: 'valley', measure: 'broken-wires-in-valley', window: { length: 1, unit: 'lay' }, limit: { kind: 'number', value: count }, comparator, unit: 'wires',
    needs: 'visual count in the valleys', sentence: 'Wires broken in the valley between strands within one lay: such breaks point to damage inside.', ...given,
  };
}

export function atTermination(count: number, comparator: Clause['comparator'], given: Given & Partial<Clause>): Clause {
  return {
    id: 'termination', measure: 'broken-wires-at-termination', window: { length: 1, unit: 'lay' }, limit: { kind: 'number', value: count }, comparator, unit: 'wires',
    needs: 'visual count at the end attachments', sentence: 'Wires broken at an end attachment.', ...given,
  };
}

export function thinner(id: string, percent: number, comparator: Clause['comparator'], reference: NonNullable<Clause['reference']>, given: Given & Partial<Clause>): Clause {
  const from = { nominal: 'the nominal diameter', baseline: "the rope's own baseline diameter", 'running-in': 'the diameter just after running-in' }[reference];
  return {
    id, measure: 'diameter-reduction', window: null, limit: { kind: 'number', value: percent }, comparator, unit: '%', reference,
    needs: 'diameter measurements', sentence: `Reduction of the rope diameter, counted from ${from}.`, ...given,
  };
}

export function thinnerWires(percent: number, comparator: Clause['comparator'], given: Given & Partial<Clause>): Clause {
  return {
    id: 'outer-wire-wear', measure: 'outer-wire-wear', window: null, limit: { kind: 'number', value: percent }, comparator, unit: '%',
    needs: 'wear of outer wires, measured', sentence: 'Loss of the original diameter of the outer wires.', ...given,
  };
}

/** Corrosion where the rule gives no number: from `high` (rough to the touch) on it is taken as what the rule means. */
export function markedCorrosion(given: Given & Partial<Clause>): Clause {
  return {
    id: 'corrosion', measure: 'corrosion-severity', window: null, limit: { kind: 'number', value: 60 }, comparator: '>=', unit: '% severity',
    needs: 'visual grade of corrosion', sentence: 'Corrosion. The rule names no number; here a grade of high (60 % severity) counts as reached, and the competent person decides.', ...given,
    source: `${given.source}; the grade is common practice`,
  };
}

const seen = (id: 'distortion' | 'heat-damage' | 'end-attachment', needs: string, sentence: string) => (given: Given & Partial<Clause>): Clause => ({
  id, measure: id, window: null, limit: { kind: 'number', value: 1 }, comparator: '>=', unit: 'noted', needs, sentence, ...given,
});
export const distorted = seen('distortion', 'visual inspection for distortion', 'Kinks, bird-caging, crushing, protruding core or strands: any distortion of the rope structure.');
export const heated = seen('heat-damage', 'visual inspection for heat damage', 'Traces of heat or of an electric arc.');
export const badAttachment = seen('end-attachment', 'inspection of the end attachments', 'An end attachment that is cracked, deformed, worn, corroded, slipped or not properly made.');
