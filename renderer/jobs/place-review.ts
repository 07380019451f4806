import type { JournalEntry } from '../../analysis/rope/journal.ts';

type Review = Extract<JournalEntry, { kind: 'place-review' }>;

/**
 * The review that holds for a length of rope: the newest whose length is half the same or more, so that a review of a zone is none of the
 * faults inside it, and a place that has doubled is looked at anew. Null where withdrawn or none.
 */
export function reviewOf(journal: readonly JournalEntry[], where: { readonly from: number; readonly to: number }): Review | null {
  const found = journal.findLast((entry): entry is Review => entry.kind === 'place-review' && sameLength(entry, where));
  return found === undefined || found.verdict === 'withdrawn' ? null : found;
}

/** A single fault has next to no length: its place is known to a few centimetres, and so wide it is taken. */
const LEAST = 0.1;

function sameLength(entry: Review, where: { readonly from: number; readonly to: number }): boolean {
  const [a, b] = [{ from: entry.from_m, to: entry.to_m }, where].map(widened);
  const shared = Math.min(a.to, b.to) - Math.max(a.from, b.from);
  return shared >= Math.max(a.to - a.from, b.to - b.from) / 2;
}

function widened({ from, to }: { readonly from: number; readonly to: number }): { from: number; to: number } {
  const by = Math.max(0, LEAST - (to - from)) / 2;
  return { from: from - by, to: to + by };
}
