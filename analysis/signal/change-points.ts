import type { SegmentCost } from './segment-cost.ts';

export interface Segmentation {
  /** First index of every segment but the first: sorted. */
  readonly starts: number[];
  /** Sum of the segments' costs plus the penalty for each change. */
  readonly objective: number;
}

/**
 * The segmentation of `count` values that minimises the sum of segment costs plus `penalty` for every change, exactly:
 * optimal partitioning (Jackson et al. 2005) with the pruning of PELT (Killick, Fearnhead and Eckley 2012). The cost must
 * not rise when a stretch is split. Segments hold at least `least` values. Between linear and quadratic time.
 */
export function changePoints(count: number, cost: SegmentCost, penalty: number, least = 1): Segmentation {
  const best = new Float64Array(count + 1).fill(Infinity);
  const previous = new Int32Array(count + 1);
  const candidates = new Int32Array(count + 1);
  // With a least length a start may be dropped only once its rival, the present end, is far enough back to begin a segment.
  const droppedFrom = new Float64Array(count + 1).fill(Infinity);
  const costs = new Float64Array(count + 1);
  let candidateCount = 0;
  best[0] = -penalty;
  for (let end = least; end <= count; end += 1) {
    const newest = end - least;
    if (best[newest] < Infinity) candidates[candidateCount++] = newest;
    let kept = 0;
    for (let k = 0; k < candidateCount; k += 1) {
      const start = candidates[k];
      costs[k] = best[start] + cost(start, end);
      if (costs[k] + penalty < best[end]) {
        best[end] = costs[k] + penalty;
        previous[end] = start;
      }
    }
    for (let k = 0; k < candidateCount; k += 1) {
      const start = candidates[k];
      if (costs[k] > best[end] && droppedFrom[start] === Infinity) droppedFrom[start] = end + least;
      if (end + 1 < droppedFrom[start]) candidates[kept++] = start;
    }
    candidateCount = kept;
  }
  return { starts: traceBack(previous, best, count), objective: best[count] };
}

function traceBack(previous: Int32Array, best: Float64Array, count: number): number[] {
  const starts: number[] = [];
  if (best[count] === Infinity) return starts;
  for (let end = previous[count]; end > 0; end = previous[end]) starts.push(end);
  return starts.reverse();
}
