import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completeGeometry } from '../../analysis/rope/complete-geometry.ts';
import { readConstruction } from '../../analysis/rope/construction.ts';
import { nominalOuterWire, nominalShapedWire, touchingCircle } from '../../analysis/rope/outer-wire.ts';
import type { RopeData } from '../../analysis/rope/record.ts';

const complete = (rope: Partial<RopeData>) => completeGeometry({ id: 'r', ...rope } as RopeData);
const source = (rope: Partial<RopeData>, field: string) => complete(rope).sources.find((each) => each.field === field)?.source;

describe('what the record states', () => {
  it('holds against every handbook', () => {
    const stated = { construction: '6x19S-FC', diameter_mm: 20, grade_mpa: 1770, metallic_area_mm2: 150, minimum_breaking_force_kn: 230, lay_length_mm: 131, wires: 120, core: 'steel' as const, lay: 'lang' as const };
    expect(complete(stated)).toMatchObject({ metallicAreaMm2: 150, minimumBreakingForceKn: 230, layLengthMm: 131, wires: 120, core: 'steel', lay: 'lang' });
    for (const field of ['metallic_area_mm2', 'minimum_breaking_force_kn', 'lay_length_mm', 'wires', 'core', 'lay', 'diameter_mm']) expect(source(stated, field)).toBe('stated in the record');
  });
  it('is completed with the ground named for each field', () => {
    const rope = { construction: '6x19S-FC', diameter_mm: 20, grade_mpa: 1770 };
    expect(source(rope, 'metallic_area_mm2')).toBe('handbook factor C 0.384 (6x19 class, fibre core; EN 12385, published)');
    expect(source(rope, 'minimum_breaking_force_kn')).toContain('handbook factor K 0.33 (6x19 class');
    expect(source(rope, 'lay_length_mm')).toContain('about 6 d');
    expect(source(rope, 'core')).toBe('construction 6x19S-FC');
    expect(source({ ...rope, construction: '6x19M-FC' }, 'mass_kg_per_m')).toContain('a second table differs');
    expect(source({ ...rope, construction: 'full-locked coil' }, 'metallic_area_mm2')).toContain('from memory');
    expect(source({ ...rope, construction: '6x25F-FC' }, 'wires_per_strand')).toContain('6 filler wires not counted');
  });
  it('names a source for every field that has a value, and none for one that has not', () => {
    const names: Record<string, string> = { diameter_mm: 'diameterMm', lay_length_mm: 'layLengthMm', strands: 'strands', wires: 'wires', outer_strand_wires: 'outerStrandWires', wires_per_strand: 'wiresPerStrand', outer_wires: 'outerWires', metallic_area_mm2: 'metallicAreaMm2', mass_kg_per_m: 'massKgPerM', grade_mpa: 'gradeMpa', minimum_breaking_force_kn: 'minimumBreakingForceKn', outer_wire_diameter_mm: 'outerWireDiameterMm', outer_wire_share_percent: 'outerWireSharePercent', core: 'core', lay: 'lay' };
    for (const rope of [{}, { construction: '6x36WS-IWRC', diameter_mm: 30 }, { construction: 'full-locked coil', diameter_mm: 40, outer_wires: 24 }, { diameter_mm: 10, wires: 42, strands: 6 }, { construction: '18x7', grade_mpa: 1960 }]) {
      const geometry = complete(rope) as unknown as Record<string, unknown>;
      const sourced = new Set(complete(rope).sources.map((each) => each.field));
      for (const [field, name] of Object.entries(names)) expect(geometry[name] !== null, `${JSON.stringify(rope)} ${field}`).toBe(sourced.has(field));
    }
  });
});

