import type { Construction } from './construction.ts';
import { readConstruction } from './construction.ts';
import type { RopeGeometry } from './geometry.ts';
import type { ClassFactors, CoreFactors } from './handbook-factors.ts';
import { breakingForce, classFactors, massPerMetre, metallicArea } from './handbook-factors.ts';
import { nominalOuterWire, nominalShapedWire } from './outer-wire.ts';
import type { RopeData } from './record.ts';

const STATED = 'stated in the record';

type Source = RopeGeometry['sources'][number];
type Found<T> = { readonly value: T; readonly source: string } | null;

interface SourceList {
  readonly list: Source[];
  take<T extends number | string>(field: string, unit: string, stated: T | null | undefined, worked: () => Found<T>): T | null;
}

/** Notes where each value comes from, and takes the stated one where there is one. */
function sourceList(): SourceList {
  const list: Source[] = [];
  return {
    list,
    take(field, unit, stated, worked) {
      const found = stated !== null && stated !== undefined ? { value: stated, source: STATED } : worked();
      if (found === null) return null;
      list.push({ field, value: found.value, unit, source: found.source });
      return found.value;
    },
  };
}

/**
 * Geometry of a rope: what the record states, and what can be worked out from its construction by the factors of EN 12385.
 * `sources` names every field that has a value and where the value comes from. Nothing is worked out without a ground for it:
 * without a grade there is no breaking force, without a diameter no area.
 */
export function completeGeometry(rope: RopeData): RopeGeometry {
  const make = rope.construction === undefined ? null : readConstruction(rope.construction);
  const sources = sourceList();
  const diameterMm = sources.take('diameter_mm', 'mm', rope.diameter_mm, () => null);
  const gradeMpa = sources.take('grade_mpa', 'N/mm2', rope.grade_mpa, () => null);
  const core = sources.take('core', '', rope.core, () => fromMake(make?.core ?? null, rope));
  const lay = sources.take('lay', '', rope.lay, () => null);
  const layLengthMm = sources.take('lay_length_mm', 'mm', rope.lay_length_mm, () => usualLay(diameterMm, core));
  const counts = wireCounts(rope, make, sources);
  const handbook = handbookOf(make, core);
  const metallicAreaMm2 = sources.take('metallic_area_mm2', 'mm2', rope.metallic_area_mm2, () => byFactor('C', handbook, diameterMm, (factors, d) => metallicArea(factors.area, d)));
  const massKgPerM = sources.take('mass_kg_per_m', 'kg/m', null, () => byFactor('W', handbook, diameterMm, (factors, d) => massPerMetre(factors.mass, d)));
  const minimumBreakingForceKn = sources.take('minimum_breaking_force_kn', 'kN', rope.minimum_breaking_force_kn, () =>
    gradeMpa === null ? null : byFactor('K', handbook, diameterMm, (factors, d) => breakingForce(factors.breaking, d, gradeMpa)));
  const outerWireDiameterMm = sources.take('outer_wire_diameter_mm', 'mm', null, () => outerWire(make, counts, diameterMm));
  const outerWireSharePercent = sources.take('outer_wire_share_percent', '%', null, () => outerWireShare(outerWireDiameterMm, make, metallicAreaMm2, counts.wires));
  return {
    diameterMm, layLengthMm, ...counts, metallicAreaMm2, massKgPerM, gradeMpa, minimumBreakingForceKn, outerWireDiameterMm, outerWireSharePercent,
    seale: make?.seale ?? false, core, lay, rotationResistant: make?.family === 'rotation-resistant', sources: sources.list,
  };
}

function fromMake<T extends number | string>(value: T | null, rope: RopeData): Found<T> {
  return value === null ? null : { value, source: `construction ${rope.construction}` };
}

function usualLay(diameter: number | null, core: RopeGeometry['core']): Found<number> {
  if (diameter === null) return null;
  if (core === 'locked-coil') return { value: 9 * diameter, source: 'about 9 d for the outer layer of a locked coil (8 to 10 d, common practice)' };
  return { value: 6 * diameter, source: 'about 6 d (specification text, published; 6 to 7 d are usual)' };
}

type Counts = Pick<RopeGeometry, 'strands' | 'wires' | 'outerStrandWires' | 'wiresPerStrand' | 'outerWires' | 'outerStrands'>;

