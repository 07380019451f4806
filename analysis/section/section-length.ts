import { intersectionOf, totalLength } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';

export interface SectionQuestion {
  readonly at: number; // rope position, m
  readonly halfWidth: number; // m
  /** Only inspections on or before this ISO date count; null: all. */
  readonly date: string | null;
}

/** The length of rope that a question asks about: one interval, or two where it runs over the seam of a loop. */
export interface SectionLength {
  readonly centre: number;
  readonly pieces: readonly Interval<'rope'>[];
}

/** Shortest half width that is looked at: a point has no coverage. Metres. */
const SHORTEST = 0.001;

/** On a loop every position is taken round to where it lies from the loop's zero. */
export function sectionLength({ at, halfWidth }: Pick<SectionQuestion, 'at' | 'halfWidth'>, loopLength: number | null): SectionLength {
  const half = Math.max(halfWidth, SHORTEST);
  const piece = (from: number, to: number): Interval<'rope'> => ({ from: ropePosition(from), to: ropePosition(to) });
  if (loopLength === null) return { centre: at, pieces: [piece(at - half, at + half)] };
  const centre = ((at % loopLength) + loopLength) % loopLength;
  if (2 * half >= loopLength) return { centre, pieces: [piece(0, loopLength)] };
  if (centre < half) return { centre, pieces: [piece(0, centre + half), piece(centre - half + loopLength, loopLength)] };
  if (centre + half > loopLength) return { centre, pieces: [piece(0, centre + half - loopLength), piece(centre - half, loopLength)] };
  return { centre, pieces: [piece(centre - half, centre + half)] };
}

export const widthOf = (length: SectionLength): number => totalLength(length.pieces);

/** Share of a section that lies in `covered`, 0 to 1. */
export function coveredShareOf(length: SectionLength, covered: readonly Interval<'rope'>[]): number {
  return Math.min(1, totalLength(intersectionOf(covered, length.pieces)) / widthOf(length));
}

/** Whether a stretch from `from` to `to` (a point where they are equal) lies at least partly in a section. */
export function meets(length: SectionLength, from: number, to: number): boolean {
  return length.pieces.some((piece) => from < piece.to && Math.max(to, from + 1e-9) > piece.from);
}

/** What of a section lies in `covered`: an indication that reaches on into a length nobody saw says nothing of that length. */
export function seenPart(length: SectionLength, covered: readonly Interval<'rope'>[]): SectionLength {
  return { ...length, pieces: intersectionOf(covered, length.pieces) };
}
