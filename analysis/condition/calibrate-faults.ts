import { medianInPlace } from '../signal/median.ts';
import type { ConditionContext } from './condition-context.ts';
import type { Fault } from './condition.ts';

export interface FaultCalibration {
  /** Percent of metallic area per LF unit; null where nothing tells. */
  readonly percentPerUnit: number | null;
  readonly basis: Fault<'measured'>['lossCalibration'];
}

/**
 * Scale of LF: from a known wire; else from breaks that were seen, each taken as that many outer wires against the summed
 * height of the indications beside it (the median of such places); else none, and losses stay unstated.
 */
export function calibrateFaults(found: readonly { position: number; amplitude: number }[], context: ConditionContext, matchWithin: number): FaultCalibration {
  if (context.knownWireCalibration !== null) return { percentPerUnit: context.knownWireCalibration, basis: 'known-wire' };
  const share = context.outerWireSharePercent;
  if (share === null) return { percentPerUnit: null, basis: 'uncalibrated' };
  const scales: number[] = [];
  for (const seen of context.visualBreaks) {
    let height = 0;
    for (const each of found) if (Math.abs(each.position - seen.position) <= matchWithin) height += Math.abs(each.amplitude);
    if (height > 0 && seen.count > 0) scales.push((seen.count * share) / height);
  }
  if (scales.length === 0) return { percentPerUnit: null, basis: 'uncalibrated' };
  return { percentPerUnit: medianInPlace(Float64Array.from(scales)), basis: 'visual-breaks' };
}
