import { fitEdge } from './zone-edge.ts';
import type { LossBlocks } from './loss-blocks.ts';
import type { LossSegmentation } from './segment-loss.ts';

/** Extent of a zone in metres from the first sample of the trace. */
export interface ZoneOutline {
  readonly from: number;
  readonly to: number;
  readonly edgeUncertainty: number;
}

/** Sound rope looked at beyond an edge, m: enough to see where the loss begins, not so much that drift enters. */
const OUTSIDE = 12;
const FINE = 0.05;

/**
 * Refines the extent [from, end) in blocks. Each edge is fitted between the middle of the sound length beyond it (or
 * OUTSIDE) and the middle of the zone; `before` and `after` are the blocks where neighbouring zones end and begin.
 */
export function outlineZone(blocks: LossBlocks, segmentation: LossSegmentation, from: number, end: number, before: number, after: number, averaging: number): ZoneOutline {
  const middle = (from + end) / 2;
  const left = refine(blocks, segmentation, from, middle, Math.max(before, from - OUTSIDE / blocks.length), averaging, 1);
  const right = refine(blocks, segmentation, end, middle, Math.min(after, end + OUTSIDE / blocks.length), averaging, -1);
  return { from: left.at, to: Math.max(right.at, left.at + blocks.length / 2), edgeUncertainty: Math.max(left.uncertainty, right.uncertainty) };
}

/** One edge near block `edge`, data from block `limit` outside to `middle` inside; `towards` is the direction into the zone. */
function refine(blocks: LossBlocks, { level, longRunVariance }: LossSegmentation, edge: number, middle: number, limit: number, averaging: number, towards: 1 | -1): { at: number; uncertainty: number } {
  const start = towards === 1 ? Math.floor(limit) : Math.ceil(limit);
  const count = Math.max(2, Math.round(Math.abs(middle - start)));
  const values = new Float64Array(count);
  const weight = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const block = towards === 1 ? start + i : start - 1 - i;
    if (block < 0 || block >= level.length) continue;
    values[i] = level[block];
    weight[i] = blocks.weight[block];
  }
  const outside = Math.abs(edge - start) * blocks.length;
  const inside = Math.abs(middle - edge) * blocks.length;
  const reach = Math.min(outside + Math.min(inside, 0.75 * averaging + inside * 0.5), (count - 1) * blocks.length);
  const coarse = steps(0, reach, Math.max(blocks.length, reach / 160));
  const most = Math.max(blocks.length, Math.min(inside * 1.2, 40));
  const rough = fitEdge(values, weight, blocks.length, averaging, coarse, most, longRunVariance);
  const fine = fitEdge(values, weight, blocks.length, averaging, steps(Math.max(0, rough.foot - 2 * blocks.length), Math.min(reach, rough.foot + 2 * blocks.length), FINE), most, longRunVariance);
  const at = (start * blocks.length) + towards * fine.foot;
  return { at, uncertainty: Math.max(rough.uncertainty, fine.uncertainty) };
}

function steps(from: number, to: number, by: number): number[] {
  const found: number[] = [];
  for (let x = from; x <= to + 1e-9; x += by) found.push(x);
  return found.length > 1 ? found : [from, from + by];
}
