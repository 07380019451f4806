import type { Interval } from '../rope/interval.ts';
import { intersectionOf } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import type { Survey } from '../rope/survey.ts';
import { worseIsMore } from './compare.ts';
import type { Evidence } from './criterion.ts';
import type { Governing, Judged } from './judged.ts';
import { windowInMetres } from './resolve-limit.ts';
import type { Clause } from './rule-set.ts';
import { takerOf } from './take-measure.ts';

/** Windows are tried at this share of their length from one another, and no more of them than MOST. */
const SPACING = 1 / 32;
const MOST = 2000;

/** Measures that rest on a scan; the others rest on the eye, which goes where no head does. */
const READ_BY_HEAD: ReadonlySet<Clause['measure']> = new Set(['area-reduction', 'broken-wire-area', 'strength-loss', 'broken-wires']);

/**
 * The worst place of one clause within some lengths of rope: the governing place of the whole rope where it lies there, else the
 * worst window that stands in them. Null where the inspection cannot judge any.
 */
export function governingWithin(clause: Clause, evidence: Evidence, survey: Survey, judged: Extract<Judged, { governing: Governing }>, within: readonly Interval<'rope'>[]): Governing | null {
  const { governing, along } = judged;
  // A window may stand half in a length that was never seen; of that length it says nothing.
  const asked = READ_BY_HEAD.has(clause.measure) ? intersectionOf(survey.covered, within) : within;
  if (asked.some((piece) => touches(governing.where, piece, evidence.loopLength))) return governing;
  if (along === null) return null;
  const width = clause.window !== null ? windowInMetres(clause.window, evidence.geometry) : clause.measure === 'strength-loss' ? survey.rope.averagingLength : null;
  const middles = width === null ? along.positions.filter((at) => asked.some((piece) => at >= piece.from && at < piece.to)) : asked.flatMap((piece) => middlesIn(piece, width));
  const more = worseIsMore(clause.comparator);
  let worst: Governing | null = null;
  for (const middle of middles) {
    const half = (width ?? 0) / 2;
    const where = { from: ropePosition(middle - half), to: ropePosition(middle + half) };
    const found = takerOf(clause).over(clause, evidence, survey, where);
    if (found === null || (worst !== null && (more ? found.value <= worst.value : found.value >= worst.value))) continue;
    worst = { where, value: found.value, uncertainty: found.uncertainty, lowerBound: governing.lowerBound, exact: governing.exact, note: 'the worst of this section; the worst of the rope lies elsewhere' };
  }
  return worst;
}

/** Middles of the windows that stand in a length. */
function middlesIn({ from, to }: Interval<'rope'>, width: number): number[] {
  const count = Math.min(MOST, Math.ceil((to - from) / (SPACING * width)) + 1);
  return Array.from({ length: count }, (_, i) => (count === 1 ? (from + to) / 2 : from + (i / (count - 1)) * (to - from)));
}

function touches(where: Interval<'rope'>, piece: Interval<'rope'>, loopLength: number | null): boolean {
  const shifts = loopLength === null ? [0] : [-loopLength, 0, loopLength];
  return shifts.some((shift) => where.from + shift < piece.to && Math.max(where.to, where.from + 1e-9) + shift > piece.from);
}
