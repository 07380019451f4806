import type { Trace } from '../rope/trace.ts';
import { measuredPosition } from '../rope/units.ts';
import type { Zone } from './condition.ts';
import { lossBlocks } from './loss-blocks.ts';
import type { LossBlocks } from './loss-blocks.ts';
import { lossScatter, scatterAt } from './loss-scatter.ts';
import type { LossScatter } from './loss-scatter.ts';
import type { ConditionParameters } from './parameters.ts';
import { segmentLoss } from './segment-loss.ts';
import type { LevelSegment, LossSegmentation } from './segment-loss.ts';
import { textureRatio } from './texture.ts';
import type { Texture } from './texture.ts';
import { lossProfile } from './loss-profile.ts';
import type { LossProfile } from './loss-profile.ts';
import { fitShortLoss } from './short-loss.ts';
import { OUTSIDE, outlineZone } from './zone-outline.ts';
import type { ZoneOutline } from './zone-outline.ts';
import { measureLoss } from './zone-loss.ts';
import { levelBeside, meanLevel } from './mean-level.ts';

export interface ZoneSearch {
  readonly zones: readonly Zone<'measured'>[];
  readonly blocks: LossBlocks;
  readonly segmentation: LossSegmentation;
  readonly scatter: LossScatter;
  /** Weight of blocks outside the zones: sound rope with whatever its noise does there, 0 elsewhere. */
  readonly outsideWeight: Float64Array;
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
  const outsideWeight = blocks.weight.slice();
  const margin = Math.max(1, Math.round(parameters.zoneJoin / blocks.length));
  const zones: Zone<'measured'>[] = [];
  stretches.forEach(({ from, end }, i) => {
    const place = (block: number) => block * blocks.length;
    const before = i > 0 ? place(stretches[i - 1].end) : 0;
    const after = i + 1 < stretches.length ? place(stretches[i + 1].from) : trace.length * trace.step;
    const profile = lossProfile(fromBaseline, mask, trace.step, blocks, segmentation, Math.max(before, place(from) - OUTSIDE), Math.min(after, place(end) + OUTSIDE));
    const outline = outlineZone(profile, place(from), place(end), before, after, trace.averagingLength);
    const describe = (within: ZoneOutline) => describeZone(trace, mask, fromBaseline, profile, within, scatter, texture, parameters);
    // Beside rope that is not level the fit may spread a zone until it no longer stands out: it is then where the levels changed.
    const zone = describe(outline) ?? (standsOutBeside({ from, end }, segmentation, blocks, scatter, parameters) ? describe(betweenChanges(place(from), place(end), outline)) : null);
    if (!zone) return;
    zones.push({ ...zone, id: `z${zones.length + 1}` });
    outsideWeight.fill(0, Math.max(0, from - margin), end + margin);
  });
  return { zones, blocks, segmentation, scatter, outsideWeight, fromBaseline };
}

/** Whether a stretch stands out over the rope on either side as far as a zone must over the baseline. */
function standsOutBeside({ from, end }: LossStretch, { level }: LossSegmentation, { weight, length }: LossBlocks, scatter: LossScatter, parameters: ConditionParameters): boolean {
  const reach = Math.round(OUTSIDE / length);
  return meanLevel(level, weight, from, end) - levelBeside(level, weight, from, end, reach) >= neededAt((end - from) * length, scatter, parameters);
}

/** The extent between two changes of level; each end may lie as far off as the fit put it. */
function betweenChanges(from: number, to: number, fitted: ZoneOutline): ZoneOutline {
  return { from, to, fromUncertainty: Math.max(fitted.fromUncertainty, Math.abs(fitted.from - from)), toUncertainty: Math.max(fitted.toUncertainty, Math.abs(fitted.to - to)) };
}

function removeBaseline(values: Float64Array, blocks: LossBlocks, { baseline }: LossSegmentation): Float64Array {
  const { spacing, knots } = baseline;
  const rest = new Float64Array(values.length);
  // Samples from the centre of one knot's block to the next; the first and last pieces run on beyond theirs.
  const length = spacing * blocks.width;
  const centre = (knot: number) => (knot * spacing + 0.5) * blocks.width - 0.5;
  for (let knot = 0; knot + 1 < knots.length; knot += 1) {
    const from = knot === 0 ? 0 : Math.max(0, Math.ceil(centre(knot)));
    const end = knot + 2 === knots.length ? values.length : Math.min(values.length, Math.ceil(centre(knot + 1)));
    const slope = (knots[knot + 1] - knots[knot]) / length;
    const start = knots[knot] - slope * centre(knot);
    for (let i = from; i < end; i += 1) rest[i] = values[i] - start - slope * i;
  }
  return rest;
}

interface LossStretch { readonly from: number; readonly end: number }

/** Joined segments of loss, in blocks, that stand out by size and significance. */
function lossStretches({ segments }: LossSegmentation, blocks: LossBlocks, scatter: LossScatter, parameters: ConditionParameters): LossStretch[] {
  const raised = segments.filter(({ from, end, level, weight }) => weight > 0 && level >= Math.max(0.4 * parameters.smallestZoneLoss, 3 * scatterAt(scatter, (end - from) * blocks.length)));
  // A long length that is hardly raised beside a marked one must not take the marked one down with it.
  return joined(raised, blocks, parameters).flatMap((members) => (standsOut(members, blocks, scatter, parameters) ? [members] : joined(members.filter((each) => standsOut([each], blocks, scatter, parameters)), blocks, parameters)))
    .map((members) => ({ from: members[0].from, end: members[members.length - 1].end }));
}

