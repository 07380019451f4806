import type { Clause } from '../rule-set.ts';

/** Broken-wire area in one lay as a share of the area of all wires. */
export function brokenAreaInLay(percent: number, source: string): Clause {
  return {
    id: 'broken-area', measure: 'broken-wire-area', window: { length: 1, unit: 'lay' }, limit: { kind: 'number', value: percent }, comparator: '>=', unit: '%', provenance: 'published',
    needs: 'broken wires by place, area of a wire, lay length', sentence: `Area of the wires broken within one lay reaches ${percent} % of the area of all wires.`, source,
  };
}
