import type { RopeGeometry } from '../rope/geometry.ts';
import type { Survey } from '../rope/survey.ts';
import { wearAdjustedBreakLimit } from './wear-factor.ts';
import type { Provenance } from './criterion.ts';
import { brokenWireLimits, ropeCategory } from './rope-category.ts';
import type { Clause, ClauseWindow, Limit } from './rule-set.ts';

export interface FoundLimit {
  readonly limit: number;
  readonly note: string;
  /** Set where the cell that was used has a standing of its own. */
  readonly provenance: Provenance | null;
}

export type ResolvedLimit = FoundLimit | { readonly needs: string };

/** The limit of a clause for this rope, with how it was found; or what is missing. */
export function resolveLimit(clause: Clause, geometry: RopeGeometry): ResolvedLimit {
  const { limit } = clause;
  if (limit.kind === 'number') return { limit: limit.value, note: '', provenance: null };
  if (limit.kind === 'share-of-wires') return shareOfWires(limit, geometry);
  if (limit.kind === 'by-core') return byCore(limit, geometry);
  return tableCell(limit, geometry);
}

function shareOfWires(limit: Extract<Limit, { kind: 'share-of-wires' }>, geometry: RopeGeometry): ResolvedLimit {
  const of = { rope: geometry.wires, strand: geometry.wiresPerStrand, 'outer-wires': geometry.outerWires ?? null }[limit.of];
  const words = { rope: 'wires of the rope', strand: 'wires of one strand', 'outer-wires': 'outer wires' }[limit.of];
  if (of === null) return { needs: `the number of ${words}` };
  // Percent times count first: 5 % of 120 is then exactly 6.
  const core = limit.of === 'rope' && geometry.core === 'steel' ? '; the wires of a steel core are not counted, which the rule leaves open' : '';
  return { limit: (limit.percent * of) / 100, note: `${limit.percent} % of ${of} ${words}${core}`, provenance: null };
}

function byCore(limit: Extract<Limit, { kind: 'by-core' }>, geometry: RopeGeometry): ResolvedLimit {
  const value = geometry.rotationResistant ? limit.rotationResistant
    : geometry.core === 'fibre' ? limit.fibre : geometry.core === 'steel' ? limit.steel : geometry.core === 'locked-coil' ? limit.lockedCoil : null;
  if (value !== null) return { limit: value, note: '', provenance: null };
  return { needs: geometry.core === null ? 'the kind of core (fibre or steel)' : 'nothing that helps: the rule gives no limit for this kind of core' };
}

function tableCell(limit: Extract<Limit, { kind: 'broken-wire-table' }>, geometry: RopeGeometry): ResolvedLimit {
  if (geometry.outerStrandWires === null) return { needs: 'the number of load-bearing wires in the outer strands (construction, or strands and wires)' };
  const category = ropeCategory({
    outerStrandWires: geometry.outerStrandWires, seale: geometry.seale, wiresPerStrand: geometry.wiresPerStrand, rotationResistant: geometry.rotationResistant,
    outerStrands: geometry.outerStrands ?? geometry.strands, reading: limit.reading, warringtonSeale: isWarringtonSeale(geometry),
  });
  if (category === null) return { needs: 'the rope category number from the rope maker: the table has no row for this make' };
  const lay = geometry.lay ?? 'lang';
  const found = brokenWireLimits(category, lay, limit.mechanism, limit.drum, limit.reading === 'second-reprint' ? 'second-reprint' : 'first');
  const layNote = geometry.lay === null && limit.drum === 'single-layer' && category.table === 'single-layer' ? '; lay not stated, the lower Lang-lay value is used' : '';
  return { limit: limit.window === '6d' ? found.over6d : found.over30d, note: `${category.note}${layNote}`, provenance: found.provenance };
}

const WARRINGTON_SEALE: ReadonlySet<number> = new Set([26, 31, 36, 41]);

function isWarringtonSeale(geometry: RopeGeometry): boolean {
  return !geometry.seale && geometry.wiresPerStrand !== null && WARRINGTON_SEALE.has(geometry.wiresPerStrand);
}

/** The limit for worn wires: the greatest wear noted at this inspection lowers it. Without a note of wear it stays, and that is said. */
export function loweredByWear(limit: FoundLimit, survey: Survey): FoundLimit {
  const wear = survey.notes.filter((note) => note.kind === 'outer-wire-wear' && note.value !== null && note.unit.trim() === '%').map((note) => note.value!);
  if (wear.length === 0) return { ...limit, note: [limit.note, 'wear of the wires, which would lower this limit, is not known'].filter((text) => text !== '').join('; ') };
  const worst = Math.max(...wear);
  return { ...limit, limit: wearAdjustedBreakLimit(limit.limit, worst), note: `${limit.note}; lowered for wires worn by ${worst} %` };
}

/** A window in metres for this rope, or null where diameter or lay length is missing. */
export function windowInMetres(window: ClauseWindow, geometry: Pick<RopeGeometry, 'diameterMm' | 'layLengthMm'>): number | null {
  if (window.unit === 'm') return window.length;
  const each = window.unit === 'd' ? geometry.diameterMm : geometry.layLengthMm;
  return each === null ? null : (window.length * each) / 1000;
}

/** Whether a clause or set is written for such a rope. What is not known does not exclude. */
export function appliesTo(ropes: Clause['ropes'], geometry: RopeGeometry): boolean {
  if (ropes === undefined) return true;
  if (ropes.cores && geometry.core !== null && !ropes.cores.includes(geometry.core)) return false;
  if (ropes.lay && geometry.lay !== null && ropes.lay !== geometry.lay) return false;
  if (ropes.rotationResistant !== undefined && ropes.rotationResistant !== geometry.rotationResistant) return false;
  return ropes.strands === undefined || geometry.strands === null || ropes.strands === geometry.strands;
}
