/** One edge of a zone as the fit sees it. Distances in metres along an axis that runs from sound rope into the zone. */
export interface EdgeFit {
  /** Where the loss begins: the mean over every rise that the data allow, each by its likelihood. */
  readonly foot: number;
  /** The true foot lies within this of it (95 %). */
  readonly uncertainty: number;
}

/** Values at even distances `spacing` apart from 0 on, sound rope first. */
export interface EdgeData {
  readonly level: Float64Array;
  readonly weight: Float64Array;
  readonly spacing: number;
  /** Noise of one value as it tells rises apart (correlation over a metre counted in), and as it bounds the result (over several metres). */
  readonly variance: number;
  readonly longVariance: number;
}

/** Lengths of the rise tried, m: none, then each a seventh longer than the one before. */
const SHORTEST_RISE = 0.1;
const RISE_RATIO = 1.15;
/** A merit this many variances below the best has no likelihood to speak of: exp(-20). */
const HOPELESS = 40;
/** A rise is looked at in this many values at most, longer ones on values joined. */
const CELLS_A_RISE = 32;

/** Two ways for a loss to rise from 0 to 1: straight, and as half a cosine. Integral from the foot to a share t of the rise. */
const RISES: readonly ((t: number) => number)[] = [
  (t) => (t <= 0 ? 0 : t >= 1 ? t - 0.5 : (t * t) / 2),
  (t) => (t <= 0 ? 0 : t >= 1 ? t - 0.5 : t / 2 - Math.sin(Math.PI * t) / (2 * Math.PI)),
];

/**
 * Fits where a loss begins: sound (zero) before the foot, a rise of unknown length and form, then one unknown level; all seen
 * through the instrument's averaging length. `middle` is a first guess of where half the level is reached, `longest` the
 * longest rise. A rise of each form and length is put where it fits best, and the feet are averaged by likelihood: straight and
 * rounded rises that fit alike have feet apart, and the middle of them errs least.
 */
export function fitEdge(data: EdgeData, averaging: number, middle: number, longest: number): EdgeFit {
  const layers = [layerOf(data)];
  const tried: Tried[] = [];
  let top = 0;
  for (const rise of RISES) {
    let at = middle;
    let before = 0;
    for (let length = 0; length <= longest; length = length === 0 ? SHORTEST_RISE : length * RISE_RATIO) {
      if (length === 0 && rise !== RISES[0]) continue;
      const wanted = Math.max(0, Math.ceil(Math.log2(length / (CELLS_A_RISE * data.spacing))));
      while (layers.length <= wanted) layers.push(halved(layers[layers.length - 1]));
      const layer = layers[wanted];
      const best = bestMiddle((middleAt) => meritOf(layer, averaging, middleAt - length / 2, length, rise), at, Math.max(0.3, length / 3));
      at = best.at;
      tried.push({ foot: best.at - length / 2, merit: best.merit, bend: best.bend });
      top = Math.max(top, best.merit);
      // Past the best length rises fit ever worse: beyond here none has any weight.
      if (best.merit < before && best.merit < top - HOPELESS * data.longVariance) break;
      before = best.merit;
    }
  }
  return averaged(tried, data);
}

interface Tried { readonly foot: number; readonly merit: number; /** Bend of the merit about its place: less is sharper. */ readonly bend: number }

function averaged(tried: readonly Tried[], { variance, longVariance, spacing }: EdgeData): EdgeFit {
  const foot = weighedMean(tried, variance, (each) => each.foot);
  const square = weighedMean(tried, longVariance, (each) => (each.foot - foot) ** 2 + (each.bend < 0 ? -longVariance / each.bend : 0));
  // Half a cell is the least that can be told.
  return { foot, uncertainty: Math.hypot(1.96 * Math.sqrt(square), spacing / 2) };
}

/** Mean over the rises tried, each weighed by its likelihood under noise of `variance`. */
function weighedMean(tried: readonly Tried[], variance: number, of: (each: Tried) => number): number {
  const best = tried.reduce((most, each) => Math.max(most, each.merit), -Infinity);
  let mass = 0;
  let sum = 0;
  for (const each of tried) {
    const likelihood = Math.exp((each.merit - best) / (2 * variance));
    mass += likelihood;
    sum += likelihood * of(each);
  }
  return sum / mass;
}

/** Place of the largest merit about a guess, by stepping uphill with ever smaller steps, and the second derivative there. */
function bestMiddle(merit: (at: number) => number, guess: number, reach: number): { at: number; merit: number; bend: number } {
  let at = guess;
  let here = merit(at);
  let bend = 0;
  for (let hop = reach; hop > 0.008; hop /= 2) {
    let before = merit(at - hop);
    let after = merit(at + hop);
    for (let moves = 0; moves < 6 && Math.max(before, after) > here; moves += 1) {
      if (before > after) [at, after, here, before] = [at - hop, here, before, merit(at - 2 * hop)];
      else [at, before, here, after] = [at + hop, here, after, merit(at + 2 * hop)];
    }
    if (hop > 0.02) bend = (before - 2 * here + after) / (hop * hop);
  }
  // Merit is the explained sum: minus half its bend is the information over the variance.
  return { at, merit: here, bend: bend / 2 };
}

/** Values with their sums from each to the last: where the rise is over, its form is 1. */
interface Layer { readonly level: Float64Array; readonly weight: Float64Array; readonly spacing: number; readonly products: Float64Array; readonly weights: Float64Array }

function layerOf({ level, weight, spacing }: Pick<EdgeData, 'level' | 'weight' | 'spacing'>): Layer {
  const count = level.length;
  const products = new Float64Array(count + 1);
  const weights = new Float64Array(count + 1);
  for (let i = count - 1; i >= 0; i -= 1) {
    products[i] = products[i + 1] + weight[i] * level[i];
    weights[i] = weights[i + 1] + weight[i];
  }
  return { level, weight, spacing, products, weights };
}

/** Pairs of values as one, their weights added: a long rise needs no short cells. */
function halved({ level, weight, spacing }: Layer): Layer {
  const count = Math.ceil(level.length / 2);
  const half = { level: new Float64Array(count), weight: new Float64Array(count), spacing: 2 * spacing };
  for (let i = 0; i < level.length; i += 1) {
    half.weight[i >> 1] += weight[i];
    half.level[i >> 1] += weight[i] * level[i];
  }
  for (let i = 0; i < count; i += 1) if (half.weight[i] > 0) half.level[i] /= half.weight[i];
  return layerOf(half);
}

/** Sum of squares that a rise of `length` from `foot` explains, its height free but a loss. */
function meritOf({ level, weight, spacing, products, weights }: Layer, averaging: number, foot: number, length: number, rise: (t: number) => number): number {
  const half = Math.max(averaging, spacing) / 2;
  const count = level.length;
  const first = Math.max(0, Math.min(count, Math.ceil((foot - half) / spacing - 0.5)));
  const full = Math.max(first, Math.min(count, Math.ceil((foot + length + half) / spacing - 0.5)));
  let product = products[full];
  let square = weights[full];
  for (let i = first; i < full; i += 1) {
    const w = weight[i];
    if (w <= 0) continue;
    const x = (i + 0.5) * spacing - foot;
    // The mean of the rise over the averaging length about x.
    const form = length < 1e-6 ? Math.min(1, (x + half) / (2 * half)) : (length * (rise((x + half) / length) - rise((x - half) / length))) / (2 * half);
    product += w * form * level[i];
    square += w * form * form;
  }
  if (square <= 0 || product <= 0) return 0;
  return (product * product) / square;
}
