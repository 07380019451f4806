/** One edge of a zone as the fit sees it. Distances in metres along an axis that runs from sound rope into the zone. */
export interface EdgeFit {
  /** Where the loss begins. */
  readonly foot: number;
  /** Length over which it rises to the zone's level; 0 for a step. */
  readonly ramp: number;
  readonly level: number;
  /** Feet within this of the best cannot be told from it (95 %). */
  readonly uncertainty: number;
}

/** Ramp lengths tried, as shares of the length on offer; the first stands for a step. */
const RAMPS = [0, 0.03, 0.06, 0.1, 0.15, 0.22, 0.3, 0.4, 0.52, 0.66, 0.82, 1] as const;

/** Two ways for a loss to rise from 0 to 1: straight, and as half a cosine. Integral from the foot to a share t of the ramp. */
const RISES: readonly ((t: number) => number)[] = [
  (t) => (t <= 0 ? 0 : t >= 1 ? t - 0.5 : (t * t) / 2),
  (t) => (t <= 0 ? 0 : t >= 1 ? t - 0.5 : t / 2 - Math.sin(Math.PI * t) / (2 * Math.PI)),
];

/**
 * Fits where a loss begins and how it rises to values `level` at even distances `spacing` apart: sound (zero) before the foot,
 * a rise, then one level; all seen through the instrument's averaging length and the blocks' own. The height is free.
 * `feet` are the distances tried, `most` the longest ramp. `variance` is the noise of one value, correlation counted in.
 */
export function fitEdge(level: Float64Array, weight: Float64Array, spacing: number, averaging: number, feet: readonly number[], most: number, variance: number): EdgeFit {
  const step = feet.length > 1 ? feet[1] - feet[0] : spacing;
  let best = { merit: -Infinity, foot: feet[0], ramp: 0, height: 0 };
  const tail = tailSums(level, weight);
  const meritOfFoot = new Float64Array(feet.length).fill(-Infinity);
  for (const share of RAMPS) {
    const ramp = share * most;
    for (const rise of share < 0.05 ? RISES.slice(0, 1) : RISES) {
      for (let k = 0; k < feet.length; k += 1) {
        const { merit, height } = meritOf(level, weight, tail, spacing, averaging, feet[k], ramp, rise);
        if (merit > meritOfFoot[k]) meritOfFoot[k] = merit;
        if (merit > best.merit) best = { merit, foot: feet[k], ramp, height };
      }
    }
  }
  let nearest = 0;
  let furthest = 0;
  // Two units of log likelihood: the 95 % region of one parameter.
  for (let k = 0; k < feet.length; k += 1) {
    if (meritOfFoot[k] < best.merit - 3.84 * variance) continue;
    nearest = Math.min(nearest, feet[k] - best.foot);
    furthest = Math.max(furthest, feet[k] - best.foot);
  }
  return { foot: best.foot, ramp: best.ramp, level: best.height, uncertainty: Math.max(step / 2, -nearest, furthest) };
}

/** Sums from each value to the last: where the rise is over, its form is 1. */
interface TailSums { readonly product: Float64Array; readonly weight: Float64Array }

function tailSums(level: Float64Array, weight: Float64Array): TailSums {
  const count = level.length;
  const sums = { product: new Float64Array(count + 1), weight: new Float64Array(count + 1) };
  for (let i = count - 1; i >= 0; i -= 1) {
    const w = Math.max(0, weight[i]);
    sums.product[i] = sums.product[i + 1] + w * level[i];
    sums.weight[i] = sums.weight[i + 1] + w;
  }
  return sums;
}

/** Sum of squares that a rise from `foot` explains, its height free. */
function meritOf(level: Float64Array, weight: Float64Array, tail: TailSums, spacing: number, averaging: number, foot: number, ramp: number, rise: (t: number) => number): { merit: number; height: number } {
  const half = Math.max(averaging, spacing) / 2;
  const count = level.length;
  const first = Math.max(0, Math.min(count, Math.ceil((foot - half) / spacing - 0.5)));
  const full = Math.max(first, Math.min(count, Math.ceil((foot + Math.max(ramp, 0) + half) / spacing - 0.5)));
  let product = tail.product[full];
  let square = tail.weight[full];
  for (let i = first; i < full; i += 1) {
    const w = weight[i];
    if (w <= 0) continue;
    const x = (i + 0.5) * spacing - foot;
    // The mean of the rise over the averaging length about x.
    const form = ramp < 1e-6 ? Math.min(1, (x + half) / (2 * half)) : (ramp * (rise((x + half) / ramp) - rise((x - half) / ramp))) / (2 * half);
    product += w * form * level[i];
    square += w * form * form;
  }
  if (square <= 0 || product <= 0) return { merit: -Infinity, height: 0 };
  return { merit: (product * product) / square, height: product / square };
}
