import type { Interval } from '../rope/interval.ts';
import { complementOf, intersectionOf, unionOf } from '../rope/interval.ts';
import type { RopeExtent } from '../rope/rope-extent.ts';
import { ropePosition } from '../rope/units.ts';

/** A length that the newest inspection did not see, and when it was last seen; null: never. */
export interface Unseen {
  readonly where: Interval<'rope'>;
  readonly lastSeen: string | null;
}

interface Seen {
  readonly date: string;
  readonly covered: readonly Interval<'rope'>[];
  /** Grid of the inspection's own trace, m. */
  readonly measured?: { readonly step: number };
}

/**
 * Where grids meet, the ends of covered lengths differ by part of a step though no sample is missing; a missing sample leaves a
 * whole step, which the map may shorten by some percent. What is shorter than this share of a step is rounding.
 */
const ROUNDING = 0.9;
/** Shorter than any sample step: the rounding of the numbers themselves, m. */
const NOTHING = 1e-6;

/**
 * What the newest inspection left unseen, in pieces by the date on which each was last seen, sorted by position. `surveys`
 * are oldest first. Without a rope length the rope is what any inspection reached, from 0 on; without any inspection
 * nothing was ever seen. Slivers shorter than a sample's step are the rounding of grids and not reported; a gap of one missing
 * sample is.
 */
export function neverInspected(surveys: readonly Seen[], extent: RopeExtent): Unseen[] {
  const reached = surveys.reduce((far, each) => each.covered.reduce((most, { to }) => Math.max(most, to), far), 0);
  const length = extent.ropeLength ?? reached;
  if (!(length > 0)) return [];
  let open: Interval<'rope'>[] = [{ from: ropePosition(0), to: ropePosition(length) }];
  const found: Unseen[] = [];
  for (let i = surveys.length - 1; i >= 0 && open.length > 0; i -= 1) {
    const { covered, date, measured } = surveys[i];
    const rounding = measured ? Math.max(NOTHING, ROUNDING * measured.step) : NOTHING;
    const seen = open.flatMap((each) => seenOf(each, covered, rounding));
    if (i < surveys.length - 1) for (const where of seen) found.push({ where, lastSeen: date });
    open = open.flatMap((each) => complementOf(seen, each));
  }
  for (const where of open) found.push({ where, lastSeen: null });
  return found.filter(({ where }) => where.to - where.from > NOTHING).sort((a, b) => a.where.from - b.where.from);
}

/** What of an open length was covered, grown over slivers that would be left beside or between, and without slivers of its own: those stay with their neighbour. */
function seenOf(open: Interval<'rope'>, covered: readonly Interval<'rope'>[], rounding: number): Interval<'rope'>[] {
  const isWhole = ({ from, to }: Interval<'rope'>) => to - from >= open.to - open.from - NOTHING;
  const kept = intersectionOf([open], covered).filter((each) => each.to - each.from >= rounding || isWhole(each));
  if (kept.length === 0) return [];
  return unionOf([...kept, ...complementOf(kept, open).filter(({ from, to }) => to - from < rounding)]);
}
