/** Quantile of the standard normal distribution, by bisection of a series for the distribution: for constants, not for loops. */
export function normalQuantile(probability: number): number {
  let low = -9;
  let high = 9;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (normalDistribution(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Distribution function by its power series about zero (Abramowitz and Stegun 26.2.11). */
function normalDistribution(z: number): number {
  if (Math.abs(z) > 7) return z > 0 ? 1 : 0;
  let term = z;
  let sum = z;
  for (let k = 1; k < 200 && Math.abs(term) > 1e-17 * Math.abs(sum); k += 1) {
    term *= (z * z) / (2 * k + 1);
    sum += term;
  }
  return 0.5 + (sum * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
}