describe('what cannot be worked out', () => {
  it('stays unknown', () => {
    expect(complete({})).toMatchObject({ diameterMm: null, metallicAreaMm2: null, wires: null, core: null, minimumBreakingForceKn: null, outerWireSharePercent: null });
    expect(complete({ construction: '6x19S-FC' })).toMatchObject({ wires: 114, metallicAreaMm2: null, outerWireDiameterMm: null });
    expect(complete({ construction: '6x19S-FC', diameter_mm: 20 }).minimumBreakingForceKn).toBeNull();
    // Without a core neither column of the table holds.
    expect(complete({ construction: '6x19S', diameter_mm: 20 }).metallicAreaMm2).toBeNull();
    expect(complete({ construction: '6x19S', core: 'fibre', diameter_mm: 20 }).metallicAreaMm2).toBeCloseTo(153.6, 9);
    expect(complete({ construction: 'as supplied', diameter_mm: 20 }).metallicAreaMm2).toBeNull();
  });
  it('takes one of equal wires where the area is not known', () => {
    expect(complete({ wires: 200, diameter_mm: 40 }).outerWireSharePercent).toBeCloseTo(0.5, 12);
  });
});

describe('designations', () => {
  it.each([
    ['6x19S-FC', 19, true, 'fibre'], ['6 x 19 S - FC', 19, true, 'fibre'], ['6×19 (Seale) FC', 19, true, 'fibre'], ['6*19 Seale IWRC', 19, true, 'steel'], ['6X19 SEALE + IWRC', 19, true, 'steel'],
    ['6x36WS-IWRC', 36, false, 'steel'], ['6x36 Warrington-Seale, fibre core', 36, false, 'fibre'], ['6x19W+NFC', 19, false, 'fibre'], ['6x25 Filler SFC', 19, false, 'fibre'], ['6x25FI-EPIWRC', 19, false, 'steel'],
    ['8x36WS-PWRC', 36, false, 'steel'], ['6x7-WSC', 7, false, 'steel'], ['6x7', 7, false, null], ['haul rope 6x26WS-FC zinc', 26, false, 'fibre'],
  ])('%s', (text, wires, seale, core) => {
    expect(readConstruction(text)).toMatchObject({ wiresPerStrand: wires, seale, core });
  });
  it.each([['18x7', 'rotation-resistant', 18, 12], ['19x7', 'rotation-resistant', 19, 12], ['34x7-WSC', 'rotation-resistant', 34, 17], ['35xK7', 'rotation-resistant', 35, 16], ['4x36WS', 'rotation-resistant', 4, 4], ['6x36WS', 'stranded', 6, 6], ['1x37', 'spiral', 1, 1]])('%s is %s', (text, family, strands, outerStrands) => {
    expect(readConstruction(text)).toMatchObject({ family, strands, outerStrands });
  });
  it.each(['full-locked coil', 'Full locked coil rope', 'FLC 40', 'half-locked coil'])('%s', (text) => expect(readConstruction(text)).toMatchObject({ family: 'locked-coil', core: 'locked-coil' }));
  it.each(['', 'rope', 'x', '6x', 'x19'])('does not understand "%s"', (text) => expect(readConstruction(text)).toBeNull());
  it('never fails, whatever stands there', () => {
    fc.assert(fc.property(fc.string(), fc.nat(60), fc.nat(60), (text, a, b) => {
      for (const construction of [text, `${a}x${b}${text}`]) {
        const geometry = complete({ construction, diameter_mm: 20, grade_mpa: 1770 });
        for (const each of geometry.sources) if (typeof each.value === 'number') expect(Number.isFinite(each.value)).toBe(true);
      }
    }));
  });
});

describe('outer wires from the make [D]', () => {
  it('fits touching circles: three of D / 2.1547, six of D / 3', () => {
    expect(touchingCircle(6, 6)).toBeCloseTo(2, 12);
    expect(touchingCircle(1, 3)).toBeCloseTo(1 / (1 + 2 / Math.sqrt(3)), 12);
  });
  it('gives 6x7 a ninth of the rope diameter', () => expect(nominalOuterWire(18, 6, 6)).toBeCloseTo(2, 12));
  it('lays square wires once round a locked coil', () => {
    // 24 wires of width w on the circle through their middles: 24 w = pi (d - w).
    const width = nominalShapedWire(40, 24);
    expect(24 * width).toBeCloseTo(Math.PI * (40 - width), 9);
  });
  it('takes a stated count per strand or for the whole rope', () => {
    expect(complete({ construction: '6x19S-FC', outer_wires: 9 }).outerWires).toBe(54);
    expect(complete({ construction: '6x19S-FC', outer_wires: 54 }).outerWires).toBe(54);
    expect(complete({ construction: 'full-locked coil', outer_wires: 24 }).outerWires).toBe(24);
  });
});
