/** Where the threshold of LF stands and what it rests on. */
export interface FalseCallThreshold {
  readonly score: number;
  /** How fast the rope's own maxima thin out against normal noise (1): less is a heavier tail. */
  readonly tail: number;
  /** Maxima that the estimate rests on, and the length they come from. */
  readonly maxima: number;
  readonly length: number;
}

/** Maxima between these scores measure the tail: real pulses seldom reach so low, and below them maxima crowd each other out. */
const TAIL_FROM = 3.2;
const TAIL_TO = 4.4;
/** Strength of the expectation that noise is normal, in maxima. */
const PRIOR_MAXIMA = 60;

/**
 * The score that noise passes `rate` times in 100 m. Maxima of normal noise above a high level u come at a rate in
 * proportion to exp(-u^2 / 2) (Rice 1945), so u^2 / 2 of the rope's own maxima is exponential: its rate parameter is
 * fitted to those in a middle range (maximum likelihood for a truncated exponential, drawn towards 1) and carried on to
 * the rate asked. `maxima` are scores of separate maxima found over `length` metres of rope.
 */
export function falseCallThreshold(maxima: readonly number[], length: number, rate: number): FalseCallThreshold {
  const from = (TAIL_FROM * TAIL_FROM) / 2;
  const span = (TAIL_TO * TAIL_TO) / 2 - from;
  const middle = maxima.map((score) => (score * score) / 2 - from).filter((excess) => excess >= 0 && excess < span);
  const tail = truncatedRate(middle, span);
  // Expected count above the lower level, from the counts in the middle range; at least one maximum is granted.
  const above = Math.max(1, middle.length) / (1 - Math.exp(-tail * span));
  const per100m = (above / Math.max(length, 1)) * 100;
  const excess = Math.max(0, Math.log(per100m / rate) / tail);
  return { score: Math.max(3.6, Math.sqrt(2 * (from + excess))), tail, maxima: middle.length, length };
}

/** Rate of an exponential from values cut off at `span`, shrunk towards 1; between 0.35 and 1.1. */
function truncatedRate(excesses: readonly number[], span: number): number {
  let sum = 0;
  for (const each of excesses) sum += each;
  // A gamma prior with mean 1 counts as PRIOR_MAXIMA further maxima of normal noise.
  const slope = (rate: number) => excesses.length * (1 / rate - span / Math.expm1(rate * span)) - sum + PRIOR_MAXIMA * (1 / rate - 1);
  let low = 0.35;
  let high = 1.1;
  for (let i = 0; i < 50; i += 1) {
    const rate = (low + high) / 2;
    if (slope(rate) > 0) low = rate;
    else high = rate;
  }
  return (low + high) / 2;
}
