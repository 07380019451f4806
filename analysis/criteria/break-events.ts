import type { VisualNote } from '../intake/visual-note.ts';
import type { Survey } from '../rope/survey.ts';
import { interpolate } from '../alignment/rope-map.ts';
import type { Evidence } from './criterion.ts';

/** Broken wires at one place of one inspection: seen by eye, indicated by LF, or both. */
export interface BreakEvent {
  readonly position: number;
  /** Broken wires here, with the range that an indication may stand for. Seen wires are exact. */
  readonly count: number;
  readonly low: number;
  readonly high: number;
  /** How many of them were seen. */
  readonly seen: number;
  /** Area of them together in percent of the metallic area; null where the wire area is not known. */
  readonly area: number | null;
  readonly areaUncertainty: number;
  /** Named wire, where a note names it: several breaks of it in one window count once. */
  readonly wire: string | null;
  readonly loose: boolean;
}

export interface BreakEvents {
  readonly events: readonly BreakEvent[]; // by position
  readonly seenByEye: boolean;
  readonly indicated: boolean;
}

const TOTAL_KINDS: ReadonlySet<string> = new Set(['broken-wires']);
const PART_KINDS: ReadonlySet<string> = new Set(['broken-wires-valley', 'broken-wires-termination', 'broken-wires-strand', 'broken-wires-adjacent']);
/** Notes this close are of one place: what a specialist would write on one line. Metres. */
const SAME_PLACE = 0.05;
/** A note and an LF indication may be of the same break within this distance or the alignment's own bound. Metres. */
const SAME_BREAK = 0.1;

const known = new WeakMap<Survey, { evidence: Evidence; found: BreakEvents }>();

/**
 * All broken wires of one inspection, each counted once: a break that was both seen and indicated is one break.
 * LF indications stand for `count.estimate` broken wires of the nominal outer wire area, or for the calibrated equivalent loss.
 */
export function breakEvents(evidence: Evidence, survey: Survey): BreakEvents {
  const before = known.get(survey);
  if (before && before.evidence === evidence) return before.found;
  const found = collect(evidence, survey);
  known.set(survey, { evidence, found });
  return found;
}

function collect(evidence: Evidence, survey: Survey): BreakEvents {
  const share = evidence.geometry.outerWireSharePercent;
  const indicated = indications(survey, share);
  const counts = visualCounts(survey.notes);
  const events: BreakEvent[] = [];
  for (const note of counts) {
    const reach = Math.max(SAME_BREAK, boundAt(survey, note.position));
    let left = note.count;
    for (const event of within(indicated, note, reach)) {
      if (left <= 0) break;
      const seenHere = Math.min(left, Math.max(0, event.count - event.seen));
      event.seen += seenHere;
      event.low = Math.max(event.low, event.seen);
      left -= seenHere;
    }
    if (left > 0) events.push({ position: note.position, count: left, low: left, high: left, seen: left, area: share === null ? null : left * share, areaUncertainty: 0, wire: note.wire, loose: false });
  }
  for (const note of survey.notes) {
    if (note.kind !== 'loose-wire') continue;
    const count = note.value ?? 1;
    events.push({ position: (note.from + note.to) / 2, count, low: count, high: count, seen: count, area: share === null ? null : count * share, areaUncertainty: 0, wire: wireName(note), loose: true });
  }
  return {
    events: [...events, ...indicated].sort((a, b) => a.position - b.position),
    seenByEye: counts.length > 0,
    indicated: survey.rope.fault !== null || survey.condition.faults.length > 0,
  };
}

/** The indications that a note may speak of, the nearest first. */
function within(indicated: readonly OpenEvent[], note: VisualCount, reach: number): OpenEvent[] {
  return indicated.filter((event) => event.position >= note.from - reach && event.position <= note.to + reach)
    .sort((a, b) => Math.abs(a.position - note.position) - Math.abs(b.position - note.position));
}

interface OpenEvent { position: number; count: number; low: number; high: number; seen: number; area: number | null; areaUncertainty: number; wire: null; loose: false }

function indications(survey: Survey, share: number | null): OpenEvent[] {
  return survey.condition.faults.filter((fault) => isSeen(survey, fault.position)).map((fault) => {
    const { low, estimate, high } = fault.count;
    const calibrated = fault.lossCalibration !== 'uncalibrated' && fault.lossPercent !== null;
    const area = calibrated ? fault.lossPercent : share === null ? null : estimate * share;
    // The range of a count is taken as 95 %: four standard uncertainties wide.
    const each = area === null || estimate === 0 ? 0 : area / estimate;
    return { position: fault.position, count: estimate, low, high, seen: 0, area, areaUncertainty: ((high - low) / 4) * each, wire: null, loose: false as const };
  });
}

/** Inside a blind length the head sees its surroundings, not the rope. */
function isSeen(survey: Survey, position: number): boolean {
  return survey.covered.some((each) => position >= each.from && position <= each.to);
}

interface VisualCount { readonly from: number; readonly to: number; readonly position: number; readonly count: number; readonly wire: string | null }

/** Counts in valleys, strands or at terminations are parts of the total noted at the same place, not additions to it. */
export function visualCounts(notes: readonly VisualNote[]): VisualCount[] {
  const places: { from: number; to: number; total: number; parts: number; wire: string | null }[] = [];
  const sorted = notes.filter((note) => TOTAL_KINDS.has(note.kind) || PART_KINDS.has(note.kind)).sort((a, b) => a.from - b.from);
  for (const note of sorted) {
    const count = note.value ?? 1;
    const wire = wireName(note);
    const isTotal = TOTAL_KINDS.has(note.kind);
    const last = places.findLast((each) => Math.abs(each.from - note.from) <= SAME_PLACE && Math.abs(each.to - note.to) <= SAME_PLACE && each.wire === wire && (isTotal ? each.total === 0 : true));
    const place = last ?? { from: note.from, to: note.to, total: 0, parts: 0, wire };
    if (!last) places.push(place);
    if (isTotal) place.total += count;
    else place.parts = Math.max(place.parts, count);
  }
  return places.map(({ from, to, total, parts, wire }) => ({ from, to, position: (from + to) / 2, count: wire !== null ? Math.min(1, Math.max(total, parts)) : Math.max(total, parts), wire })).filter((each) => each.count > 0);
}

/** Name of the wire that a note speaks of, such as `strand 3 wire 7`, or null. */
export function wireName(note: VisualNote): string | null {
  const wire = /\bwire\s*(?:no\.?|number|#)?\s*(\d+)\b/i.exec(note.remark);
  if (!wire) return null;
  const strand = /\bstrand\s*(?:no\.?|number|#)?\s*(\w+)\b/i.exec(note.remark);
  return `${strand ? `strand ${strand[1]} ` : ''}wire ${wire[1]}`;
}

function boundAt(survey: Survey, position: number): number {
  const { positions, values } = survey.mapUncertainty;
  if (positions.length === 0) return 0;
  if (positions.length === 1 || position <= positions[0]) return values[0];
  if (position >= positions[positions.length - 1]) return values[values.length - 1];
  return interpolate(positions, values, position);
}
