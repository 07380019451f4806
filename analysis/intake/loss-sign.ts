import { quantile } from '../signal/quantile.ts';
import { LOSS_WORDS } from './column-words.ts';
import { THRESHOLDS } from './thresholds.ts';

export interface LossSign {
  readonly sign: 1 | -1;
  readonly certainty: number;
  readonly reason: string;
}

/** Length of rope over which values are averaged before their distribution is looked at: noise and pulses go, zones stay. */
const BLOCK = 0.5;
/** Lengths at both ends that are left out: sockets look like a gain of metal. */
const ENDS = 3;

/**
 * Which way loss points in a column of changes about zero. Loss comes in lengths that stand off the rest to one side, and
 * the reference is the best section, so sound rope lies near zero and loss beyond it. Blocks of 0.5 m, ends left out, are
 * compared: the tail that outweighs the other shows the direction. A name that says `loss` supports the positive sign.
 */
export function findLossSign(positions: Float64Array, values: Float64Array, valid: Uint8Array, count: number, name: string, perPercent: number): LossSign {
  const blocks = blockMeans(positions, values, valid, count).map((each) => each * perPercent);
  const named = LOSS_WORDS.test(name);
  if (blocks.length >= 20) {
    const middle = quantile(blocks, 0.5);
    const spread = Math.max(0.02, (quantile(blocks, 0.75) - quantile(blocks, 0.25)) / 1.349);
    const limit = Math.max(3.5 * spread, 0.3);
    let up = 0;
    let down = 0;
    for (const each of blocks) {
      if (each - middle > limit) up += each - middle;
      if (middle - each > limit) down += middle - each;
    }
    const enough = 0.5 * limit + 0.6;
    if (up > enough && up > THRESHOLDS.signEvidence.value * down) return told(1, named, `lengths stand off to the positive side (${up.toFixed(1)} against ${down.toFixed(1)} percent-blocks): loss is positive`);
    if (down > enough && down > THRESHOLDS.signEvidence.value * up) return told(-1, named, `lengths stand off to the negative side (${down.toFixed(1)} against ${up.toFixed(1)} percent-blocks): loss is negative`);
    if (Math.abs(middle) > Math.max(0.3, 4 * spread)) return told(middle > 0 ? 1 : -1, named, `nearly all values lie on the ${middle > 0 ? 'positive' : 'negative'} side of the reference: that side is loss`);
  }
  if (named) return { sign: 1, certainty: 0.7, reason: 'the name of the column speaks of loss: loss is taken as positive' };
  return { sign: 1, certainty: 0.4, reason: 'nothing in the data shows which way loss points: loss is assumed to be positive' };
}

function told(sign: 1 | -1, named: boolean, reason: string): LossSign {
  if (!named) return { sign, certainty: 0.8, reason };
  return sign === 1 ? { sign, certainty: 0.95, reason } : { sign, certainty: 0.6, reason: `${reason}, although the name of the column speaks of loss` };
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
