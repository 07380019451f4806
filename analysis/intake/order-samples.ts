import { quantileInPlace } from '../signal/quantile.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Samples of one run by rising position. Columns may hold NaN where a cell was empty. */
export interface OrderedSamples {
  readonly count: number;
  readonly positions: Float64Array;
  readonly columns: readonly Float64Array[];
  readonly fell: boolean;
  /** Median forward step in metres. */
  readonly typicalStep: number;
  readonly stops: readonly Stretch[];
  readonly backward: readonly Stretch[];
  readonly jumps: readonly Jump[];
  readonly duplicates: number;
  /** Samples on the way back and forth again that were not used. */
  readonly passedAgain: number;
  readonly spikes: number;
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly samples: number;
}

export interface Jump {
  readonly at: number;
  readonly size: number;
}

const KEPT = 200;

/**
 * Puts samples in order of position, in place and in linear time. Where the rope stood, the samples of one position become
 * their mean; where it ran back, only the first pass counts, so that no length is averaged with a shifted copy of itself;
 * lone positions far off the others are dropped. Nothing is interpolated.
 */
export function orderSamples(positions: Float64Array, columns: readonly Float64Array[], rows: number): OrderedSamples {
  const fell = runsBackward(positions, rows);
  if (fell) for (const each of [positions, ...columns]) each.subarray(0, rows).reverse();
  const typicalStep = typicalForwardStep(positions, rows);
  const jumpLength = Math.max(THRESHOLDS.jumpLength.value, THRESHOLDS.jumpSteps.value * typicalStep);
  const facts = { stops: [] as Stretch[], backward: [] as Stretch[], jumps: [] as Jump[], duplicates: 0, passedAgain: 0, spikes: 0 };
  let last = rows > 0 ? firstTrusted(positions, rows, jumpLength) : 0;
  facts.spikes += last;
  moveSample(positions, columns, last, 0);
  let kept = 1;
  let same = 1;
  let lowest = Infinity;
  let returning = 0;
  const closeReturn = () => {
    if (returning > 0 && positions[kept - 1] - lowest > 2 * typicalStep && facts.backward.length < KEPT) facts.backward.push({ from: lowest, to: positions[kept - 1], samples: returning });
    returning = 0;
    lowest = Infinity;
  };
  const closeStop = () => {
    if (same >= THRESHOLDS.stopSamples.value && facts.stops.length < KEPT) facts.stops.push({ from: positions[kept - 1], to: positions[kept - 1], samples: same });
    same = 1;
  };
  for (let i = last + 1; i < rows; i += 1) {
    const step = positions[i] - positions[kept - 1];
    if (Math.abs(step) > jumpLength) {
      const back = returnsAfter(positions, rows, i, positions[kept - 1], jumpLength);
      if (back > i) {
        facts.spikes += back - i;
        i = back - 1;
        continue;
      }
      if (Math.abs(positions[i] - positions[i - 1]) > jumpLength && facts.jumps.length < KEPT) facts.jumps.push({ at: positions[kept - 1], size: step });
    }
    if (step > 0) {
      closeReturn();
      closeStop();
      moveSample(positions, columns, i, kept);
      kept += 1;
    } else if (step === 0 && returning === 0) {
      same += 1;
      facts.duplicates += 1;
      mergeSample(columns, i, kept - 1, same);
    } else {
      returning += 1;
      facts.passedAgain += 1;
      if (positions[i] < lowest) lowest = positions[i];
    }
    last = i;
  }
  closeReturn();
  closeStop();
  return { count: rows > 0 ? kept : 0, positions, columns, fell, typicalStep, ...facts };
}

/** Whether the file's positions fall: more length is run falling than rising, leaving out leaps. */
function runsBackward(positions: Float64Array, rows: number): boolean {
  let rises = 0;
  let falls = 0;
  for (let i = 1; i < rows; i += 1) {
    if (positions[i] > positions[i - 1]) rises += 1;
    else if (positions[i] < positions[i - 1]) falls += 1;
  }
  return falls > rises;
}

/** Median of the forward steps, from a sample of at most 200,000 of them. */
function typicalForwardStep(positions: Float64Array, rows: number): number {
  const stride = Math.max(1, Math.floor(rows / 200_000));
  const steps = new Float64Array(Math.ceil(rows / stride) + 1);
  let count = 0;
  for (let i = 1; i < rows; i += stride) {
    const step = positions[i] - positions[i - 1];
    if (step > 0) steps[count++] = step;
  }
  return count === 0 ? 0 : quantileInPlace(steps, 0.5, 0, count);
}

/** Index of the first sample whose successors lie near it. */
function firstTrusted(positions: Float64Array, rows: number, jumpLength: number): number {
  for (let i = 0; i < Math.min(5, rows - 2); i += 1) {
    if (Math.abs(positions[i + 1] - positions[i]) <= jumpLength || Math.abs(positions[i + 2] - positions[i + 1]) > jumpLength) return i;
  }
  return 0;
}

/** Index of the first of the next few samples that is back near `from`, or -1. */
function returnsAfter(positions: Float64Array, rows: number, at: number, from: number, jumpLength: number): number {
  for (let j = at + 1; j < Math.min(rows, at + 6); j += 1) if (Math.abs(positions[j] - from) <= jumpLength) return j;
  return -1;
}

function moveSample(positions: Float64Array, columns: readonly Float64Array[], from: number, to: number): void {
  if (from === to) return;
  positions[to] = positions[from];
  for (let c = 0; c < columns.length; c += 1) columns[c][to] = columns[c][from];
}

/** Running mean that leaves equal values exactly equal; an empty cell takes what the other sample has. */
function mergeSample(columns: readonly Float64Array[], from: number, into: number, count: number): void {
  for (let c = 0; c < columns.length; c += 1) {
    const column = columns[c];
    const value = column[from];
    if (Number.isNaN(value)) continue;
    column[into] = Number.isNaN(column[into]) ? value : column[into] + (value - column[into]) / count;
  }
}
