import { quantile } from '../signal/quantile.ts';
import { LOSS_WORDS } from './column-words.ts';
import { THRESHOLDS } from './thresholds.ts';

export interface LossSign {
  readonly sign: 1 | -1;
  readonly certainty: number;
  readonly reason: string;
  /** What stands off to the positive side less what stands off to the negative side, in percent times metres, by long lengths only. */
  readonly evidence: number;
}

/** Length of rope over which values are averaged before their distribution is looked at: noise and pulses go, zones stay. */
const BLOCK = 0.5;
/** Lengths at both ends that are left out: sockets look like a gain of metal. */
const ENDS = 3;

/** Blocks in a row that make a length of loss (1.5 m); the tucks of a splice and single clamps are shorter, and look like a gain. */
const LONG = 3;

/**
 * Which way loss points in a column of changes about zero. Loss comes in lengths that stand off the rest to one side, and
 * the reference is the best section, so sound rope lies near zero and loss beyond it. Blocks of 0.5 m, ends left out, are
 * compared: the tail that outweighs the other shows the direction. A name that says `loss` supports the positive sign.
 */
export function findLossSign(positions: Float64Array, values: Float64Array, valid: Uint8Array, count: number, name: string, perPercent: number): LossSign {
  const blocks = blockMeans(positions, values, valid, count).map((each) => each * perPercent);
  const named = LOSS_WORDS.test(name);
  if (blocks.length < 20) return assumed(named, 0);
  const middle = quantile(blocks, 0.5);
  const spread = Math.max(0.02, neighbourNoise(blocks));
  const limit = Math.max(5 * spread, 0.3);
  const long = tails(blocks, middle, limit, LONG);
  const evidence = (long.up - long.down) * BLOCK;
  for (const [tail, certainty, what] of [[long, 0.8, 'lengths'], [tails(blocks, middle, limit, 1), 0.55, 'short lengths']] as const) {
    const side = tail.up > tail.down ? 1 : -1;
    const [more, less] = side === 1 ? [tail.up, tail.down] : [tail.down, tail.up];
    // Where what stands off is nearer to the reference than the rest, it is the sound rope, and the rest is lost.
    const level = middle + (side * more) / Math.max(1, tail.blocks);
    const mostlyLost = Math.abs(level) < 0.5 * Math.abs(middle) && Math.sign(middle) !== side;
    const sign = mostlyLost ? (middle > 0 ? 1 : -1) : side;
    if (more > 0.5 * limit + 0.6 && more > THRESHOLDS.signEvidence.value * less) return told(sign, certainty, named, mostlyLost ? -evidence : evidence, `${what} stand off to the ${sideOf(side)} side (${(more * BLOCK).toFixed(1)} against ${(less * BLOCK).toFixed(1)} percent-metres)${mostlyLost ? ', towards the reference' : ''}: loss is ${sideOf(sign)}`);
  }
  if (Math.abs(middle) > Math.max(0.3, 4 * spread)) return told(middle > 0 ? 1 : -1, 0.5, named, evidence, `nearly all values lie on the ${sideOf(middle)} side of the reference: that side is loss`);
  return assumed(named, evidence);
}

/** Robust sigma of blocks from the differences of neighbours: long lengths of loss do not count as noise. */
function neighbourNoise(blocks: readonly number[]): number {
  return quantile(blocks.slice(1).map((each, i) => Math.abs(each - blocks[i])), 0.5) / 0.6745 / Math.SQRT2;
}

function sideOf(value: number): 'positive' | 'negative' {
  return value > 0 ? 'positive' : 'negative';
}

function assumed(named: boolean, evidence: number): LossSign {
  if (named) return { sign: 1, certainty: 0.7, evidence, reason: 'the name of the column speaks of loss: loss is taken as positive' };
  return { sign: 1, certainty: 0.4, evidence, reason: 'nothing in the data shows which way loss points: loss is assumed to be positive' };
}

function told(sign: 1 | -1, certainty: number, named: boolean, evidence: number, reason: string): LossSign {
  if (!named) return { sign, certainty, evidence, reason };
  if (sign === 1) return { sign, certainty: 0.95, evidence, reason };
  // A weak hint does not outweigh a name that says loss.
  return certainty < 0.7 ? assumed(named, evidence) : { sign, certainty: 0.6, evidence, reason: `${reason}, although the name of the column speaks of loss` };
}

/** What stands off above and below by more than `limit`, summed over runs of at least `least` blocks. */
function tails(blocks: readonly number[], middle: number, limit: number, least: number): { up: number; down: number; blocks: number } {
  const sums = { up: 0, down: 0, blocks: 0 };
  let run = 0;
  let sum = 0;
  let side = 0;
  for (let i = 0; i <= blocks.length; i += 1) {
    const off = i < blocks.length ? blocks[i] - middle : 0;
    const now = off > limit ? 1 : off < -limit ? -1 : 0;
    if (now !== side) {
      if (side !== 0 && run >= least) {
        sums[side > 0 ? 'up' : 'down'] += Math.abs(sum);
        sums.blocks += run;
      }
      run = 0;
      sum = 0;
      side = now;
    }
    run += 1;
    sum += off;
  }
  return sums;
}

function blockMeans(positions: Float64Array, values: Float64Array, valid: Uint8Array, count: number): number[] {
  if (count === 0) return [];
  const from = positions[0] + ENDS;
  const to = positions[count - 1] - ENDS;
  const means: number[] = [];
  let sum = 0;
  let taken = 0;
  let limit = from + BLOCK;
  for (let i = 0; i < count; i += 1) {
    if (positions[i] < from || valid[i] === 0) continue;
    if (positions[i] > to) break;
    if (positions[i] >= limit) {
      if (taken > 0) means.push(sum / taken);
      sum = 0;
      taken = 0;
      limit = positions[i] + BLOCK;
    }
    sum += values[i];
    taken += 1;
  }
  if (taken > 0) means.push(sum / taken);
  return means;
}
