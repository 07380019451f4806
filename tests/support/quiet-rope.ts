import { assessCondition } from '../../analysis/condition/assess-condition.ts';
import type { Condition } from '../../analysis/condition/condition.ts';
import type { ConditionContext } from '../../analysis/condition/condition-context.ts';
import type { Trace } from '../../analysis/rope/trace.ts';
import { laboratoryContext } from './lab-score.ts';
import type { LabConditions, LabFault, LabZone } from './lab-trace.ts';
import { makeLabTrace } from './lab-trace.ts';

/** Conditions of a plain laboratory rope: white noise, 0.3 m averaging, no strand pattern, drift, gaps, faults or zones but those given. */
export function quietRope(changes: Partial<LabConditions> = {}): LabConditions {
  return {
    seed: 1, start: 0, length: 200, step: 0.005, averagingLength: 0.3, strandSpacing: null, strandShare: 0, phaseWander: 0, harmonicShare: 0, flickerShare: 0,
    faultScale: 1, faultOffset: 0, lossNoise: 0.08, lossFlicker: 0.01, lossStrand: 0, drift: 0, driftWave: 0, lossOffset: 0, faults: [], zones: [], gaps: [], ...changes,
  };
}

export const breakAt = (position: number, snr: number, more: Partial<LabFault> = {}): LabFault => ({ position, snr, r: 0.026, form: 'axial', sign: 1, ...more });
export const zoneAt = (from: number, to: number, depth: number, more: Partial<LabZone> = {}): LabZone => ({ from, to, depth, kind: 'wear', edge: 'ramp', edgeLength: 0.1 * (to - from), texture: 3, ...more });

/** What the analysis makes of it. */
export function assessLab(conditions: LabConditions, context: Partial<ConditionContext> = {}): Promise<Condition<'measured'>> {
  return assessTrace(makeLabTrace(conditions), conditions, context);
}

export function assessTrace(trace: Trace<'measured'>, conditions: LabConditions, context: Partial<ConditionContext> = {}): Promise<Condition<'measured'>> {
  return assessCondition(trace, { ...laboratoryContext(conditions), ...context });
}
