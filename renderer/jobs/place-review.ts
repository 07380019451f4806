import type { JournalEntry } from '../../analysis/rope/journal.ts';

type Review = Extract<JournalEntry, { kind: 'place-review' }>;

/** The review that holds for a length of rope: the newest whose length shares at least half of the shorter one; null where withdrawn or none. */
export function reviewOf(journal: readonly JournalEntry[], where: { readonly from: number; readonly to: number }): Review | null {
  const found = journal.findLast((entry): entry is Review => entry.kind === 'place-review' && sameLength(entry, where));
  return found === undefined || found.verdict === 'withdrawn' ? null : found;
}

function sameLength(entry: Review, where: { readonly from: number; readonly to: number }): boolean {
  const shared = Math.min(entry.to_m, where.to) - Math.max(entry.from_m, where.from);
  const shorter = Math.min(entry.to_m - entry.from_m, where.to - where.from);
  // A single fault has next to no length: a review within 5 cm of it is its own.
  return shorter < 0.05 ? shared > -0.05 : shared >= shorter / 2;
}
