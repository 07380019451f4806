import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import type { Survey } from '../rope/survey.ts';
import type { BreakEvent } from './break-events.ts';
import { breakEvents } from './break-events.ts';
import type { Evidence, Measurement } from './criterion.ts';
import type { LossSums } from './distributed-loss.ts';
import { lossSums, meanLossOver, separateLoss } from './distributed-loss.ts';
import type { Governing, Judged, MeasureTaker } from './judged.ts';
import { lossUncertainty } from './loss-uncertainty.ts';
import { windowInMetres } from './resolve-limit.ts';
import type { Clause } from './rule-set.ts';
import { weightedWindow } from './weighted-window.ts';
import { worstWindows } from './worst-windows.ts';

/** A window is judged where at least this share of it was inspected [common practice]. */
export const SEEN_SHARE_NEEDED = 0.5;

/** How the two parts of a reduction are put together: what the clause lets count. */
interface Parts {
  readonly loss: boolean;
  readonly breaks: boolean;
}

function partsOf(clause: Clause): Parts {
  return { loss: clause.measure !== 'broken-wire-area', breaks: true };
}

/**
 * Reduction of metallic area in every window along the rope: the mean distributed loss of the window (never below zero) plus the
 * area of the wires broken in it. Several breaks of one named wire count once; loose wires count where the rule says so; what LMA
 * already shows of a broken wire is not added again (distributed-loss.ts). Linear in samples and events.
 */
export const areaReduction: MeasureTaker = {
  along(clause, evidence, survey) {
    const width = windowOf(clause, evidence, survey);
    if (width === null) return { needs: clause.window?.unit === 'lay' ? 'the lay length or the rope diameter' : 'the rope diameter' };
    const scan = prepare(clause, evidence, survey, width);
    if ('needs' in scan) return scan;
    return scanWindows(scan, clause, evidence, survey);
  },
  over(clause, evidence, survey, where): Measurement | null {
    const parts = partsOf(clause);
    const { dipsExplained } = separateLoss(evidence, survey);
    const mean = parts.loss ? meanLossOver(survey, where, dipsExplained, evidence.loopLength) : null;
    const seenShare = mean?.seenShare ?? coveredShare(survey, where);
    if (seenShare < SEEN_SHARE_NEEDED) return null;
    if (parts.loss && mean === null) return null;
    const { area, uncertainty } = breaksOver(clause, evidence, survey, where);
    const distributed = mean === null ? 0 : Math.max(0, mean.mean);
    const scale = (survey.comparison?.scaleUncertainty ?? 0) * distributed;
    return { value: distributed + area, uncertainty: Math.hypot(parts.loss ? lossUncertainty(survey, where) : 0, scale, uncertainty) };
  },
};

function windowOf(clause: Clause, evidence: Evidence, survey: Survey): number | null {
  // Without a window of its own a loss of strength is read over one averaging length of LMA: nothing shorter can be read.
  if (clause.window === null) return survey.rope.averagingLength;
  return windowInMetres(clause.window, evidence.geometry);
}

interface Scan {
  readonly survey: Survey;
  readonly width: number;
  /** Samples in a window. */
  readonly span: number;
  readonly samples: number;
  readonly loop: boolean;
  readonly sums: LossSums | null;
  readonly seen: Int32Array;
  readonly events: readonly BreakEvent[];
  readonly notes: readonly string[];
  readonly lowerBound: boolean;
}

function prepare(clause: Clause, evidence: Evidence, survey: Survey, width: number): Scan | { needs: string } {
  const { dipsExplained, inLma } = separateLoss(evidence, survey);
  const parts = partsOf(clause);
  const sums = parts.loss ? lossSums(evidence, survey, dipsExplained) : null;
  const found = breakEvents(evidence, survey);
  if (sums === null && !found.seenByEye && !found.indicated) return { needs: 'an LMA trace, LF indications or counted broken wires' };
  const seen = sums?.seen ?? seenByFault(survey);
  const { step, length } = survey.rope;
  if (length === 0) return { needs: 'a length that was inspected' };
  const loop = evidence.loopLength !== null && Math.abs(length * step - evidence.loopLength) <= 2 * step;
  const notes: string[] = [];
  const counted = found.events.filter((event) => (event.loose ? clause.looseWiresCount === true : true) && !inLma.has(event));
  if (counted.some((event) => event.area === null)) notes.push('the area of a wire is not known: broken wires are not added');
  if (parts.loss && sums === null) notes.push('no LMA was measured: broken wires only');
  let span = Math.max(1, Math.round(width / step));
  if (span > length) {
    notes.push('the rope is shorter than the reference length: the whole rope is taken');
    span = length;
  }
  if (sums !== null && width < survey.rope.averagingLength) notes.push(`the reference length ${width.toFixed(2)} m is shorter than the averaging length of LMA ${survey.rope.averagingLength} m: a shorter loss reads low`);
  const lowerBound = (parts.loss && sums === null) || counted.some((event) => event.area === null);
  return { survey, width, span, samples: length, loop, sums, seen, events: counted, notes, lowerBound };
}

