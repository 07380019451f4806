/**
 * Share of Student's t distribution between -t and t; `freedom` a whole number of degrees of freedom, 1 or more.
 * Finite sums of Abramowitz and Stegun 26.7.3 and 26.7.4. Cost: freedom / 2.
 */
export function studentShareWithin(t: number, freedom: number): number {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const square = Math.cos(angle) ** 2;
  const odd = freedom % 2 === 1;
  let term = odd ? Math.cos(angle) : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= (square * (k - 1)) / k;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}

/** The t between whose negative and itself lies `share` (0 to 1) of Student's t distribution. Relative error 1e-12. */
export function studentQuantile(share: number, freedom: number): number {
  let low = 0;
  let high = 1;
  while (studentShareWithin(high, freedom) < share) {
    low = high;
    high *= 2;
  }
  for (let round = 0; round < 60 && high - low > 1e-13 * high; round += 1) {
    const middle = (low + high) / 2;
    if (studentShareWithin(middle, freedom) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
