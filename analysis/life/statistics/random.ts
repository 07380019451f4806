/** A stream of numbers in (0, 1) that depends on its seed alone. */
export type Random = () => number;

/**
 * Seeded uniform stream: a 32-bit counter stepped by the golden ratio and scrambled by two multiply-and-shift rounds.
 * Enough for thousands of draws of a forecast; not for secrets. Never exactly 0 or 1.
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4294967296 + 1 / 8589934592;
  };
}

/** One draw of the standard normal distribution (Box and Muller 1958). */
export function drawNormal(random: Random): number {
  return Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

/** One draw of the gamma distribution with unit scale (Marsaglia and Tsang 2000). `shape` > 0. */
export function drawGamma(random: Random, shape: number): number {
  if (shape < 1) return drawGamma(random, shape + 1) * random() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = drawNormal(random);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** One draw of the Poisson distribution: waiting times for small means, a sum of two halves for large ones. */
export function drawPoisson(random: Random, mean: number): number {
  if (mean > 30) return drawPoisson(random, mean / 2) + drawPoisson(random, mean / 2);
  let count = -1;
  for (let waited = 0; waited <= mean; count += 1) waited -= Math.log(random());
  return count;
}

/** One draw of the inverse Gaussian distribution (Michael, Schucany and Haas 1976). Infinite `shape` gives the mean. */
export function drawInverseGaussian(random: Random, mean: number, shape: number): number {
  if (!(shape < Infinity)) return mean;
  const v = drawNormal(random) ** 2;
  const half = (mean * v) / (2 * shape);
  // The smaller root written without a difference of large numbers.
  const small = mean / (1 + half + Math.sqrt(half * (half + 2)));
  return random() <= mean / (mean + small) ? small : (mean * mean) / small;
}
