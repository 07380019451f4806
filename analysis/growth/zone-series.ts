import type { Interval } from '../rope/interval.ts';
import { complementOf, unionOf } from '../rope/interval.ts';
import { medianAbsoluteDeviation, NORMAL_MAD } from '../signal/mad.ts';
import { median } from '../signal/median.ts';
import { GROWTH } from './parameters.ts';
import type { RelativeGain } from './relative-gain.ts';
import { meanOver } from './window-means.ts';
import type { RunningSums } from './window-means.ts';

/** Mean loss of one length at one inspection, on the common scale and zero of all inspections. */
export interface ZoneValue {
  readonly survey: number;
  readonly value: number; // percent
  readonly uncertainty: number; // one sigma, percent
}

/** What measures zones: the scans, their relative scale, and the sound lengths that tell how far two scans differ by chance. */
export interface ZoneGauge {
  readonly scans: readonly (RunningSums | null)[];
  readonly gains: readonly RelativeGain[];
  readonly sound: readonly Interval<'rope'>[];
}

/** The lengths of rope outside every gathered place, with half a metre to each side for the averaging length. */
export function soundLengths(places: readonly Interval<'rope'>[], reach: Interval<'rope'>): Interval<'rope'>[] {
  const widened = unionOf(places.map((each) => ({ from: (each.from - 0.5) as typeof each.from, to: (each.to + 0.5) as typeof each.to })));
  return complementOf(widened, reach);
}

/**
 * Mean loss over `where` at every inspection that saw at least half of it. Each scan is divided by its relative gain and
 * set to the common zero; the uncertainty is how far the scans differ over sound lengths of the same extent, so that noise,
 * drift and misplaced texture are all in it, plus the uncertainty of the gain times the level. Cost: linear in the rope's length over the extent.
 */
export function zoneSeries(where: Interval<'rope'>, gauge: ZoneGauge, floor: readonly number[]): ZoneValue[] {
  const chance = chanceDifferences(where.to - where.from, gauge);
  const values: ZoneValue[] = [];
  gauge.scans.forEach((scan, survey) => {
    if (scan === null) return;
    const { mean, share } = meanOver(scan, where.from, where.to);
    if (!(share >= GROWTH.smallestSeenShare)) return;
    const { gain, uncertainty: gainUncertainty } = gauge.gains[survey];
    const value = mean / gain - chance.zero[survey];
    const own = chance.sigma[survey] ?? floor[survey];
    values.push({ survey, value, uncertainty: Math.hypot(Math.max(own, 0.01), gainUncertainty * value) });
  });
  return values;
}

/** Per scan: its zero against the mean of all scans, and the spread of window means of `extent` metres about it; null where the sound rope is too short to tell. */
export function chanceDifferences(extent: number, gauge: ZoneGauge): { zero: number[]; sigma: (number | null)[] } {
  const seen = gauge.scans.map((_, i) => i).filter((i) => gauge.scans[i] !== null);
  const differences: number[][] = gauge.scans.map(() => []);
  const width = Math.max(0.5, Math.min(extent, longest(gauge.sound) / 2));
  if (seen.length > 1) {
    for (const { from, to } of gauge.sound) {
      for (let at: number = from; at + width <= to; at += width) {
        const means = seen.map((i) => ({ i, ...meanOver(gauge.scans[i]!, at, at + width) }));
        const good = means.filter((each) => each.share >= 0.8);
        if (good.length < 2) continue;
        const level = good.reduce((sum, each) => sum + each.mean / gauge.gains[each.i].gain, 0) / good.length;
        // A scan is part of the mean that it is held against; this restores its own spread.
        const restore = Math.sqrt(good.length / (good.length - 1));
        for (const each of good) differences[each.i].push((each.mean / gauge.gains[each.i].gain - level) * restore);
      }
    }
  }
  return {
    zero: differences.map((each) => (each.length > 0 ? median(Float64Array.from(each)) : 0)),
    // Student's t with few windows has longer tails than the normal; one over the root of n widens for it.
    sigma: differences.map((each) => (each.length >= 8 ? NORMAL_MAD * medianAbsoluteDeviation(Float64Array.from(each)) * (1 + 2 / each.length) : null)),
  };
}

function longest(intervals: readonly Interval<'rope'>[]): number {
  return intervals.reduce((most, each) => Math.max(most, each.to - each.from), 0);
}
