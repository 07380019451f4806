import type { Clause } from '../rule-set.ts';
import { atTermination, distorted, heated, inValley } from './words.ts';

type TableChoice = NonNullable<Clause['ratedAgainst']>;
const remembered = { provenance: 'memory' as const, source: 'ISO 4309:2010, from memory' };

/** Clauses over 6d and 30d of the table of visible broken wires. */
export function tableClauses(choice: TableChoice, provenance: Clause['provenance'], source: string): Clause[] {
  return (['6d', '30d'] as const).map((window): Clause => ({
    id: `broken-wires-${window}`, measure: 'broken-wires', window: { length: window === '6d' ? 6 : 30, unit: 'd' }, limit: { kind: 'broken-wire-table', window, ...choice },
    comparator: '>=', unit: 'wires', provenance, needs: 'broken wires by place, rope category, lay, diameter',
    sentence: `Visible broken outer wires in the worst length of ${window === '6d' ? 6 : 30} rope diameters, against the table for the rope category. Not to be the only criterion on polymer sheaves, where wires break inside first.`, source,
  }));
}

/** What the standard asks of every rope beside the table. */
export function otherClauses(choice: TableChoice): Clause[] {
  return [
    inValley(2, '>=', remembered),
    atTermination(2, '>=', { ...remembered, consequence: 're-terminate' }),
    { id: 'diameter-severity', measure: 'diameter-severity', window: null, limit: { kind: 'number', value: 100 }, comparator: '>=', unit: '% severity', needs: 'diameter now and just after running-in, kind of core', sentence: 'Uniform decrease of diameter, rated in bands by the kind of core.', ...remembered, source: 'definitions published, bands from memory (ISO 4309:2010)' },
    { id: 'corrosion-severity', measure: 'corrosion-severity', window: null, limit: { kind: 'number', value: 100 }, comparator: '>=', unit: '% severity', needs: 'visual grade of corrosion', sentence: 'Corrosion outside or inside, as graded: heavy pitting with slack wires, or debris from the valleys, is discard.', ...remembered },
    { id: 'combined-severity', measure: 'combined-severity', window: { length: 30, unit: 'd' }, limit: { kind: 'number', value: 100 }, comparator: '>=', unit: '% severity', needs: 'broken wires, diameter and corrosion at one place', sentence: 'Severities of broken wires, diameter and corrosion found at the same place, added; one place is taken as 30 rope diameters.', ...remembered, ratedAgainst: choice },
    { id: 'waviness-running', measure: 'waviness', window: null, limit: { kind: 'number', value: 10 }, comparator: '>=', unit: '% of d', needs: 'gap under a straightedge', sentence: 'Waviness of a length that runs over a sheave or onto a drum: gap of a tenth of the diameter.', ...remembered },
    { id: 'waviness-standing', measure: 'waviness', window: null, limit: { kind: 'number', value: 100 / 3 }, comparator: '>=', unit: '% of d', needs: 'gap under a straightedge', sentence: 'Waviness of a length that never runs over a sheave or drum: gap of a third of the diameter.', ...remembered },
    { id: 'diameter-increase', measure: 'diameter-increase', window: null, limit: { kind: 'by-core', fibre: 10, steel: 5, rotationResistant: 5, lockedCoil: null }, comparator: '>=', unit: '%', reference: 'running-in', needs: 'diameter now and just after running-in', sentence: 'Increase of diameter: look for the cause and consider discard.', consequence: 'inform', ...remembered },
    distorted(remembered),
    heated(remembered),
  ];
}
