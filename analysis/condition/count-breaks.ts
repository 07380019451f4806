import { median } from '../signal/median.ts';
import { quantile } from '../signal/quantile.ts';
import type { Fault } from './condition.ts';

/** What a count is read from: width (m, at half height), height, score, and neighbours too near to be told apart from it. */
export interface CountedPulse {
  readonly width: number;
  readonly amplitude: number;
  readonly score: number;
  readonly merged: number;
}

/** Pulses with less than this score have no width to speak of; fewer of them than this show no usual width. */
const STRONG = 8;
const LEAST_STRONG = 5;
/** One instrument on one rope draws breaks of one depth alike, and the width of a strong pulse is measured to some five percent. */
const ALIKE = 1.1;
/** A pair half a width apart and more is as wide as this, and no lower than a break alone. */
const PAIR = 1.4;
const PAIR_HEIGHT = 1.2;

/** Share of the strong pulses that are lower than what a break alone is taken to reach at least, and what two of those reach together half a width apart. */
const LOW_SHARE = 0.1;
const TOGETHER = 1.7;

/**
 * How many breaks each indication may hold. Two breaks nearer than half a pulse's width draw one pulse as high as both, further
 * apart a wider one: a pulse is called a single break only where it is as narrow as the rope's others and lower than two of the
 * lowest. Where the rope shows too few strong pulses to know its
 * usual width, or a pulse is too weak for a width, two cannot be excluded. A deep break is wide as well, but low.
 */
export function countBreaks(pulses: readonly CountedPulse[]): Fault<'measured'>['count'][] {
  const strong = pulses.filter((pulse) => pulse.score >= STRONG && pulse.merged === 0);
  const known = strong.length >= LEAST_STRONG;
  const usualWidth = known ? median(strong.map((pulse) => pulse.width)) : Infinity;
  const heights = Float64Array.from(strong, (pulse) => Math.abs(pulse.amplitude));
  const usualHeight = known ? median(heights) : Infinity;
  const lowHeight = known ? quantile(heights, LOW_SHARE) : 0;
  return pulses.map(({ width, amplitude, score, merged }) => {
    const single = known && score >= STRONG && width <= ALIKE * usualWidth && Math.abs(amplitude) < TOGETHER * lowHeight;
    const pair = known && width > PAIR * usualWidth && Math.abs(amplitude) > PAIR_HEIGHT * usualHeight;
    const estimate = 1 + Math.max(merged, pair ? 1 : 0);
    return { low: 1, estimate, high: Math.max(estimate + merged, single ? estimate : estimate + 1) };
  });
}
