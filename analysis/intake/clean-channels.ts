import type { Channel } from '../rope/trace.ts';
import { finding } from './findings.ts';
import type { Finding } from './findings.ts';
import { applyLoss, lossReading } from './loss-percent.ts';
import type { LossReading } from './loss-percent.ts';
import { maskFrozen, maskLoneSpikes, maskMarks, maskOutside } from './mask-samples.ts';
import type { ColumnGuess, RunRequest } from './run.ts';
import { THRESHOLDS } from './thresholds.ts';

export interface CleanLoss {
  readonly reading: LossReading;
  readonly findings: readonly Finding[];
}

/**
 * LMA as written becomes percent of loss in place; marks, readings out of range, frozen lengths and lone spikes are masked.
 * 'no area' where it is in mm2 and the rope's metallic area is not known.
 */
export function cleanLoss(positions: Float64Array, values: Float64Array, valid: Uint8Array, count: number, guess: ColumnGuess, request: RunRequest): CleanLoss | 'no area' {
  maskMarks(values, valid, count);
  const reading = lossReading(positions, values, valid, count, guess, request.columns, request.metallicArea);
  if (reading === null) return 'no area';
  applyLoss(values, count, reading);
  maskOutside(values, valid, count, -THRESHOLDS.lossRange.value, THRESHOLDS.lossRange.value);
  maskFrozen(positions, values, valid, count);
  const spikes = maskLoneSpikes(values, valid, count);
  const whole = [positions[0], positions[count - 1]] as const;
  const findings: Finding[] = [];
  if (spikes > 0) findings.push(finding('spikes', 'info', ...whole, `${spikes} single samples of LMA stand far off both neighbours, which an averaging head cannot show; they are masked.`));
  if (reading.signAssumed) findings.push(finding('sign-assumed', 'warning', ...whole, 'Nothing tells which way loss points in the LMA column; it is taken as positive. State loss_is for this run.'));
  return { reading, findings };
}

/** Masks what the LF channel did not measure. Spikes stay: a broken wire looks like one. */
export function cleanFault(positions: Float64Array, values: Float64Array, valid: Uint8Array, count: number): void {
  maskMarks(values, valid, count);
  maskFrozen(positions, values, valid, count);
}

/** Whether a channel shows anything at all: one that never moves was not connected, whatever value it holds. */
export function isAlive(channel: Channel | null): boolean {
  return channel !== null && channel.valid.includes(1);
}
