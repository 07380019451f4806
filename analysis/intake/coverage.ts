import type { Interval } from '../rope/interval.ts';
import { complementOf, intersectionOf } from '../rope/interval.ts';
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
}

/**
 * What the newest inspection left unseen, in pieces by the date on which each was last seen, sorted by position. `surveys`
 * are oldest first. Without a rope length the rope is what any inspection reached, from 0 on; without any inspection
 * nothing was ever seen.
 */
export function neverInspected(surveys: readonly Seen[], extent: RopeExtent): Unseen[] {
  const reached = surveys.reduce((far, each) => each.covered.reduce((most, { to }) => Math.max(most, to), far), 0);
  const length = extent.ropeLength ?? reached;
  if (!(length > 0)) return [];
  let open: Interval<'rope'>[] = [{ from: ropePosition(0), to: ropePosition(length) }];
  const found: Unseen[] = [];
  for (let i = surveys.length - 1; i >= 0 && open.length > 0; i -= 1) {
    const { covered, date } = surveys[i];
    if (i < surveys.length - 1) for (const where of intersectionOf(open, covered)) found.push({ where, lastSeen: date });
    open = open.flatMap((each) => complementOf(covered, each));
  }
  for (const where of open) found.push({ where, lastSeen: null });
  return found.filter(({ where }) => where.to - where.from > 1e-6).sort((a, b) => a.where.from - b.where.from);
}
