import { BEYOND_LAST_ROW, ROTATION_RESISTANT_ROPES, SINGLE_LAYER_ROPES } from './tables/broken-wire-table.ts';

/** Which row of the broken-wire table a rope belongs to. `rcn` is '>300' beyond the last row. */
export interface RopeCategory {
  readonly table: 'single-layer' | 'rotation-resistant';
  readonly rcn: string;
  readonly wires: number;
  readonly note: string;
}

export interface CategoryQuestion {
  /** n: load-bearing wires of the outer strands; filler wires not counted. */
  readonly outerStrandWires: number;
  readonly seale?: boolean;
  readonly wiresPerStrand?: number | null;
  readonly rotationResistant?: boolean;
  readonly outerStrands?: number | null;
  /** 'two-rows-up' lowers Warrington-Seale strands by two rows as well, as a second reprint does: the more cautious reading. */
  readonly reading?: 'printed' | 'two-rows-up' | 'second-reprint';
  readonly warringtonSeale?: boolean;
}

/**
 * Row of ISO 4309's tables. Outer strands of Seale make with 19 wires or fewer stand two rows above the row of n [published].
 * Returns null where the table has no row for such a rope (rotation-resistant with 5 to 10 outer strands or fewer than 71 wires).
 * The rope maker's own category overrides it.
 */
export function ropeCategory(question: CategoryQuestion): RopeCategory | null {
  const { outerStrandWires: wires } = question;
  if (question.rotationResistant) return resistantCategory(wires, question.outerStrands ?? null);
  const { seale, wiresPerStrand, reading, warringtonSeale } = question;
  const sealeShift = seale === true && wiresPerStrand !== null && wiresPerStrand !== undefined && wiresPerStrand <= 19;
  const cautiousShift = reading === 'two-rows-up' && warringtonSeale === true;
  const index = SINGLE_LAYER_ROPES.findIndex((row) => wires >= row.from && wires <= row.to);
  const natural = index < 0 ? SINGLE_LAYER_ROPES.length : index;
  if (!sealeShift && !cautiousShift) {
    const rcn = index < 0 ? '>300' : SINGLE_LAYER_ROPES[index].rcn;
    return { table: 'single-layer', rcn, wires, note: `n ${wires}, category ${rcn}` };
  }
  const moved = SINGLE_LAYER_ROPES[Math.max(0, natural - 2)];
  const why = sealeShift ? 'Seale strands of 19 wires or fewer' : 'Warrington-Seale strands, cautious reading';
  return { table: 'single-layer', rcn: moved.rcn, wires, note: `n ${wires}, moved two rows up to category ${moved.rcn}: ${why}` };
}

function resistantCategory(wires: number, outerStrands: number | null): RopeCategory | null {
  const strands = outerStrands ?? 11;
  if (strands >= 11 && wires > 300) return { table: 'rotation-resistant', rcn: '>300', wires, note: `n ${wires}, beyond the last row` };
  const row = ROTATION_RESISTANT_ROPES.find((each) => strands >= each.outerStrands[0] && strands <= each.outerStrands[1] && wires >= each.from && wires <= each.to);
  return row ? { table: 'rotation-resistant', rcn: row.rcn, wires, note: `${strands} outer strands, n ${wires}, category ${row.rcn}` } : null;
}

export interface BrokenWireLimits {
  readonly over6d: number;
  readonly over30d: number;
  /** Cells in which two reprints differ. */
  readonly disputed: boolean;
  readonly provenance: 'published' | 'memory' | 'disputed';
}

/**
 * Broken-wire limits of one category. `category` is the result of ropeCategory, or a category number of the table of
 * single-layer ropes such as '04' or 4. Classes M5 to M8 may use twice the number: on steel sheaves and single-layer drums only.
 * Throws RangeError for a category that no table holds.
 */
export function brokenWireLimits(
  category: RopeCategory | string | number, lay: 'ordinary' | 'lang', mechanismClass: 'M1-M4' | 'M5-M8' | 'unknown', drum: 'single-layer' | 'multi-layer',
  reading: 'first' | 'second-reprint' = 'first',
): BrokenWireLimits {
  const asked = typeof category === 'object' ? category : namedCategory(category);
  const times = mechanismClass === 'M5-M8' && drum === 'single-layer' ? 2 : 1;
  if (asked.rcn === '>300') return beyond(asked, lay, drum, times);
  if (asked.table === 'rotation-resistant') {
    const row = ROTATION_RESISTANT_ROPES.find((each) => each.rcn === asked.rcn)!;
    const [six, thirty] = drum === 'multi-layer' ? row.multiLayer : row.singleLayer;
    return { over6d: six * times, over30d: thirty * times, disputed: false, provenance: 'memory' };
  }
  const row = SINGLE_LAYER_ROPES.find((each) => each.rcn === asked.rcn)!;
  if (drum === 'multi-layer') {
    const [six, thirty] = reading === 'second-reprint' ? row.secondReprint ?? row.multiLayer : row.multiLayer;
    return { over6d: six, over30d: thirty, disputed: row.disputed, provenance: row.disputed ? 'disputed' : 'published' };
  }
  const [six, thirty] = lay === 'lang' ? row.lang : row.ordinary;
  return { over6d: six * times, over30d: thirty * times, disputed: false, provenance: 'published' };
}

function namedCategory(name: string | number): RopeCategory {
  const rcn = typeof name === 'number' ? String(name).padStart(2, '0') : name;
  if (SINGLE_LAYER_ROPES.some((row) => row.rcn === rcn)) return { table: 'single-layer', rcn, wires: 0, note: '' };
  if (ROTATION_RESISTANT_ROPES.some((row) => row.rcn === rcn)) return { table: 'rotation-resistant', rcn, wires: 0, note: '' };
  throw new RangeError(`no table holds a rope category ${rcn}`);
}

function beyond(category: RopeCategory, lay: 'ordinary' | 'lang', drum: 'single-layer' | 'multi-layer', times: number): BrokenWireLimits {
  const resistant = category.table === 'rotation-resistant';
  const shares = resistant
    ? drum === 'multi-layer' ? BEYOND_LAST_ROW.resistantMultiLayer : BEYOND_LAST_ROW.resistantSingleLayer
    : drum === 'multi-layer' ? BEYOND_LAST_ROW.multiLayer : lay === 'lang' ? BEYOND_LAST_ROW.lang : BEYOND_LAST_ROW.ordinary;
  const [six, thirty] = shares.map((percent) => (percent * category.wires * times) / 100);
  return { over6d: six, over30d: thirty, disputed: false, provenance: 'memory' };
}
