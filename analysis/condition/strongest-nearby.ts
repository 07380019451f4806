import type { PlacedScores } from './bank-response.ts';

/** Indices of the candidates that are the strongest within `distance` samples to either side, in order of position. Linear time. */
export function strongestNearby(candidates: PlacedScores, distance: number): number[] {
  const kept: number[] = [];
  const queue: number[] = [];
  let head = 0;
  let next = 0;
  const size = (i: number) => Math.abs(candidates.score[i]);
  for (let i = 0; i < candidates.count; i += 1) {
    while (next < candidates.count && candidates.index[next] <= candidates.index[i] + distance) {
      while (queue.length > head && size(queue[queue.length - 1]) < size(next)) queue.pop();
      queue.push(next);
      next += 1;
    }
    while (candidates.index[queue[head]] < candidates.index[i] - distance) head += 1;
    if (queue[head] === i) kept.push(i);
  }
  return kept;
}
