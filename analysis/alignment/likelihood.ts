import type { Character } from './character.ts';
import type { AlignmentParameters } from './parameters.ts';

/**
 * Evidence, in nats, that bins [from, end) of `scan` show what `reference` shows `lag` bins further on, for the lags
 * `firstLag`, `firstLag + 1`, ... `lags` of them. From the correlation r of n bins of texture: -n/2 ln(1 - r^2) for r above 0
 * (Gaussian texture in white noise, level and gain unknown), plus the damped product of LF events. On a loop (`around`)
 * the reference wraps. Negative infinity where less than half of the window can be compared.
 */
export function evidenceByLag(scan: Character, reference: Character, from: number, end: number, firstLag: number, lags: number, around: boolean, parameters: AlignmentParameters): Float64Array {
  const evidence = new Float64Array(lags);
  const size = reference.length;
  for (let l = 0; l < lags; l += 1) {
    let tt = 0, rr = 0, tr = 0, both = 0, ee = 0, inside = 0;
    for (let i = from; i < end; i += 1) {
      let j = i + firstLag + l;
      if (around) j = ((j % size) + size) % size;
      else if (j < 0 || j >= size) continue;
      inside += 1;
      ee += scan.events[i] * reference.events[j];
      if (scan.textureSeen[i] === 0 || reference.textureSeen[j] === 0) continue;
      const t = scan.texture[i];
      const r = reference.texture[j];
      tt += t * t;
      rr += r * r;
      tr += t * r;
      both += 1;
    }
    evidence[l] = inside * 2 < end - from ? Number.NEGATIVE_INFINITY : textureEvidence(tt, rr, tr, both) + parameters.eventWeight * ee;
  }
  return evidence;
}

/** Neighbouring coarse bins of LMA are not independent (the channel averages 0.3 m): one in so many is. */
export const COARSE_BINS_ALIKE = 3;

/** Correlation above this counts as this: no scan repeats better, and the logarithm stays finite. */
const BEST = 0.995;

export function textureEvidence(tt: number, rr: number, tr: number, count: number): number {
  if (!(tt > 0 && rr > 0 && tr > 0)) return 0;
  const r = Math.min(BEST, tr / Math.sqrt(tt * rr));
  return -(count / 2) * Math.log(1 - r * r);
}
