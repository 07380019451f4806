import type { PassageDraws } from './draw-passages.ts';
import type { ScaledRope, SeriesReading } from './series.ts';
import { SHAPES } from './settings.ts';

type Kind = 'linear' | 'exponential' | 'power' | 'crack-growth' | 'slowing';

function kindOf(shape: number): Kind {
  if (shape > 1.2) return 'slowing';
  if (shape > 0.6) return 'linear';
  if (shape > 0.2) return 'power';
  if (shape > -0.5) return 'exponential';
  return 'crack-growth';
}

function kinds(draws: PassageDraws): { kind: Kind; share: number }[] {
  const shares = new Map<Kind, number>();
  SHAPES.forEach(({ shape }, i) => shares.set(kindOf(shape), (shares.get(kindOf(shape)) ?? 0) + draws.shapeProbability[i]));
  return [...shares].map(([kind, share]) => ({ kind, share })).sort((a, b) => b.share - a.share);
}

/** The growth law, or those between which the readings do not decide, with their weights. */
export function describeModel(draws: PassageDraws, counts: boolean, places: number): string {
  const ranked = kinds(draws);
  const named = ranked[0].share >= 0.7 ? ranked[0].kind : `${ranked.filter((each) => each.share >= 0.1).map((each) => `${each.kind} ${each.share.toFixed(2)}`).join(', ')} (averaged)`;
  return `${counts ? 'Poisson counts, ' : ''}${named}${places > 1 ? `, pooled over ${places} places` : ''}`;
}

interface Told {
  readonly points: readonly SeriesReading[];
  readonly rope: ScaledRope;
  readonly draws: PassageDraws;
  readonly given: boolean;
  readonly found: boolean;
  readonly median: number | null;
  readonly high: number | null;
  readonly limit: number;
  readonly timeUnit: string;
}

const figure = (value: number): string => String(Number(value.toPrecision(3)));
const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** In words: what the forecast rests on, and what it does not. */
export function reasonOf({ points, rope, draws, given, found, median, high, timeUnit }: Told): string {
  const said: string[] = [];
  const n = points.length;
  if (!found) said.push(`no growth found in ${n} readings (chance that there is any: ${percent(draws.growing)}); a bound only, at 90 %`);
  else if (!given) said.push('the limit lies beyond the time over which readings of this length can speak; a bound only, at 90 %');
  const unit = timeUnit === '' ? '' : ` ${timeUnit}`;
  said.push(`${n} readings over ${figure(points[n - 1].t - points[0].t)}${unit}${rope.places.length > 1 ? `, growth rates and law shared with ${rope.places.length - 1} other places of the rope` : ''}`);
  if (n === 2) said.push('two readings: the interval is wide and rests on what is usual as much as on this place');
  if (given) said.push(lawInWords(draws));
  if (draws.irregularity > 0.05) said.push('growth is irregular or readings hang together: the interval is widened for it');
  if (rope.noiseStated && draws.noiseScale > 1.5) said.push(`readings scatter ${figure(draws.noiseScale)} times as much as their stated uncertainty: widened`);
  if (draws.zeroUnknown > 0.5 && !rope.zeroUnknown) said.push('growth counts from a level other than zero');
  if (given && median === null) said.push('the middle of the interval lies too far ahead to be given as a date');
  else if (given && high === null) said.push('the upper end of the interval lies too far ahead to be given as a date');
  return said.join('; ');
}

function lawInWords(draws: PassageDraws): string {
  const ranked = kinds(draws);
  const accelerating = ranked.filter((each) => each.kind === 'exponential' || each.kind === 'power' || each.kind === 'crack-growth').reduce((sum, each) => sum + each.share, 0);
  const slowing = ranked.find((each) => each.kind === 'slowing')?.share ?? 0;
  const linear = 1 - accelerating - slowing;
  if (accelerating > 0.8) return `growth accelerates (${percent(accelerating)}): a straight line would overstate the life left`;
  if (linear > 0.8) return `growth is straight in time (${percent(linear)})`;
  if (slowing > 0.8) return `growth slows down (${percent(slowing)})`;
  return `the readings do not decide the law: straight ${percent(linear)}, accelerating ${percent(accelerating)}, slowing ${percent(slowing)}; all are kept`;
}
