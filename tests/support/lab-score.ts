import type { Condition, Zone } from '../../analysis/condition/condition.ts';
import type { ConditionContext } from '../../analysis/condition/condition-context.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { zoneMean } from './lab-trace.ts';
import type { LabConditions, LabZone } from './lab-trace.ts';

/** What the app would know of a laboratory rope beside its trace: nothing but, on two ropes of three, its strand spacing. */
export function laboratoryContext(conditions: LabConditions): ConditionContext {
  return {
    known: [], blind: [], nominalStrandSpacing: conditions.seed % 3 === 0 ? null : conditions.strandSpacing, outerWireSharePercent: null,
    outerWireDiameterMm: null, knownWireCalibration: null, visualBreaks: [], seed: 1, checkpoint: noCheckpoint,
  };
}

/** Findings held against the truth of one or more traces. Errors in metres and in points of percent. */
export interface LabScore {
  readonly strong: { found: number; of: number };
  readonly weak: { found: number; of: number };
  falseCalls: number;
  length: number;
  readonly placeErrors: number[];
  readonly zones: { found: number; of: number; kindRight: number; invented: number };
  readonly overlaps: number[];
  readonly meanErrors: number[];
}

export function emptyScore(): LabScore {
  return { strong: { found: 0, of: 0 }, weak: { found: 0, of: 0 }, falseCalls: 0, length: 0, placeErrors: [], zones: { found: 0, of: 0, kindRight: 0, invented: 0 }, overlaps: [], meanErrors: [] };
}

/** A fault further than this from the place of its break is another's, m. */
const MATCH = 0.05;

export function addScore(score: LabScore, truth: LabConditions, found: Condition<'measured'>): void {
  score.length += truth.length;
  const used = new Set<number>();
  for (const fault of [...truth.faults].sort((a, b) => b.snr - a.snr)) {
    const part = fault.snr >= 6 ? score.strong : score.weak;
    part.of += 1;
    let nearest = -1;
    found.faults.forEach((each, i) => {
      const distance = Math.abs(each.position - fault.position);
      if (!used.has(i) && distance < MATCH && (nearest < 0 || distance < Math.abs(found.faults[nearest].position - fault.position))) nearest = i;
    });
    if (nearest < 0) continue;
    used.add(nearest);
    part.found += 1;
    score.placeErrors.push(Math.abs(found.faults[nearest].position - fault.position));
  }
  score.falseCalls += found.faults.length - used.size;
  addZones(score, truth, found.zones);
}

function addZones(score: LabScore, truth: LabConditions, found: readonly Zone<'measured'>[]): void {
  const taken = new Set<Zone<'measured'>>();
  for (const zone of truth.zones.filter((each) => zoneMean(each) >= 0.8 && each.to - each.from >= 5)) {
    score.zones.of += 1;
    const best = found.reduce<Zone<'measured'> | null>((so, each) => (overlapOf(zone, each) > (so ? overlapOf(zone, so) : 0) ? each : so), null);
    if (!best || overlapOf(zone, best) < 0.3) continue;
    taken.add(best);
    score.zones.found += 1;
    score.overlaps.push(overlapOf(zone, best));
    score.meanErrors.push(best.meanLossPercent - zoneMean(zone));
    if (best.kind === zone.kind) score.zones.kindRight += 1;
  }
  score.zones.invented += found.filter((each) => !taken.has(each) && truth.zones.every((zone) => overlapOf(zone, each) <= 0)).length;
}

/** Intersection over union of the extents. */
export function overlapOf(zone: LabZone, { where }: Zone<'measured'>): number {
  return Math.max(0, Math.min(zone.to, where.to) - Math.max(zone.from, where.from)) / (Math.max(zone.to, where.to) - Math.min(zone.from, where.from));
}

export const share = (part: { found: number; of: number }): number => (part.of === 0 ? 1 : part.found / part.of);

export function medianOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}
