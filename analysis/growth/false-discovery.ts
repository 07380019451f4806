/**
 * Adjusted p-values by the step-up procedure of Benjamini and Hochberg (1995): reject where the result is at or below
 * the accepted share of false findings. Same order as the input; linear but for the sort.
 * @example adjustedPValues([0.01, 0.04, 0.03]) // [0.03, 0.04, 0.04]
 */
export function adjustedPValues(pValues: readonly number[]): number[] {
  const order = pValues.map((_, index) => index).sort((a, b) => pValues[b] - pValues[a]);
  const adjusted = new Array<number>(pValues.length);
  let smallest = 1;
  order.forEach((index, fromTop) => {
    const rank = pValues.length - fromTop;
    smallest = Math.min(smallest, (pValues[index] * pValues.length) / rank);
    adjusted[index] = smallest;
  });
  return adjusted;
}
