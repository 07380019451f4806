import type { RopeMap } from '../alignment/rope-map.ts';
import { finding } from '../intake/findings.ts';
import type { CombinedInspection } from './combine-inspections.ts';

/**
 * Texture that repeats with the opposite sign shows that loss points one way in one scan and the other way in another.
 * The side with more evidence of its own is right (a stated sign outweighs any evidence); scans of the other side are turned
 * and say so. Where statements contradict each other nothing is turned.
 */
export function settleSigns(combined: readonly CombinedInspection[], maps: readonly RopeMap[]): CombinedInspection[] {
  const sides = { same: 0, opposed: 0 };
  combined.forEach((each, k) => {
    sides[maps[k].opposed ? 'opposed' : 'same'] += weightOf(each);
  });
  const wrong = maps.some((map) => map.opposed) ? sides.opposed > sides.same : null;
  return combined.map((each, k) => {
    if (wrong === null || Boolean(maps[k].opposed) === wrong || !each.trace.loss) return each;
    return isStated(each) ? contradicted(each) : turned(each);
  });
}

const STATED = 1e9;

const isStated = (each: CombinedInspection): boolean => each.runs.some((run) => run.lossSign?.fixed);

/** Percent metres that stand off to the side of loss as the runs were read; a little for the mere fact that they were read so. */
function weightOf(each: CombinedInspection): number {
  return isStated(each) ? STATED : 0.1 + each.runs.reduce((most, run) => Math.max(most, Math.abs(run.lossSign?.evidence ?? 0)), 0);
}

function turned(each: CombinedInspection): CombinedInspection {
  const loss = each.trace.loss!;
  const { start, step, length } = each.trace;
  const trace = { ...each.trace, loss: { values: loss.values.map((value) => 0 - value), valid: loss.valid } };
  return {
    ...each, trace, alignmentInput: { ...each.alignmentInput, trace },
    quality: [...each.quality, finding('sign-from-other-runs', 'warning', start, start + (length - 1) * step, 'LMA of this scan repeats that of the other scans with the opposite sign, and they show more clearly which way loss points: this scan was turned. State the sign of loss in the record.')],
  };
}

function contradicted(each: CombinedInspection): CombinedInspection {
  const { start, step, length } = each.trace;
  return { ...each, quality: [...each.quality, finding('sign-contradicted', 'warning', start, start + (length - 1) * step, 'LMA of this scan repeats that of the other scans with the opposite sign, yet the record states which way loss points: one of the statements is wrong. Check the sign of loss before any comparison.')] };
}