/** Segments nearer to each other than zones are kept apart, together. */
function joined(segments: readonly LevelSegment[], blocks: LossBlocks, parameters: ConditionParameters): LevelSegment[][] {
  const groups: LevelSegment[][] = [];
  for (const segment of segments) {
    const last = groups[groups.length - 1];
    if (last && (segment.from - last[last.length - 1].end) * blocks.length < parameters.zoneJoin) last.push(segment);
    else groups.push([segment]);
  }
  return groups;
}

function standsOut(members: readonly LevelSegment[], blocks: LossBlocks, scatter: LossScatter, parameters: ConditionParameters): boolean {
  let [sum, weight, peak] = [0, 0, 0];
  for (const each of members) {
    sum += each.level * each.weight;
    weight += each.weight;
    peak = Math.max(peak, each.level);
  }
  const needed = neededAt(weight * blocks.length, scatter, parameters);
  return sum / weight >= needed || peak >= 2 * needed;
}

/** Mean loss that a zone must reach to be called, percent. */
const neededAt = (length: number, scatter: LossScatter, parameters: ConditionParameters): number => Math.max(parameters.smallestZoneLoss, parameters.zoneSignificance * scatterAt(scatter, length));

/** A zone no longer than this many averaging lengths is fitted as one short loss: its two edges cannot be seen apart. */
const SHORT = 2;

function describeZone(trace: Trace<'measured'>, mask: Uint8Array, fromBaseline: Float64Array, profile: LossProfile, fitted: ZoneOutline, scatter: LossScatter, texture: Texture | null, parameters: ConditionParameters): Omit<Zone<'measured'>, 'id'> | null {
  const { step, averagingLength: averaging } = trace;
  const short = fitted.to - fitted.from < SHORT * averaging ? fitShortLoss(profile, (fitted.from + fitted.to) / 2, averaging) : null;
  const outline = withinMeasured(short ? { from: short.from, to: short.to, fromUncertainty: short.uncertainty, toUncertainty: short.uncertainty } : fitted, mask, step);
  const length = outline.to - outline.from;
  const loss = measureLoss(fromBaseline, mask, step, outline.from, outline.to, averaging);
  const error = scatterAt(scatter, Math.max(length, averaging));
  // Whether it is a loss at all is judged by what was read over the averaging length.
  if (!loss || loss.total / Math.max(length, averaging) < 0.8 * neededAt(Math.max(length, averaging), scatter, parameters)) return null;
  // The middle of the zone: its edges are part sound.
  const inner = 0.2 * length;
  const found = texture && textureRatio(texture, (outline.from + inner) / step, (outline.to - inner) / step);
  const edges = Math.hypot(outline.fromUncertainty, outline.toUncertainty);
  const mean = short ? short.loss : loss.mean;
  // A metre too much in the extent spreads the same loss over more: both ends count.
  const spread = short ? Math.max(short.high - mean, mean - short.low) : (mean * edges) / Math.max(length, edges);
  return {
    where: { from: measuredPosition(trace.start + outline.from - step / 2), to: measuredPosition(trace.start + outline.to - step / 2) },
    edgeUncertainty: Math.max(outline.fromUncertainty, outline.toUncertainty), kind: kindOf(found, parameters.textureRaised), textureRatio: found ? found.ratio : 1,
    meanLossPercent: mean, peakLossPercent: Math.max(loss.peak, short ? short.loss : 0), uncertaintyPercent: Math.hypot(1.96 * error, spread),
    lossRangePercent: short && length < averaging ? { low: Math.min(short.low, mean), high: Math.max(short.high, mean) } : null,
  };
}

/** An edge fitted into a length that was not measured is put where the measured length ends, and may lie anywhere in between or beyond. */
function withinMeasured(outline: ZoneOutline, mask: Uint8Array, step: number): ZoneOutline {
  let first = Math.max(0, Math.floor(outline.from / step));
  let last = Math.min(mask.length - 1, Math.ceil(outline.to / step) - 1);
  while (first < last && mask[first] === 0) first += 1;
  while (last > first && mask[last] === 0) last -= 1;
  const from = mask[Math.max(0, Math.floor(outline.from / step))] === 1 ? outline.from : first * step;
  const to = mask[Math.max(0, Math.min(mask.length - 1, Math.ceil(outline.to / step) - 1))] === 1 ? Math.min(outline.to, mask.length * step) : (last + 1) * step;
  return { from, to, fromUncertainty: outline.fromUncertainty + Math.abs(from - outline.from), toUncertainty: outline.toUncertainty + Math.abs(outline.to - to) };
}

/** Corrosion roughens wires, wear does not; where too few samples tell the two apart it is loss of unknown kind. */
function kindOf(texture: { ratio: number; samples: number } | null, raised: number): Zone<'measured'>['kind'] {
  if (!texture) return 'loss';
  // Neighbouring samples of LF are alike: about one in four counts.
  const error = 1 / Math.sqrt(2 * Math.max(1, texture.samples / 4));
  if (Math.abs(Math.log(texture.ratio / raised)) < 1.5 * error) return 'loss';
  return texture.ratio > raised ? 'corrosion' : 'wear';
}
