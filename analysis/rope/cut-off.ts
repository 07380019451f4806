import { complementOf, intersectionOf, totalLength, unionOf } from './interval.ts';
import type { Interval } from './interval.ts';
import type { RopeEvent } from './record.ts';
import type { RopeExtent } from './rope-extent.ts';
import type { Survey } from './survey.ts';
import { ropePosition } from './units.ts';

/** A length that was cut off an end and is no longer part of the rope. */
export interface CutOff {
  readonly date: string;
  readonly where: Interval<'rope'>;
}

/**
 * Lengths cut off by recorded events after `since` (the first inspection, whose rope is position 0 to the rope's length) and up to
 * `upTo`. Without a rope length nothing is known of end B; a loop has no ends. ISO dates; oldest first.
 */
export function cutOffs(events: readonly RopeEvent[], extent: RopeExtent, since: string, upTo: string): CutOff[] {
  if (extent.loopLength !== null) return [];
  let start = 0;
  let end = extent.ropeLength;
  const found: CutOff[] = [];
  const cuts = events.filter((event) => event.kind === 'shortened' && (event.length_m ?? 0) > 0 && Date.parse(event.date) > Date.parse(since) && Date.parse(event.date) <= Date.parse(upTo));
  for (const { date, end: at, length_m: length = 0 } of [...cuts].sort((a, b) => Date.parse(a.date) - Date.parse(b.date))) {
    if (at === 'A') {
      found.push({ date, where: { from: ropePosition(start), to: ropePosition(start + length) } });
      start += length;
    } else if (at === 'B' && end !== null) {
      found.push({ date, where: { from: ropePosition(end - length), to: ropePosition(end) } });
      end -= length;
    }
  }
  return found;
}

/** Length of the rope that is left at `upTo`, or null where the record states none. Metres. */
export function presentLength(events: readonly RopeEvent[], extent: RopeExtent, since: string, upTo: string): number | null {
  if (extent.ropeLength === null) return null;
  return extent.ropeLength - totalLength(cutOffs(events, extent, since, upTo).map((each) => each.where));
}

/** The lengths that are cut off and that `covered`, of an inspection after the cut, does not contradict. */
export function goneLengths(cuts: readonly CutOff[], covered: readonly Interval<'rope'>[]): Interval<'rope'>[] {
  return unionOf(cuts.map((each) => each.where)).flatMap((each) => complementOf(covered, each));
}

/** Parts of a list of lengths that are still rope, each keeping what was said of it. */
export function stillThere<T extends { readonly where: Interval<'rope'> }>(pieces: readonly T[], gone: readonly Interval<'rope'>[]): T[] {
  return pieces.flatMap((piece) => complementOf(gone, piece.where).map((where) => ({ ...piece, where })));
}

/** An inspection without what it saw of some lengths: for judging the rope as it is now. Traces keep their values; the mask says gone. */
export function withoutLengths(survey: Survey, gone: readonly Interval<'rope'>[]): Survey {
  if (gone.length === 0) return survey;
  const { rope, condition } = survey;
  const left = survey.covered.flatMap((each) => complementOf(gone, each));
  const mask = (valid: Uint8Array) => valid.map((value, i) => (gone.some(({ from, to }) => rope.start + i * rope.step >= from && rope.start + i * rope.step < to) ? 0 : value));
  const isLeft = (from: number, to: number) => !gone.some((each) => from >= each.from && to <= each.to);
  return {
    ...survey, covered: left,
    rope: { ...rope, loss: rope.loss && { ...rope.loss, valid: mask(rope.loss.valid) }, fault: rope.fault && { ...rope.fault, valid: mask(rope.fault.valid) } },
    condition: {
      ...condition, faults: condition.faults.filter((fault) => isLeft(fault.position, fault.position)),
      zones: condition.zones.filter((zone) => intersectionOf(gone, [zone.where]).length === 0 || isLeft(zone.where.from, zone.where.to)),
    },
    notes: survey.notes.filter((note) => isLeft(note.from, note.to)),
  };
}
