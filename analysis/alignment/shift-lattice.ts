/**
 * Evidence, in nats, for local shifts of a scan: block after block along the scan, and in every block for a row of shifts
 * `step` apart, counted from what was predicted there. Row b holds shifts `first[b] * step` and on.
 */
export interface ShiftLattice {
  readonly at: Float64Array; // middle of each block, position of the scan, metres
  readonly step: number; // metres
  readonly first: Int32Array;
  readonly evidence: readonly Float64Array[];
}

/** How a shift may change from one block to the next. */
export interface Motion {
  /** Standard deviation of a steady drift over one block, metres. */
  readonly drift: number;
  /** Chance of a slip from one block to the next, and the largest that is expected, metres. */
  readonly slipChance: number;
  readonly largestSlip: number;
}

/** What the whole scan says about the shift at one block. Metres from the prediction. */
export interface ShiftBelief {
  /** As likely too small as too large. */
  readonly middle: number;
  /** Mean without the outer tenths: between two shifts that are both likely it errs least, where the middle jumps. */
  readonly mean: number;
  /** The range that holds 95 %. */
  readonly low: number;
  readonly high: number;
}

export interface Beliefs {
  readonly blocks: readonly ShiftBelief[];
  /** Logarithm of the probability of all evidence under this motion, up to a constant of the lattice. */
  readonly evidence: number;
}

/**
 * Forward and backward sums over all paths through the lattice. A slip may go anywhere within reach, so that a place where
 * the wheel slipped costs once and no window is torn between two shifts. Linear in the number of cells.
 */
export function beliefsOf(lattice: ShiftLattice, motion: Motion): Beliefs {
  const kernel = driftKernel(motion.drift / lattice.step);
  const reach = Math.max(1, Math.round(motion.largestSlip / lattice.step));
  const count = lattice.evidence.length;
  const forward: Float64Array[] = [];
  let evidence = 0;
  for (let b = 0; b < count; b += 1) {
    const { weights, top } = likelihoodOf(lattice.evidence[b]);
    const before = b === 0 ? weights.map(() => 1 / weights.length) : carried(forward[b - 1], lattice.first[b] - lattice.first[b - 1], weights.length, kernel, reach, motion.slipChance);
    for (let k = 0; k < weights.length; k += 1) weights[k] *= before[k];
    evidence += top + Math.log(normalise(weights));
    forward.push(weights);
  }
  const blocks = new Array<ShiftBelief>(count);
  let after: Float64Array = forward[count - 1].map(() => 1);
  for (let b = count - 1; b >= 0; b -= 1) {
    const posterior = forward[b].map((value, k) => value * after[k]);
    normalise(posterior);
    blocks[b] = beliefIn(posterior, lattice.first[b], lattice.step);
    if (b === 0) break;
    const { weights } = likelihoodOf(lattice.evidence[b]);
    for (let k = 0; k < weights.length; k += 1) weights[k] *= after[k];
    after = carried(weights, lattice.first[b - 1] - lattice.first[b], forward[b - 1].length, kernel, reach, motion.slipChance);
    normalise(after);
  }
  return { blocks, evidence };
}

function likelihoodOf(row: Float64Array): { weights: Float64Array; top: number } {
  let top = Number.NEGATIVE_INFINITY;
  for (const value of row) if (value > top) top = value;
  if (!Number.isFinite(top)) return { weights: new Float64Array(row.length).fill(1), top: 0 };
  return { weights: row.map((value) => Math.exp(value - top)), top };
}

/** Chances of drifting by -n..n steps, for a standard deviation in steps. */
function driftKernel(deviation: number): Float64Array {
  if (deviation < 0.7) {
    const aside = (deviation * deviation) / 2;
    return Float64Array.of(aside, 1 - 2 * aside, aside);
  }
  const half = Math.ceil(3 * deviation);
  const kernel = Float64Array.from({ length: 2 * half + 1 }, (_, i) => Math.exp(-0.5 * ((i - half) / deviation) ** 2));
  normalise(kernel);
  return kernel;
}

/** Probabilities one block on: drifted by the kernel, or slipped evenly within `reach`. `moved`: first index there minus first index here. */
function carried(from: Float64Array, moved: number, size: number, kernel: Float64Array, reach: number, slipChance: number): Float64Array {
  const half = kernel.length >> 1;
  const sums = new Float64Array(from.length + 1);
  for (let k = 0; k < from.length; k += 1) sums[k + 1] = sums[k] + from[k];
  const slip = slipChance / (2 * reach + 1);
  const out = new Float64Array(size);
  for (let k = 0; k < size; k += 1) {
    const here = k + moved;
    let drifted = 0;
    for (let d = -half; d <= half; d += 1) if (here + d >= 0 && here + d < from.length) drifted += kernel[d + half] * from[here + d];
    const low = Math.min(from.length, Math.max(0, here - reach));
    const high = Math.min(from.length, Math.max(0, here + reach + 1));
    out[k] = (1 - slipChance) * drifted + slip * (sums[high] - sums[low]) + 1e-300;
  }
  return out;
}

function normalise(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  if (sum > 0) for (let k = 0; k < values.length; k += 1) values[k] /= sum;
  else values.fill(1 / values.length);
  return sum > 0 ? sum : 1e-300;
}

function beliefIn(posterior: Float64Array, first: number, step: number): ShiftBelief {
  const at = (share: number): number => (first + quantile(posterior, share)) * step;
  return { middle: at(0.5), mean: CENTRAL.reduce((sum, share) => sum + at(share), 0) / CENTRAL.length, low: at(0.025), high: at(0.975) };
}

/** Half width of the 95 % range about a value inside it. */
export function boundAbout(belief: ShiftBelief, value: number): number {
  return Math.max(belief.high - value, value - belief.low);
}

const CENTRAL = [0.1, 0.3, 0.5, 0.7, 0.9] as const;

/** Place, in cells, below which `share` of the probability lies; each cell's own is spread evenly over it. */
function quantile(posterior: Float64Array, share: number): number {
  let sum = 0;
  for (let k = 0; k < posterior.length; k += 1) {
    if (sum + posterior[k] >= share) return k - 0.5 + (share - sum) / posterior[k];
    sum += posterior[k];
  }
  return posterior.length - 0.5;
}
