import type { Character } from './character.ts';
import type { AlignmentParameters } from './parameters.ts';
import { boundAbout } from './shift-lattice.ts';
import type { ShiftBelief, ShiftLattice } from './shift-lattice.ts';

/** One look along the scan: what it saw, what it believes, and the shift from which both count. */
export interface Look {
  readonly lattice: ShiftLattice;
  readonly beliefs: readonly ShiftBelief[];
  readonly steady: (at: number) => number;
}

/** A map from scan position to reference position, in the direction of the scan character it was made from. Metres. */
export interface ScanMap {
  readonly knots: readonly { readonly at: number; readonly rope: number }[];
  readonly bounds: readonly { readonly at: number; readonly value: number }[];
  readonly slips: readonly { readonly at: number; readonly size: number }[];
  /** Share of the scan whose place is known to a tenth of a metre. */
  readonly informed: number;
}

/** The path that is believed, as few straight lines as show it, with its 95 % bound and the slips on it. `doubt`: times that the bound is wider than the looks know. */
export function scanMap({ lattice, beliefs, steady: predicted }: Look, scan: Character, doubt: number, parameters: AlignmentParameters): ScanMap | null {
  const places = beliefs.map(({ mean }, b) => ({ at: lattice.at[b], shift: predicted(lattice.at[b]) + mean }));
  const [first, last] = [scan.start - scan.bin / 2, scan.start + (scan.length - 0.5) * scan.bin];
  const shifts = [{ at: first, shift: places[0].shift + predicted(first) - predicted(places[0].at) }, ...places, { at: last, shift: places[places.length - 1].shift + predicted(last) - predicted(places[places.length - 1].at) }];
  const knots = thinned(monotone(shifts.map(({ at, shift }) => ({ at, rope: at + shift }))));
  if (knots.length < 2) return null;
  const values = widest(beliefs.map((belief) => boundAbout(belief, belief.mean)));
  const bounds = values.map((value, b) => ({ at: lattice.at[b], value: parameters.smallestBound + doubt * coverOf(value) * value }));
  return { knots, bounds, slips: slipsOf(places), informed: values.filter((value) => value < WELL_KNOWN).length / beliefs.length };
}

/** A place known to this counts as informed. Metres. */
const WELL_KNOWN = 0.1;

/** The likelihood is a model: scatter is neither quite Gaussian nor quite white, and the reference is a scan itself. */
const COVER = 1.5;
/** Where little is recognised the model of the scatter matters most, and is known least: wide ranges are widened more, up to this. */
const COVER_OF_WIDE = 3.5;
/** Ranges from the first length on count as wide, from the second on as wholly so. Metres. */
const WIDE = [0.03, 0.1] as const;

function coverOf(range: number): number {
  const share = Math.max(0, Math.min(1, (range - WIDE[0]) / (WIDE[1] - WIDE[0])));
  return COVER + share * (COVER_OF_WIDE - COVER);
}

/** Between blocks a slip may stand on either side: each bound is that of its neighbours too. */
function widest(values: readonly number[]): number[] {
  return values.map((value, b) => Math.max(value, values[b - 1] ?? 0, values[b + 1] ?? 0));
}

/** A jump of more than this within `SLIP_LENGTH` is a slip. Metres. */
const SLIP_SIZE = 0.015;
const SLIP_LENGTH = 1.5;

/** Runs of neighbouring jumps, each a slip with its whole size. */
function slipsOf(places: readonly { at: number; shift: number }[]): { at: number; size: number }[] {
  const slips: { at: number; size: number }[] = [];
  for (let b = 1; b < places.length; b += 1) {
    const size = places[b].shift - places[b - 1].shift;
    if (Math.abs(size) < SLIP_SIZE) continue;
    const at = (places[b].at + places[b - 1].at) / 2;
    const last = slips[slips.length - 1];
    if (last && at - last.at < SLIP_LENGTH) slips[slips.length - 1] = { at: (last.at * last.size + at * size) / (last.size + size || 1), size: last.size + size };
    else slips.push({ at, size });
  }
  return slips.filter((slip) => Math.abs(slip.size) >= SLIP_SIZE);
}

/** A knot that a straight line between its neighbours misses by less than this can go. Metres. */
const TOLERANCE = 0.001;

/** Leaves out what straight lines show as well (halving at the farthest point). */
function thinned(knots: readonly { at: number; rope: number }[]): { at: number; rope: number }[] {
  const keep = new Uint8Array(knots.length);
  const open: [number, number][] = [[0, knots.length - 1]];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [from, to] = next;
    keep[from] = keep[to] = 1;
    const slope = (knots[to].rope - knots[from].rope) / (knots[to].at - knots[from].at || 1);
    let far = -1;
    let most = TOLERANCE;
    for (let k = from + 1; k < to; k += 1) {
      const miss = Math.abs(knots[k].rope - knots[from].rope - slope * (knots[k].at - knots[from].at));
      if (miss > most) {
        most = miss;
        far = k;
      }
    }
    if (far > 0) open.push([from, far], [far, to]);
  }
  return knots.filter((_, k) => keep[k] === 1);
}

/** Where the wheel turned while the rope stood, the file runs on over one place of the rope: half of what falls back is left out before the fall, half behind it. */
function monotone(knots: readonly { at: number; rope: number }[]): { at: number; rope: number }[] {
  const kept: { at: number; rope: number }[] = [];
  let least = Number.NEGATIVE_INFINITY;
  for (const knot of knots) {
    const last = kept[kept.length - 1];
    if (last && knot.rope <= last.rope) {
      const middle = (knot.rope + last.rope) / 2;
      while (kept.length > 1 && kept[kept.length - 1].rope >= middle) kept.pop();
      least = Math.max(least, middle);
    }
    const before = kept[kept.length - 1];
    if (!before || (knot.at > before.at + 1e-9 && knot.rope > Math.max(least, before.rope + 1e-9))) kept.push(knot);
  }
  return kept;
}
