import { drawGamma, drawNormal, drawPoisson, seededRandom } from '../../analysis/life/statistics/random.ts';
import type { Random } from '../../analysis/life/statistics/random.ts';
import type { SeriesLike } from '../../analysis/life/passage/series.ts';

/** Laws by which the simulated places grow. SYNTHETIC; none is taken from a real rope. */
export const KINDS = ['linear', 'linear from a level', 'late onset', 'exponential', 'power', 'crack growth', 'irregular', 'irregular exponential', 'serial noise', 'mixed laws'] as const;
export type Kind = (typeof KINDS)[number];

export interface SimulatedRope {
  readonly kind: Kind;
  readonly inspections: number;
  readonly limit: number;
  readonly series: readonly SeriesLike[];
  /** True time of first passage of each place; Infinity beyond 200 years. */
  readonly truth: readonly number[];
  readonly last: number;
}

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)];
const between = (random: Random, low: number, high: number): number => low + (high - low) * random();

/** A path of true loss by time since the first inspection. */
type Path = (t: number) => number;

/**
 * One rope: 2 to 9 places of one law, growth rates from place to place log-normal or gamma, read at `inspections` dates 0.5 to 3 years apart
 * with noise of 0.05 to 0.35 percent whose stated value is off by up to 1.6 times either way. The worst place stands at 15 to 90 % of the limit.
 */
export function simulateRope(seed: number, inspections: number, kind: Kind): SimulatedRope {
  const random = seededRandom(seed * 7919 + inspections * 104729 + KINDS.indexOf(kind) * 15485863);
  const limit = pick(random, [5, 6, 8, 10, 10, 25]);
  const gap = between(random, 0.5, 3);
  const times: number[] = [];
  for (let i = 0; i < inspections; i += 1) times.push(i * gap + (i > 0 ? between(random, -0.1, 0.1) * gap : 0));
  const last = times[inspections - 1];
  const places = 2 + Math.floor(random() * 8);
  const spread = between(random, 0.15, 0.8);
  const gamma = random() < 0.3;
  const noise = between(random, 0.05, 0.35);
  const stated = noise * Math.exp(between(random, -0.45, 0.45));
  const age = between(random, 0.3, 3) * last;
  const exponent = between(random, 1.4, 3);
  const theta = between(random, 0.4, 1.6);
  const wander = between(random, 0.08, 0.35);
  const paths: Path[] = [];
  for (let j = 0; j < places; j += 1) {
    const factor = gamma ? drawGamma(random, 1 / spread ** 2) * spread ** 2 : Math.exp(spread * drawNormal(random));
    paths.push(pathOf(kind === 'mixed laws' ? pick(random, ['linear', 'exponential', 'power', 'late onset'] as const) : kind, { random, factor, age, last, exponent, theta, wander }));
  }
  const worst = Math.max(...paths.map((path) => path(last)));
  const scale = (between(random, 0.15, 0.9) * limit) / worst;
  const serial = kind === 'serial noise' ? 0.6 : 0;
  const series = paths.map((path): SeriesLike => {
    let error = drawNormal(random);
    return {
      points: times.map((t, i) => {
        if (i > 0) error = serial * error + Math.sqrt(1 - serial * serial) * drawNormal(random);
        return { t, value: Math.max(0, scale * path(t) + noise * error), uncertainty: stated };
      }),
    };
  });
  return { kind, inspections, limit, series, truth: paths.map((path) => passage(path, limit / scale, last)), last };
}

interface Draw {
  readonly random: Random;
  readonly factor: number;
  readonly age: number;
  readonly last: number;
  readonly exponent: number;
  readonly theta: number;
  readonly wander: number;
}

function pathOf(kind: Kind, { random, factor, age, last, exponent, theta, wander }: Draw): Path {
  if (kind === 'linear' || kind === 'serial noise') return (t) => factor * (t + age);
  if (kind === 'linear from a level') {
    const level = random() * last;
    return (t) => level + factor * t;
  }
  if (kind === 'late onset') {
    const onset = between(random, -0.5, 0.6) * last;
    return (t) => factor * Math.max(0, t - onset);
  }
  if (kind === 'exponential') {
    const doubling = (0.9 * factor) / last;
    const level = Math.exp(0.5 * drawNormal(random));
    return (t) => level * Math.exp(doubling * t);
  }
  if (kind === 'power') return (t) => factor * (t + age) ** exponent;
  if (kind === 'crack growth') {
    const rate = (0.35 * factor) / last;
    return (t) => (rate * t < 1 ? (1 - rate * t) ** -theta : Infinity);
  }
  const clock = irregularClock(random, last, wander);
  if (kind === 'irregular exponential') {
    const doubling = (0.9 * factor) / last;
    return (t) => Math.exp(doubling * clock(t));
  }
  return (t) => factor * (clock(t) + age);
}

/** Operational time as a gamma process: rises by fits and starts, one unit a unit of time on average. */
function irregularClock(random: Random, last: number, wander: number): Path {
  const step = last / 40;
  const shape = step / (wander * wander * last);
  const values = [0];
  return (t) => {
    const at = Math.max(0, t) / step;
    while (values.length <= at + 1) values.push(values[values.length - 1] + (drawGamma(random, shape) / shape) * step);
    const low = Math.floor(at);
    return values[low] + (at - low) * (values[low + 1] - values[low]);
  };
}

function passage(path: Path, level: number, last: number): number {
  if (path(last) >= level) return last;
  let low = last;
  let high = last + 0.25;
  while (path(high) < level) {
    low = high;
    high = last + (high - last) * 1.3;
    if (high - last > 200) return Infinity;
  }
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (path(middle) >= level) high = middle;
    else low = middle;
  }
  return high;
}

/** Places that collect broken wires: Poisson with a mean that grows linearly or exponentially; truth is the count reaching the limit. */
export function simulateBrokenWires(seed: number, inspections: number, exponential: boolean): SimulatedRope {
  const random = seededRandom(seed * 6151 + inspections * 24593 + (exponential ? 12289 : 3079));
  const limit = pick(random, [6, 10, 16]);
  const gap = between(random, 0.5, 2);
  const times = Array.from({ length: inspections }, (_, i) => i * gap);
  const last = times[inspections - 1];
  const places = 2 + Math.floor(random() * 6);
  const found: { series: SeriesLike; truth: number }[] = [];
  for (let j = 0; j < places; j += 1) {
    const now = between(random, 0.15, 0.6) * limit;
    const k = exponential ? Math.exp(0.3 * drawNormal(random)) / last : 0;
    const start = exponential ? now * Math.exp(-k * last) : now * between(random, 0, 0.6);
    const mean: Path = exponential ? (t) => start * Math.exp(k * t) : (t) => start + ((now - start) * t) / last;
    const step = last / 200;
    let count = drawPoisson(random, mean(0));
    const counts = [count];
    let truth = count >= limit ? 0 : Infinity;
    for (let i = 1; i * step < last + 200; i += 1) {
      count += drawPoisson(random, mean(i * step) - mean((i - 1) * step));
      counts.push(count);
      if (count >= limit) {
        truth = Math.min(truth, i * step);
        if (i * step > last) break;
      }
    }
    found.push({ series: { counts: true, points: times.map((t) => ({ t, value: counts[Math.min(counts.length - 1, Math.round(t / step))], uncertainty: null })) }, truth });
  }
  return { kind: exponential ? 'exponential' : 'linear', inspections, limit, series: found.map((each) => each.series), truth: found.map((each) => each.truth), last };
}
