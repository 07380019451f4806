import type { Frame, Position } from './units.ts';

/** A length of rope, half-open: `from` belongs to it, `to` does not. Metres. `from < to`. */
export interface Interval<F extends Frame> {
  readonly from: Position<F>;
  readonly to: Position<F>;
}

/** Sorted, disjoint union of intervals. Intervals that touch are joined; empty ones are dropped. */
export function unionOf<F extends Frame>(intervals: readonly Interval<F>[]): Interval<F>[] {
  const sorted = intervals.filter((each) => each.to > each.from).sort((a, b) => a.from - b.from);
  const joined: { from: Position<F>; to: Position<F> }[] = [];
  for (const each of sorted) {
    const last = joined[joined.length - 1];
    if (last && each.from <= last.to) {
      if (each.to > last.to) last.to = each.to;
    } else joined.push({ from: each.from, to: each.to });
  }
  return joined;
}

/** What of `whole` no interval of `parts` covers: sorted and disjoint. */
export function complementOf<F extends Frame>(parts: readonly Interval<F>[], whole: Interval<F>): Interval<F>[] {
  const rest: Interval<F>[] = [];
  let reached = whole.from;
  for (const part of unionOf(parts)) {
    if (part.to <= whole.from) continue;
    if (part.from >= whole.to) break;
    if (part.from > reached) rest.push({ from: reached, to: part.from });
    if (part.to > reached) reached = part.to;
  }
  if (reached < whole.to) rest.push({ from: reached, to: whole.to });
  return rest;
}

/** The common lengths of two lists of intervals: sorted and disjoint. */
export function intersectionOf<F extends Frame>(left: readonly Interval<F>[], right: readonly Interval<F>[]): Interval<F>[] {
  const common: Interval<F>[] = [];
  const a = unionOf(left);
  const b = unionOf(right);
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    const from = a[i].from > b[j].from ? a[i].from : b[j].from;
    const to = a[i].to < b[j].to ? a[i].to : b[j].to;
    if (to > from) common.push({ from, to });
    if (a[i].to < b[j].to) i += 1;
    else j += 1;
  }
  return common;
}

/** Total length of a list of intervals in metres; overlaps count once. */
export function totalLength<F extends Frame>(intervals: readonly Interval<F>[]): number {
  return unionOf(intervals).reduce((sum, each) => sum + (each.to - each.from), 0);
}
