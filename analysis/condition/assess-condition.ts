import { unionOf } from '../rope/interval.ts';
import type { Trace } from '../rope/trace.ts';
import { measuredPosition } from '../rope/units.ts';
import type { Condition, Profile } from './condition.ts';
import type { ConditionContext } from './condition-context.ts';
import { detectableFault } from './detectable-fault.ts';
import { detectableLoss } from './detectable-loss.ts';
import { findFaults } from './find-faults.ts';
import type { FaultSearch } from './find-faults.ts';
import { findZones } from './find-zones.ts';
import type { ZoneSearch } from './find-zones.ts';
import { judgedMask } from './judged-mask.ts';
import { resolveParameters } from './parameters.ts';
import type { ConditionParameters } from './parameters.ts';
import { measureTexture } from './texture.ts';
import type { Texture } from './texture.ts';
import { baselineOf } from './describe-baseline.ts';

export type { ConditionContext } from './condition-context.ts';

/**
 * What one trace says of the rope, in the file's own positions: local faults from LF, zones of distributed loss from LMA,
 * and by position what would have been found had it been there. Known features and blind lengths are not judged; a
 * channel that is missing leaves its findings empty. Linear in the length of the trace, but for the search of changed
 * lengths, which runs on blocks. Rejects with Cancelled where the checkpoint does.
 */
export async function assessCondition(trace: Trace<'measured'>, context: ConditionContext): Promise<Condition<'measured'>> {
  const parameters = resolveParameters(context.parameters);
  const { checkpoint } = context;
  const without = unionOf([...context.known, ...context.blind]);
  await checkpoint('Reading LF', 0);
  const faultMask = trace.fault ? judgedMask(trace, trace.fault, without) : null;
  const faults = faultMask ? await findFaults(trace, faultMask, context, parameters, (stage, share) => checkpoint(stage, 0.7 * share)) : null;
  const texture = faults && faultMask ? measureTexture(faults, faultMask, trace.start, trace.step) : null;
  await checkpoint('Seeking lengths of loss', 0.75);
  const zones = trace.loss ? findZones(trace, judgedMask(trace, trace.loss, without), texture, parameters) : null;
  await checkpoint('Stating what would have been found', 0.9);
  const condition = describe(trace, context, parameters, { faults, faultMask, texture, zones });
  await checkpoint('Condition stated', 1);
  return condition;
}

interface Found { readonly faults: FaultSearch | null; readonly faultMask: Uint8Array | null; readonly texture: Texture | null; readonly zones: ZoneSearch | null }

function describe(trace: Trace<'measured'>, context: ConditionContext, parameters: ConditionParameters, { faults, faultMask, texture, zones }: Found): Condition<'measured'> {
  const { step } = trace;
  const smallest = faults && faultMask ? detectableFault(faults, faultMask, step, parameters, context.seed) : null;
  return {
    faults: faults?.faults ?? [], zones: zones?.zones ?? [],
    faultNoise: faults ? profileOf(trace, faults.noise, faults.levelled.blockWidth) : EMPTY,
    smallestFaultAmplitude: faults && smallest ? profileOf(trace, Float64Array.from(faults.noise, (rms, block) => Math.max(parameters.faultLeastShare * rms, smallest[faults.levels.stretchOf[Math.min(block, faults.levels.stretchOf.length - 1)]] * faults.levels.louder[Math.min(block, faults.levels.louder.length - 1)])), faults.levelled.blockWidth) : EMPTY,
    smallestZoneLoss: zones ? profileOf(trace, detectableLoss(zones, trace.averagingLength, parameters, context.seed), zones.blocks.width) : EMPTY,
    baseline: zones ? baselineOf(trace, zones) : { where: null, level: EMPTY, basis: 'no LMA in this run: losses cannot be stated' },
    lossFromBaseline: zones && trace.loss ? { values: zones.fromBaseline, valid: trace.loss.valid } : null,
    texture: texture ? profileOf(trace, texture.square.map((square) => (texture.usual > 0 ? Math.sqrt(square) / texture.usual : 1)), texture.blockWidth) : EMPTY,
    noiseOfLoss: zones?.blocks.noise ?? 0, strandSpacing: faults?.spacing ?? null,
    parameters: { ...parameters, ...(faults ? { faultThresholdFound: faults.threshold.sound.score, faultTailFound: faults.threshold.sound.tail } : {}) },
  };
}

const EMPTY: Profile<'measured'> = { positions: [], values: [] };

/** Values by block as a coarse profile, a point about every metre. */
function profileOf(trace: Trace<'measured'>, values: Float64Array, blockWidth: number): Profile<'measured'> {
  const every = Math.max(1, Math.round(1 / (blockWidth * trace.step)));
  const positions = [];
  const chosen = [];
  for (let block = Math.floor(every / 2); block < values.length; block += every) {
    positions.push(measuredPosition(trace.start + (block + 0.5) * blockWidth * trace.step));
    chosen.push(values[block]);
  }
  return { positions, values: chosen };
}
