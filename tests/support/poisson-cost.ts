import type { SegmentCost } from '../../analysis/signal/segment-cost.ts';

/** Minus twice the log likelihood of Poisson counts with the mean of the stretch as rate, without the constant. */
export function poissonCost(counts: ArrayLike<number>): SegmentCost {
  const sums = new Float64Array(counts.length + 1);
  for (let i = 0; i < counts.length; i += 1) sums[i + 1] = sums[i] + counts[i];
  return (from, end) => {
    const sum = sums[end] - sums[from];
    return sum === 0 ? 0 : -2 * (sum * Math.log(sum / (end - from)) - sum);
  };
}
