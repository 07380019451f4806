/**
 * Evidence, in nats, for local shifts of a scan: block after block along the scan, and in every block for a row of shifts
 * `step` apart, counted from what was predicted there. Row b is evidence[from[b]..from[b + 1]) and holds the shifts
 * `first[b] * step` and on.
 */
export interface ShiftLattice {
  readonly at: Float64Array; // middle of each block, position of the scan, metres
  readonly step: number; // metres
  readonly first: Int32Array;
  readonly from: Int32Array;
  readonly evidence: Float64Array;
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

/**
 * Forward and backward sums over all paths through the lattice. How straight a scan is, is learned from it: each of `motions`
 * counts as much as it makes the evidence likely. A slip may go anywhere within reach, so that a place where the wheel
 * slipped costs once and no window is torn between two shifts. Linear in the number of cells.
 */
export function beliefsOf(lattice: ShiftLattice, motions: readonly Motion[]): ShiftBelief[] {
  const likelihood = likelihoods(lattice);
  return backwardBeliefs(lattice, likelihood, likelyRuns(lattice, likelihood, motions));
}

/** Half width of the 95 % range about a value inside it. */
export function boundAbout(belief: ShiftBelief, value: number): number {
  return Math.max(belief.high - value, value - belief.low);
}

/** Each row over its own largest value. */
function likelihoods({ from, evidence }: ShiftLattice): Float64Array {
  const out = new Float64Array(evidence.length);
  for (let b = 0; b + 1 < from.length; b += 1) {
    let top = Number.NEGATIVE_INFINITY;
    for (let k = from[b]; k < from[b + 1]; k += 1) if (evidence[k] > top) top = evidence[k];
    for (let k = from[b]; k < from[b + 1]; k += 1) out[k] = Math.exp(evidence[k] - top);
  }
  return out;
}

/** Forward sums under one motion, as far as they have come. */
interface ForwardRun {
  readonly motion: Motion;
  readonly carry: Carry;
  readonly forward: Float64Array;
  evidence: number;
}

/** A motion that lags behind the likeliest by so many nats is given up: what is still to come does not make it up. */
const GIVEN_UP = 50;
/** At the end a motion that is so many nats less likely changes nothing. */
const SAYS_NOTHING = 5;
/** Blocks between two looks at who lags. */
const STRETCH = 64;

function likelyRuns(lattice: ShiftLattice, likelihood: Float64Array, motions: readonly Motion[]): ForwardRun[] {
  const longest = longestRow(lattice.from);
  let runs = motions.map((motion): ForwardRun => ({ motion, carry: carrierFor(motion, lattice.step, longest), forward: new Float64Array(likelihood.length), evidence: 0 }));
  for (let b = 0; b < lattice.at.length; b += STRETCH) {
    for (const run of runs) goOn(run, lattice, likelihood, b, Math.min(lattice.at.length, b + STRETCH));
    runs = notFarBehind(runs, GIVEN_UP);
  }
  return notFarBehind(runs, SAYS_NOTHING);
}

function notFarBehind(runs: readonly ForwardRun[], nats: number): ForwardRun[] {
  const best = runs.reduce((top, { evidence }) => Math.max(top, evidence), Number.NEGATIVE_INFINITY);
  return runs.filter(({ evidence }) => evidence > best - nats);
}

/** Blocks [from, end) of forward sums. */
function goOn(run: ForwardRun, { first, from: rows }: ShiftLattice, likelihood: Float64Array, from: number, end: number): void {
  const { forward, carry } = run;
  for (let b = from; b < end; b += 1) {
    if (b === 0) forward.fill(1 / rows[1], 0, rows[1]);
    else carry(forward, rows[b - 1], rows[b], first[b] - first[b - 1], forward, rows[b], rows[b + 1]);
    for (let k = rows[b]; k < rows[b + 1]; k += 1) forward[k] *= likelihood[k];
    run.evidence += Math.log(normalise(forward, rows[b], rows[b + 1]));
  }
}

/** Sums from the end of the scan back to a block, under one motion. */
interface BackwardRun {
  readonly carry: Carry;
  readonly forward: Float64Array;
  readonly after: Float64Array;
  /** Chance of this motion among all that are left. */
  readonly share: number;
}

function backwardBeliefs({ at, step, first, from }: ShiftLattice, likelihood: Float64Array, forwards: readonly ForwardRun[]): ShiftBelief[] {
  const longest = longestRow(from);
  const best = Math.max(...forwards.map(({ evidence }) => evidence));
  const weights = forwards.map(({ evidence }) => Math.exp(evidence - best));
  const all = weights.reduce((sum, each) => sum + each, 0);
  const runs = forwards.map(({ carry, forward }, k): BackwardRun => ({ carry, forward, after: new Float64Array(longest).fill(1), share: weights[k] / all }));
  const beliefs = new Array<ShiftBelief>(at.length);
  const mixed = new Float64Array(longest);
  const weighted = new Float64Array(longest);
  const places = new Float64Array(WANTED.length);
  for (let b = at.length - 1; b >= 0; b -= 1) {
    const size = from[b + 1] - from[b];
    multiplied(runs[0], from[b], size, mixed);
    for (let r = 1; r < runs.length; r += 1) {
      multiplied(runs[r], from[b], size, weighted);
      for (let k = 0; k < size; k += 1) mixed[k] += weighted[k];
    }
    beliefs[b] = beliefIn(mixed, size, first[b], step, places);
    if (b === 0) break;
    const before = from[b] - from[b - 1];
    for (const { carry, after } of runs) {
      for (let k = 0; k < size; k += 1) weighted[k] = after[k] * likelihood[from[b] + k];
      carry(weighted, 0, size, first[b - 1] - first[b], after, 0, before);
      normalise(after, 0, before);
    }
  }
  return beliefs;
}

/** What one motion believes of the row that begins at `from`, times its share. */
function multiplied({ forward, after, share }: BackwardRun, from: number, size: number, out: Float64Array): void {
  let sum = 0;
  for (let k = 0; k < size; k += 1) sum += out[k] = after[k] * forward[from + k];
  const scale = share / sum;
  for (let k = 0; k < size; k += 1) out[k] *= scale;
}

export function longestRow(from: Int32Array): number {
  let longest = 0;
  for (let b = 0; b + 1 < from.length; b += 1) longest = Math.max(longest, from[b + 1] - from[b]);
  return longest;
}

/** Chances of drifting by -n..n steps, for a standard deviation in steps. */
function driftKernel(deviation: number): Float64Array {
  if (deviation < 0.7) {
    const aside = (deviation * deviation) / 2;
    return Float64Array.of(aside, 1 - 2 * aside, aside);
  }
  const half = Math.ceil(3 * deviation);
  const kernel = Float64Array.from({ length: 2 * half + 1 }, (_, i) => Math.exp(-0.5 * ((i - half) / deviation) ** 2));
  normalise(kernel, 0, kernel.length);
  return kernel;
}

type Carry = (source: Float64Array, start: number, end: number, moved: number, target: Float64Array, to: number, toEnd: number) => void;

/** Keeps every path alive: no place within reach is ruled out by one block. */
const NEVER_NOTHING = 1e-30;

/** Probabilities one block on: drifted by the kernel, or slipped evenly within reach. `moved`: first shift of the target row minus that of the source row. */
function carrierFor(motion: Motion, step: number, longest: number): Carry {
  const kernel = driftKernel(motion.drift / step).map((share) => share * (1 - motion.slipChance));
  const half = kernel.length >> 1;
  const reach = Math.max(1, Math.round(motion.largestSlip / step));
  const slip = motion.slipChance / (2 * reach + 1);
  const edge = 2 * half;
  const padded = new Float64Array(longest + 2 * edge); // the source row between zeros
  const sums = new Float64Array(longest + 1);
  return (source, start, end, moved, target, to, toEnd) => {
    const size = end - start;
    for (let k = 0; k < size; k += 1) {
      padded[edge + k] = source[start + k];
      sums[k + 1] = sums[k] + source[start + k];
    }
    padded.fill(0, edge + size, edge + size + edge);
    const count = toEnd - to;
    if (moved <= reach && size - moved <= reach && moved + count - 1 - reach <= 0) target.fill(slip * sums[size] + NEVER_NOTHING, to, toEnd);
    else slipInto(target, to, count, moved, sums, size, reach, slip);
    driftInto(target, to, Math.max(0, -moved - half), Math.min(count, size - moved + half), moved + half, padded, kernel);
  };
}

/** Sets `count` cells to what slips bring to them from within reach. */
function slipInto(target: Float64Array, to: number, count: number, moved: number, sums: Float64Array, size: number, reach: number, slip: number): void {
  for (let k = 0; k < count; k += 1) {
    const low = k + moved - reach;
    const high = k + moved + reach + 1;
    const until = sums[high < 0 ? 0 : high > size ? size : high];
    target[to + k] = slip * (until - sums[low < 0 ? 0 : low > size ? size : low]) + NEVER_NOTHING;
  }
}

/** Adds to cells [from, end) what drifts to them; what reaches cell k lies in `padded` from k + offset on. */
function driftInto(target: Float64Array, to: number, from: number, end: number, offset: number, padded: Float64Array, kernel: Float64Array): void {
  if (kernel.length === 3) {
    const left = kernel[0], stay = kernel[1], right = kernel[2];
    for (let k = from; k < end; k += 1) target[to + k] += left * padded[k + offset] + stay * padded[k + offset + 1] + right * padded[k + offset + 2];
    return;
  }
  for (let k = from; k < end; k += 1) {
    let drifted = 0;
    for (let d = 0; d < kernel.length; d += 1) drifted += kernel[d] * padded[k + offset + d];
    target[to + k] += drifted;
  }
}

function normalise(values: Float64Array, start: number, end: number): number {
  let sum = 0;
  for (let k = start; k < end; k += 1) sum += values[k];
  const scale = 1 / sum;
  for (let k = start; k < end; k += 1) values[k] *= scale;
  return sum;
}

const CENTRAL = [0.1, 0.3, 0.5, 0.7, 0.9] as const;
const WANTED = [0.025, ...CENTRAL, 0.975] as const;

function beliefIn(posterior: Float64Array, size: number, first: number, step: number, at: Float64Array): ShiftBelief {
  quantiles(posterior, size, at);
  return { low: (first + at[0]) * step, middle: (first + at[3]) * step, mean: (first + (at[1] + at[2] + at[3] + at[4] + at[5]) / CENTRAL.length) * step, high: (first + at[6]) * step };
}

/** Places, in cells, below which the wanted shares of the probability lie; each cell's own is spread evenly over it. */
function quantiles(posterior: Float64Array, size: number, out: Float64Array): void {
  let found = 0;
  let sum = 0;
  for (let k = 0; k < size && found < WANTED.length; k += 1) {
    while (found < WANTED.length && sum + posterior[k] >= WANTED[found]) {
      out[found] = k - 0.5 + (WANTED[found] - sum) / posterior[k];
      found += 1;
    }
    sum += posterior[k];
  }
  out.fill(size - 0.5, found);
}
