import type { Trace } from '../rope/trace.ts';
import { measuredPosition } from '../rope/units.ts';
import type { Zone } from './condition.ts';
import { lossBlocks } from './loss-blocks.ts';
import type { LossBlocks } from './loss-blocks.ts';
import { lossScatter, scatterAt } from './loss-scatter.ts';
import type { LossScatter } from './loss-scatter.ts';
import type { ConditionParameters } from './parameters.ts';
import { segmentLoss } from './segment-loss.ts';
import type { LossSegmentation } from './segment-loss.ts';
import { textureRatio } from './texture.ts';
import type { Texture } from './texture.ts';
import { outlineZone } from './zone-outline.ts';
import { measureLoss } from './zone-loss.ts';

export interface ZoneSearch {
  readonly zones: readonly Zone<'measured'>[];
  readonly blocks: LossBlocks;
  readonly segmentation: LossSegmentation;
  readonly scatter: LossScatter;
  /** LMA over the baseline, trace grid. */
  readonly fromBaseline: Float64Array;
}

/** Finds lengths of distributed loss in LMA within `mask`. Null where the mask leaves nothing to judge. */
export function findZones(trace: Trace<'measured'>, mask: Uint8Array, texture: Texture | null, parameters: ConditionParameters): ZoneSearch | null {
  if (!trace.loss) return null;
  const blocks = lossBlocks(trace.loss.values, mask, trace.step, parameters.lossBlock);
  if (!blocks.weight.some((each) => each > 0)) return null;
  const segmentation = segmentLoss(blocks, parameters);
  const scatter = lossScatter(segmentation.level, segmentation.soundWeight, blocks.length);
  const fromBaseline = removeBaseline(trace.loss.values, blocks, segmentation);
  const stretches = lossStretches(segmentation, blocks, scatter, parameters);
  const zones: Zone<'measured'>[] = [];
  stretches.forEach(({ from, end }, i) => {
    const before = i > 0 ? stretches[i - 1].end : 0;
    const after = i + 1 < stretches.length ? stretches[i + 1].from : segmentation.level.length;
    const outline = outlineZone(blocks, segmentation, from, end, before, after, trace.averagingLength);
    const zone = describeZone(trace, mask, fromBaseline, outline, scatter, texture, parameters);
    if (zone) zones.push({ ...zone, id: `z${zones.length + 1}` });
  });
  return { zones, blocks, segmentation, scatter, fromBaseline };
}

function removeBaseline(values: Float64Array, blocks: LossBlocks, { baseline }: LossSegmentation): Float64Array {
  const { spacing, knots } = baseline;
  const rest = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) {
    const place = ((i + 0.5) / blocks.width - 0.5) / spacing;
    const below = Math.max(0, Math.min(knots.length - 2, Math.floor(place)));
    rest[i] = values[i] - (knots[below] + (place - below) * (knots[below + 1] - knots[below]));
  }
  return rest;
}

/** Joined segments of loss, in blocks, that stand out by size and significance. */
function lossStretches({ segments }: LossSegmentation, blocks: LossBlocks, scatter: LossScatter, parameters: ConditionParameters): { from: number; end: number }[] {
  const joined: { from: number; end: number; peak: number; sum: number; weight: number }[] = [];
  let gap = Infinity;
  for (const { from, end, level, weight } of segments) {
    const length = (end - from) * blocks.length;
    const least = Math.max(0.4 * parameters.smallestZoneLoss, 3 * scatterAt(scatter, length));
    if (weight <= 0 || level < least) {
      gap += length;
      continue;
    }
    const last = joined[joined.length - 1];
    if (last && gap < parameters.zoneJoin) {
      last.end = end;
      last.peak = Math.max(last.peak, level);
      last.sum += level * weight;
      last.weight += weight;
    } else joined.push({ from, end, peak: level, sum: level * weight, weight });
    gap = 0;
  }
  return joined.filter(({ sum, weight, peak }) => {
    const needed = Math.max(parameters.smallestZoneLoss, parameters.zoneSignificance * scatterAt(scatter, weight * blocks.length));
    return sum / weight >= needed || peak >= 2 * needed;
  });
}

function describeZone(trace: Trace<'measured'>, mask: Uint8Array, fromBaseline: Float64Array, outline: { from: number; to: number; edgeUncertainty: number }, scatter: LossScatter, texture: Texture | null, parameters: ConditionParameters): Omit<Zone<'measured'>, 'id'> | null {
  const { step } = trace;
  const length = outline.to - outline.from;
  const loss = measureLoss(fromBaseline, mask, step, outline.from, outline.to, trace.averagingLength);
  const error = scatterAt(scatter, length);
  if (!loss || loss.mean < Math.max(parameters.smallestZoneLoss, parameters.zoneSignificance * error) * 0.8) return null;
  // The middle of the zone: its edges are part sound.
  const inner = 0.2 * length;
  const found = texture && textureRatio(texture, (outline.from + inner) / step, (outline.to - inner) / step);
  const short = length < trace.averagingLength;
  return {
    where: { from: measuredPosition(trace.start + outline.from - step / 2), to: measuredPosition(trace.start + outline.to - step / 2) },
    edgeUncertainty: outline.edgeUncertainty, kind: kindOf(found, parameters.textureRaised), textureRatio: found ? found.ratio : 1,
    meanLossPercent: loss.mean, peakLossPercent: loss.peak,
    uncertaintyPercent: 1.96 * Math.hypot(error, (loss.mean * outline.edgeUncertainty) / Math.max(length, outline.edgeUncertainty) / 4),
    lossRangePercent: short ? { low: loss.peak, high: Math.min(100, loss.total / Math.max(step, length - outline.edgeUncertainty)) } : null,
  };
}

/** Corrosion roughens wires, wear does not; where too few samples tell the two apart it is loss of unknown kind. */
function kindOf(texture: { ratio: number; samples: number } | null, raised: number): Zone<'measured'>['kind'] {
  if (!texture) return 'loss';
  // Neighbouring samples of LF are alike: about one in four counts.
  const error = 1 / Math.sqrt(2 * Math.max(1, texture.samples / 4));
  if (Math.abs(Math.log(texture.ratio / raised)) < 1.5 * error) return 'loss';
  return texture.ratio > raised ? 'corrosion' : 'wear';
}
