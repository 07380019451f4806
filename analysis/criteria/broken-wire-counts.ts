import type { VisualNote } from '../intake/visual-note.ts';
import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import type { Survey } from '../rope/survey.ts';
import { coveredShare, holds, SEEN_SHARE_NEEDED } from './area-reduction.ts';
import type { BreakEvent } from './break-events.ts';
import { breakEvents } from './break-events.ts';
import type { Evidence, Measurement } from './criterion.ts';
import type { Along, Judged, MeasureTaker } from './judged.ts';
import { windowInMetres } from './resolve-limit.ts';
import type { Clause } from './rule-set.ts';

/** One thing that counts at a place. */
interface Counted {
  readonly position: number;
  readonly count: number;
  readonly seen: number;
  readonly spread: number; // one sigma
  readonly wire: string | null;
}

/** Broken wires in every window: those seen by eye, exact, and LF indications as estimated counts. A break found both ways counts once. */
export const brokenWires: MeasureTaker = {
  along(clause, evidence, survey) {
    const found = breakEvents(evidence, survey);
    if (!found.seenByEye && !found.indicated) return { needs: 'a count of broken wires or an LF trace' };
    return worstWindow(clause, evidence, survey, countedEvents(clause, found.events), found.indicated);
  },
  over(clause, evidence, survey, where) {
    const found = breakEvents(evidence, survey);
    if (!found.seenByEye && !found.indicated) return null;
    if (coveredShare(survey, where) < SEEN_SHARE_NEEDED) return null;
    return measured(countedEvents(clause, found.events).filter((each) => holds(where, each.position, evidence.loopLength)));
  },
};

function countedEvents(clause: Clause, events: readonly BreakEvent[]): Counted[] {
  return events.filter((event) => !event.loose || clause.looseWiresCount === true)
    .map((event) => ({ position: event.position, count: event.count, seen: event.seen, spread: (event.high - event.low) / 4, wire: event.wire }));
}

/** Counts that only the eye can make: in a valley, in one strand, at a termination. */
export function seenCounts(choose: (note: VisualNote, evidence: Evidence) => boolean, needs: string): MeasureTaker {
  const counted = (evidence: Evidence, survey: Survey): Counted[] => survey.notes.filter((note) => choose(note, evidence))
    .map((note) => ({ position: (note.from + note.to) / 2, count: note.value ?? 1, seen: note.value ?? 1, spread: 0, wire: null }));
  return {
    along(clause, evidence, survey) {
      const found = counted(evidence, survey);
      return found.length === 0 ? { needs } : worstWindow(clause, evidence, survey, found, false);
    },
    over(_clause, evidence, survey, where) {
      const found = counted(evidence, survey);
      if (found.length === 0) return null;
      return measured(found.filter((each) => holds(where, each.position, evidence.loopLength)));
    },
  };
}

const TERMINATION = /socket|terminat|end fix|attachment|clamp|thimble|wedge|anchor/i;

/** Breaks noted as at a termination, or counted within one lay (or 6 d) of one. */
export function isAtTermination(note: VisualNote, evidence: Evidence): boolean {
  if (note.kind === 'broken-wires-termination') return true;
  if (!note.kind.startsWith('broken-wires')) return false;
  const lay = (evidence.geometry.layLengthMm ?? 0) / 1000;
  return evidence.landmarks.some((mark) => {
    if (!TERMINATION.test(mark.kind ?? '') && !TERMINATION.test(mark.name)) return false;
    const from = mark.from_m ?? mark.position_m ?? 0;
    const to = mark.to_m ?? mark.position_m ?? from;
    return note.from <= to + lay && note.to >= from - lay;
  });
}

function measured(found: readonly Counted[]): Measurement {
  const named = new Set<string>();
  let value = 0;
  let square = 0;
  for (const each of found) {
    if (each.wire !== null && named.has(each.wire)) continue;
    if (each.wire !== null) named.add(each.wire);
    value += each.count;
    square += each.spread ** 2;
  }
  return { value, uncertainty: square === 0 ? null : Math.sqrt(square) };
}