function seenByFault(survey: Survey): Int32Array {
  const { length, fault, loss } = survey.rope;
  const valid = fault?.valid ?? loss?.valid ?? null;
  const seen = new Int32Array(length + 1);
  for (let i = 0; i < length; i += 1) seen[i + 1] = seen[i] + (valid === null ? 0 : valid[i]);
  return seen;
}

function scanWindows(scan: Scan, clause: Clause, evidence: Evidence, survey: Survey): Judged {
  const { span, samples, loop, seen, sums } = scan;
  const { start, step } = survey.rope;
  const breaks = weightedWindow(scan.events, evidence.loopLength, loop);
  const worst = worstWindows({ start, step, samples, span, loop, seen, sum: sums?.sum ?? null, needed: SEEN_SHARE_NEEDED * span, breaks });
  if (worst === null) return { needs: 'a window of which at least half was inspected' };
  return { governing: governingOf(scan, clause, evidence, worst.index, worst.value), along: worst.along };
}

function over(running: Float64Array | Int32Array, first: number, span: number, samples: number): number {
  const end = first + span;
  return end <= samples ? running[end] - running[first] : running[samples] - running[first] + running[end - samples];
}

function governingOf(scan: Scan, clause: Clause, evidence: Evidence, index: number, value: number): Governing {
  const { survey, span, samples, seen } = scan;
  const from = survey.rope.start + (index - 0.5) * survey.rope.step;
  const where: Interval<'rope'> = { from: ropePosition(from), to: ropePosition(from + span * survey.rope.step) };
  const { area, uncertainty, wires } = breaksOver(clause, evidence, survey, where);
  const notes = [...scan.notes];
  const unseen = 1 - over(seen, index, span, samples) / span;
  if (scan.sums !== null) notes.unshift(`distributed loss ${Math.max(0, value - area).toFixed(2)} %${area > 0 ? ` and ${wires} broken wire${wires === 1 ? '' : 's'} ${area.toFixed(2)} %` : ''}`);
  const pits = pitsOrBreaks(evidence, survey, where);
  if (pits > 0) notes.push(`${pits} of the LF indications lie in a corroded zone, where a pit may look like a broken wire: look there`);
  if (clause.window === null) notes.push(`read over ${scan.width.toFixed(2)} m, the averaging length of LMA`);
  if (unseen > 0) notes.push(`${Math.max(0.1, 100 * unseen).toFixed(1)} % of this length was NOT INSPECTED: the value is that of the inspected part`);
  return {
    where, value, uncertainty: Math.hypot(scan.sums === null ? 0 : lossUncertainty(survey, where), uncertainty),
    lowerBound: scan.lowerBound, exact: false, note: notes.join('; '),
  };
}

/** LF indications in a corroded zone that nobody has seen as broken wires. */
function pitsOrBreaks(evidence: Evidence, survey: Survey, where: Interval<'rope'>): number {
  const corroded = survey.condition.zones.filter((zone) => zone.kind === 'corrosion');
  return breakEvents(evidence, survey).events.filter((event) => event.seen === 0 && holds(where, event.position, evidence.loopLength)
    && corroded.some((zone) => event.position >= zone.where.from && event.position <= zone.where.to)).length;
}

/** Area of the wires broken in one length and its uncertainty; each named wire once. */
function breaksOver(clause: Clause, evidence: Evidence, survey: Survey, where: Interval<'rope'>): { area: number; uncertainty: number; wires: number } {
  const { inLma } = separateLoss(evidence, survey);
  const named = new Set<string>();
  let area = 0;
  let square = 0;
  let wires = 0;
  for (const event of breakEvents(evidence, survey).events) {
    if (event.loose && clause.looseWiresCount !== true) continue;
    if (inLma.has(event) || event.area === null || !holds(where, event.position, evidence.loopLength)) continue;
    if (event.wire !== null && named.has(event.wire)) continue;
    if (event.wire !== null) named.add(event.wire);
    area += event.area;
    wires += event.count;
    square += event.areaUncertainty ** 2;
  }
  return { area, uncertainty: Math.sqrt(square), wires };
}

/** Whether a length holds a position; on a loop the length may run past the seam. Both ends count. */
export function holds(where: Interval<'rope'>, position: number, loopLength: number | null): boolean {
  const inside = (at: number) => at >= where.from - 1e-9 && at <= where.to + 1e-9;
  return inside(position) || (loopLength !== null && (inside(position + loopLength) || inside(position - loopLength)));
}

export function coveredShare(survey: Survey, where: Interval<'rope'>): number {
  let seen = 0;
  for (const each of survey.covered) seen += Math.max(0, Math.min(each.to, where.to) - Math.max(each.from, where.from));
  return where.to > where.from ? seen / (where.to - where.from) : survey.covered.some((each) => where.from >= each.from && where.from <= each.to) ? 1 : 0;
}