function wireCounts(rope: RopeData, make: Construction | null, sources: SourceList): Counts {
  const strands = sources.take('strands', '', rope.strands, () => fromMake(make?.strands ?? null, rope));
  const wiresPerStrand = sources.take('wires_per_strand', '', null, () => perStrand(rope, make, strands));
  const outerStrands = make?.outerStrands ?? (make === null && strands !== null && strands <= 9 ? strands : null);
  const wires = sources.take('wires', '', rope.wires, () => strands === null || wiresPerStrand === null ? null
    : { value: strands * wiresPerStrand, source: `${strands} strands of ${wiresPerStrand} load-bearing wires; fillers and core wires not counted` });
  const outerStrandWires = sources.take('outer_strand_wires', '', null, () => outerStrands === null || wiresPerStrand === null ? null
    : { value: outerStrands * wiresPerStrand, source: `${outerStrands} outer strands of ${wiresPerStrand} load-bearing wires` });
  const outerWires = sources.take('outer_wires', '', statedOuterWires(rope, make, outerStrands, wiresPerStrand), () => {
    const each = make?.outerWiresPerStrand ?? null;
    return each === null || outerStrands === null ? null : { value: each * outerStrands, source: `${outerStrands} outer strands with ${each} outer wires each (derived from the construction)` };
  });
  return { strands, wires, outerStrandWires, wiresPerStrand, outerWires, outerStrands };
}

function perStrand(rope: RopeData, make: Construction | null, strands: number | null): Found<number> {
  if (make?.wiresPerStrand) {
    const fillers = make.fillerWiresPerStrand > 0 ? `, ${make.fillerWiresPerStrand} filler wires not counted` : '';
    return { value: make.wiresPerStrand, source: `construction ${rope.construction}${fillers}` };
  }
  if (rope.wires === undefined || strands === null || rope.wires % strands !== 0) return null;
  return { value: rope.wires / strands, source: 'stated wires divided by stated strands' };
}

/** A stated count no larger than one strand can hold is taken as per strand; a larger one as of the whole rope. */
function statedOuterWires(rope: RopeData, make: Construction | null, outerStrands: number | null, wiresPerStrand: number | null): number | null {
  if (rope.outer_wires === undefined) return null;
  if (make?.family === 'locked-coil' || outerStrands === null || wiresPerStrand === null) return rope.outer_wires;
  return rope.outer_wires < wiresPerStrand ? rope.outer_wires * outerStrands : rope.outer_wires;
}

interface Handbook {
  readonly row: ClassFactors & { readonly range?: string };
  readonly factors: CoreFactors;
  readonly core: string;
}

function handbookOf(make: Construction | null, core: RopeGeometry['core']): Handbook | null {
  const row = make?.factorClass ? classFactors(make.factorClass) : null;
  if (!make || !row) return null;
  // A class whose core is steel by its nature has one column only.
  const factors = row.fibre === null ? row.steel : core === 'fibre' ? row.fibre : core === 'steel' ? row.steel : null;
  if (factors === null) return null;
  const strandCore = make.strandCore && row.breakingWithStrandCore !== null;
  return {
    row, factors: strandCore ? { ...factors, breaking: row.breakingWithStrandCore! } : factors,
    core: row.fibre === null ? '' : core === 'fibre' ? ', fibre core' : strandCore ? ', wire strand core' : ', steel core',
  };
}

function byFactor(letter: 'C' | 'W' | 'K', handbook: Handbook | null, diameter: number | null, formula: (factors: CoreFactors, d: number) => number): Found<number> {
  if (handbook === null || diameter === null) return null;
  const { row, factors, core } = handbook;
  const factor = { C: factors.area, W: factors.mass, K: factors.breaking }[letter];
  const standing = row.provenance === 'memory' ? `from memory, ${row.range}; check against the maker's certificate`
    : row.provenance === 'disputed' && letter === 'W' ? 'EN 12385, published; a second table differs' : 'EN 12385, published';
  return { value: formula(factors, diameter), source: `handbook factor ${letter} ${factor} (${row.name}${row.name.includes(' ') ? '' : ' class'}${core}; ${standing})` };
}

function outerWire(make: Construction | null, counts: Counts, diameter: number | null): Found<number> {
  if (make === null || diameter === null) return null;
  const { outerWires, outerStrands } = counts;
  if (make.family === 'locked-coil') {
    if (!outerWires) return null;
    const width = nominalShapedWire(diameter, outerWires);
    // The shaped wire counts by its area: the round wire of the same area.
    return { value: width * Math.sqrt(4 / Math.PI), source: `derived: round wire of the area of one of ${outerWires} square outer wires` };
  }
  if (!outerWires || !outerStrands) return null;
  const each = outerWires / outerStrands;
  return { value: nominalOuterWire(diameter, outerStrands, each), source: `derived from the construction: ${outerStrands} touching outer strands with ${each} touching outer wires` };
}

function outerWireShare(delta: number | null, make: Construction | null, area: number | null, wires: number | null): Found<number> {
  if (delta !== null && area !== null) return { value: (100 * Math.PI * delta * delta) / 4 / area, source: 'derived: area of one nominal outer wire over the metallic area' };
  if (wires === null) return null;
  return { value: 100 / wires, source: `derived: one of ${wires} wires${make?.family === 'locked-coil' ? ' (outer shaped wires are larger)' : ' taken as equal'}` };
}
