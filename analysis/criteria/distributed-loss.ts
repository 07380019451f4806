import type { Interval } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';
import type { BreakEvent } from './break-events.ts';
import { breakEvents } from './break-events.ts';
import type { Evidence } from './criterion.ts';
import { modulo } from '../signal/modulo.ts';

/**
 * Distributed loss and broken wires made two parts that may be added. LMA does not see a narrow break, so the two usually differ;
 * but a short dip of LMA at broken wires is those wires. There the larger of the two is kept: the dip is taken out where the wires
 * account for all of it, and the wires are left out where the dip is deeper than they are.
 */
export interface SeparatedLoss {
  /** Lengths whose LMA dip is already accounted for by broken wires. */
  readonly dipsExplained: readonly Interval<'rope'>[];
  /** Events whose area LMA already shows. */
  readonly inLma: ReadonlySet<BreakEvent>;
}

const known = new WeakMap<Survey, { evidence: Evidence; found: SeparatedLoss }>();

export function separateLoss(evidence: Evidence, survey: Survey): SeparatedLoss {
  const before = known.get(survey);
  if (before && before.evidence === evidence) return before.found;
  const { events } = breakEvents(evidence, survey);
  const reach = survey.rope.averagingLength;
  const dipsExplained: Interval<'rope'>[] = [];
  const inLma = new Set<BreakEvent>();
  for (const zone of survey.condition.zones) {
    if (zone.where.to - zone.where.from > 2 * reach) continue;
    const inside = events.filter((event) => event.area !== null && event.position >= zone.where.from && event.position <= zone.where.to);
    if (inside.length === 0) continue;
    const area = inside.reduce((sum, event) => sum + (event.area ?? 0), 0);
    const depth = zone.lossRangePercent?.high ?? zone.peakLossPercent;
    if (area >= depth) dipsExplained.push(zone.where);
    else for (const event of inside) inLma.add(event);
  }
  const found = { dipsExplained, inLma };
  known.set(survey, { evidence, found });
  return found;
}

/** Running sums of loss and of valid samples; `sum[i]` covers the samples before i. */
export interface LossSums {
  readonly sum: Float64Array;
  readonly seen: Int32Array;
}

/** The sums of the inspection judged last: the clauses of a set ask for them one after another. One entry, so that long ropes do not pile up. */
const lastSums = new WeakMap<Evidence, { survey: Survey; sums: LossSums | null }>();

/** Linear time at the first call for an inspection; null where it has no LMA. */
export function lossSums(evidence: Evidence, survey: Survey, dipsExplained: readonly Interval<'rope'>[]): LossSums | null {
  const before = lastSums.get(evidence);
  if (before?.survey === survey) return before.sums;
  const sums = sumUp(survey, dipsExplained);
  lastSums.set(evidence, { survey, sums });
  return sums;
}

function sumUp(survey: Survey, dipsExplained: readonly Interval<'rope'>[]): LossSums | null {
  const { loss, length, start, step } = survey.rope;
  if (loss === null) return null;
  const sum = new Float64Array(length + 1);
  const seen = new Int32Array(length + 1);
  const explained = dipsExplained.length === 0 ? null : maskOf(dipsExplained, start, step, length);
  const { values, valid } = loss;
  let total = 0;
  let count = 0;
  for (let i = 0; i < length; i += 1) {
    if (valid[i] === 1) {
      count += 1;
      if (explained === null || explained[i] === 0) total += values[i];
    }
    sum[i + 1] = total;
    seen[i + 1] = count;
  }
  return { sum, seen };
}

export function maskOf(intervals: readonly Interval<'rope'>[], start: number, step: number, length: number): Uint8Array {
  const mask = new Uint8Array(length);
  for (const { from, to } of intervals) {
    const first = Math.min(length, Math.max(0, Math.ceil((from - start) / step - 1e-9)));
    const end = Math.min(length, Math.max(first, Math.ceil((to - start) / step - 1e-9)));
    mask.fill(1, first, end);
  }
  return mask;
}

/** Mean loss over the seen part of one length, and the share of it that was seen. */
export function meanLossOver(survey: Survey, where: Interval<'rope'>, dipsExplained: readonly Interval<'rope'>[], loopLength: number | null): { mean: number; seenShare: number } | null {
  const { loss, length, start, step } = survey.rope;
  if (loss === null) return null;
  const first = Math.ceil((where.from - start) / step - 1e-9);
  const end = Math.max(first + 1, Math.ceil((where.to - start) / step - 1e-9));
  const round = loopLength === null ? null : Math.round(loopLength / step);
  let total = 0;
  let count = 0;
  for (let i = first; i < end; i += 1) {
    const at = round === null || (i >= 0 && i < length) ? i : modulo(i, round);
    if (at < 0 || at >= length || loss.valid[at] !== 1) continue;
    count += 1;
    const position = start + at * step;
    if (!dipsExplained.some((dip) => position >= dip.from && position < dip.to)) total += loss.values[at];
  }
  return { mean: count === 0 ? 0 : total / count, seenShare: count / (end - first) };
}