/** The worst window begins at some break: only those windows are tried, so that a break is never cut off by the grid of samples. */
function worstWindow(clause: Clause, evidence: Evidence, survey: Survey, counted: readonly Counted[], indicated: boolean): Judged {
  const asked = clause.window === null ? 0 : windowInMetres(clause.window, evidence.geometry);
  if (asked === null) return { needs: clause.window?.unit === 'lay' ? 'the lay length or the rope diameter' : 'the rope diameter' };
  const loop = evidence.loopLength;
  // Never more than once round a loop, so that no break counts twice.
  const width = loop === null ? asked : Math.min(asked, loop * (1 - 1e-6));
  const sorted = [...counted].sort((a, b) => a.position - b.position);
  const around = loop === null ? sorted : [...sorted, ...sorted.map((each) => ({ ...each, position: each.position + loop }))];
  let best: { from: number; found: Counted[]; value: Measurement } | null = null;
  let end = 0;
  for (let first = 0; first < sorted.length; first += 1) {
    const from = sorted[first].position;
    end = Math.max(end, first);
    while (end < around.length && around[end].position <= from + width + 1e-9) end += 1;
    const found = around.slice(first, end);
    const value = measured(found);
    if (best === null || value.value > best.value.value) best = { from, found, value };
  }
  const along = stripOf(survey, around, width);
  if (best === null) {
    const first = survey.covered[0];
    if (first === undefined) return { needs: 'a length that was inspected' };
    const where = { from: first.from, to: ropePosition(Math.min(first.to, first.from + (width || first.to - first.from))) };
    return { governing: { where, value: 0, uncertainty: null, lowerBound: false, exact: true, note: indicated ? 'no LF indication on the inspected lengths and none counted' : 'none counted' }, along };
  }
  const where = windowAround(best.from, best.found, width);
  const seen = best.found.reduce((sum, each) => sum + each.seen, 0);
  return { governing: { where, value: best.value.value, uncertainty: best.value.uncertainty, lowerBound: false, exact: Number.isInteger(best.value.value), note: noteOf(best.value.value, seen) }, along };
}

/** The window laid around the breaks it holds, so that they stand in its middle. */
function windowAround(from: number, found: readonly Counted[], width: number): Interval<'rope'> {
  const last = found[found.length - 1].position;
  const slack = Math.max(0, width - (last - from)) / 2;
  return { from: ropePosition(from - slack), to: ropePosition(Math.max(from - slack + width, last)) };
}

function noteOf(count: number, seen: number): string {
  if (seen >= count) return 'counted by eye';
  if (seen === 0) return 'magnetic (LF) indications, not a visible count: depth unknown, an indication may stand for more or fewer wires';
  return `${seen} counted by eye, the others magnetic (LF) indications of unknown depth`;
}

/** Count around each strip position; null where that position was not inspected. */
function stripOf(survey: Survey, counted: readonly Counted[], width: number): Along {
  const { start, step, length } = survey.rope;
  const buckets = Math.min(1500, length);
  const each = (length * step) / Math.max(1, buckets);
  const positions: number[] = [];
  const values: (number | null)[] = [];
  let first = 0;
  let end = 0;
  for (let i = 0; i < buckets; i += 1) {
    const centre = start + (i + 0.5) * each - step / 2;
    const reach = Math.max(width, each) / 2;
    while (end < counted.length && counted[end].position <= centre + reach) end += 1;
    while (first < end && counted[first].position < centre - reach) first += 1;
    positions.push(centre);
    const seen = coveredAt(survey, centre - each / 2, centre + each / 2);
    values.push(seen || end > first ? measured(counted.slice(first, end)).value : null);
  }
  return { positions, values };
}

function coveredAt(survey: Survey, from: number, to: number): boolean {
  return survey.covered.some((each) => each.from < to && each.to > from);
}
