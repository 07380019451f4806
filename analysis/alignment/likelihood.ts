/** Neighbouring coarse bins of LMA are not independent (the channel averages 0.3 m): one in so many is. */
export const COARSE_BINS_ALIKE = 3;

/** Correlation above this counts as this: no scan repeats better, and the logarithm stays finite. */
const BEST = 0.995;

/** From the correlation r of `count` bins of texture: -count/2 ln(1 - r^2) for r above 0 (Gaussian texture in white noise, level and gain unknown). Nats. */
export function textureEvidence(tt: number, rr: number, tr: number, count: number): number {
  if (!(tt > 0 && rr > 0 && tr > 0)) return 0;
  return -(count / 2) * Math.log(1 - Math.min(BEST * BEST, (tr * tr) / (tt * rr)));
}
