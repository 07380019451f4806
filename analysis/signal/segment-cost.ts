/** Cost of the stretch [from, end) of a series under one constant level: what a change-point search adds up. */
export type SegmentCost = (from: number, end: number) => number;

/** Residual sum of squares about the mean of the stretch (normal noise of constant variance). Constant time per call. */
export function squaredErrorCost(values: ArrayLike<number>): SegmentCost {
  const count = values.length;
  let mean = 0;
  for (let i = 0; i < count; i += 1) mean += values[i] / count;
  const sums = new Float64Array(count + 1);
  const squares = new Float64Array(count + 1);
  // Taken about the overall mean, so that the difference of two large sums keeps its digits.
  for (let i = 0; i < count; i += 1) {
    const value = values[i] - mean;
    sums[i + 1] = sums[i] + value;
    squares[i + 1] = squares[i] + value * value;
  }
  return (from, end) => {
    const sum = sums[end] - sums[from];
    return Math.max(0, squares[end] - squares[from] - (sum * sum) / (end - from));
  };
}

/** As squaredErrorCost with a weight (inverse variance, 0 where nothing was measured) for each value. */
export function weightedErrorCost(values: ArrayLike<number>, weights: ArrayLike<number>): SegmentCost {
  const count = values.length;
  const mass = new Float64Array(count + 1);
  const sums = new Float64Array(count + 1);
  const squares = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) {
    const weight = weights[i];
    const value = weight > 0 ? values[i] : 0;
    mass[i + 1] = mass[i] + weight;
    sums[i + 1] = sums[i] + weight * value;
    squares[i + 1] = squares[i] + weight * value * value;
  }
  return (from, end) => {
    const weight = mass[end] - mass[from];
    if (weight <= 0) return 0;
    const sum = sums[end] - sums[from];
    return Math.max(0, squares[end] - squares[from] - (sum * sum) / weight);
  };
}
