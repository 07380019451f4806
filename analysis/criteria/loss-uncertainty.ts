import type { Interval } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';

/** Repeatability of LMA without a repeated run: the middle of 0.1 to 0.5 % [common practice]. One sigma, percent of area. */
export const USUAL_REPEATABILITY = 0.3;

/**
 * Standard uncertainty (one sigma, percent) of the mean distributed loss over a length: repeatability between runs, sample noise
 * averaged over the length, and the range of a loss that is shorter than the averaging length of LMA. For an inspection that was
 * brought to the scale of the others it is how far they really differ over sound lengths; the scale's own share is added by the caller.
 */
export function lossUncertainty(survey: Survey, where: Interval<'rope'>): number {
  const { condition, repeatability, rope } = survey;
  const width = where.to - where.from;
  const independent = Math.max(1, width / rope.averagingLength);
  const noise = condition.noiseOfLoss / Math.sqrt(independent);
  let short = 0;
  for (const zone of condition.zones) {
    const range = zone.lossRangePercent;
    if (range === null || zone.where.to <= where.from || zone.where.from >= where.to) continue;
    const overlap = (Math.min(zone.where.to, where.to) - Math.max(zone.where.from, where.from)) / width;
    // Anywhere between the bounds: a rectangular distribution has sigma = width / sqrt(12).
    short = Math.max(short, (overlap * (range.high - range.low)) / Math.sqrt(12));
  }
  if (survey.comparison) return Math.hypot(levelUncertainty(survey.comparison.level, width), short);
  return Math.hypot(repeatability.lossPercent ?? USUAL_REPEATABILITY, noise, short);
}

/** Measured spread at the nearest length not longer than `width`: a shorter mean spreads no less. */
function levelUncertainty(level: readonly { readonly length: number; readonly sigma: number }[], width: number): number {
  return (level.findLast((each) => each.length <= width) ?? level[0]).sigma;
}
