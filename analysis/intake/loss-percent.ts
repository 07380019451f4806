import { quantileInPlace } from '../signal/quantile.ts';
import { REMAINING_WORDS, isArea, isPercent } from './column-words.ts';
import type { ColumnGuess, LossSignBasis } from './run.ts';
import type { RunColumns } from '../rope/record.ts';
import { findLossSign } from './loss-sign.ts';

export interface LossReading {
  /** Written value -> percent of metallic area lost: `offset + factor * value`. */
  readonly offset: number;
  readonly factor: number;
  readonly unit: string;
  readonly decisions: readonly string[];
  readonly certainty: number;
  /** Set where the direction of loss was not told by anything and is assumed. */
  readonly signAssumed: boolean;
  readonly sign: LossSignBasis;
}

/**
 * How the LMA column is to be read as percent of loss, loss positive. Null where areas come without a metallic area of the
 * rope to compare with.
 */
export function lossReading(positions: Float64Array, values: Float64Array, valid: Uint8Array, count: number, guess: ColumnGuess, stated: RunColumns | undefined, metallicArea: number | null): LossReading | null {
  const unit = stated?.lma?.unit ?? (isArea(guess.unit) ? 'mm2' : isPercent(guess.unit) ? '%' : '');
  const middle = medianOf(values, valid, count);
  const area = unit === 'mm2';
  if (area && metallicArea === null) return null;
  const whole = area ? metallicArea! : 100;
  const perPercent = 100 / whole;
  const unitReason = unit === '' ? 'no unit is given for LMA: taken as percent' : `LMA in ${unit}${area ? `, ${whole.toPrecision(5)} mm2 being the whole` : ''}`;
  const remaining = Math.abs(middle) > 0.5 * whole;
  const base = { unit: unit || '%', decisions: [unitReason] };
  if (remaining) {
    const sign = middle > 0 ? 1 : -1;
    return { ...base, offset: 100, factor: -perPercent * sign, certainty: 0.9, signAssumed: false, sign: { fixed: true, written: -1, evidence: 0 }, decisions: [unitReason, `values near ${middle.toPrecision(4)} are the metallic area that is left, not the loss`] };
  }
  const declared = stated?.lma?.loss_is;
  if (declared) return { ...base, offset: 0, factor: declared === 'positive' ? perPercent : -perPercent, certainty: 1, signAssumed: false, sign: { fixed: true, written: declared === 'positive' ? 1 : -1, evidence: 0 }, decisions: [unitReason, `loss is ${declared} as stated in the record`] };
  const named = REMAINING_WORDS.test(guess.name);
  const found = findLossSign(positions, values, valid, count, guess.name, perPercent);
  return {
    ...base, offset: 0, factor: found.sign * perPercent, certainty: Math.min(guess.certainty, found.certainty), signAssumed: found.certainty < 0.5, sign: { fixed: false, written: found.sign, evidence: found.evidence },
    decisions: [unitReason, ...(named ? ['the name speaks of what is left, but the values are changes about zero'] : []), found.reason],
  };
}

export function applyLoss(values: Float64Array, count: number, reading: LossReading): void {
  if (reading.offset === 0 && reading.factor === 1) return;
  if (reading.offset === 0 && reading.factor === -1) {
    for (let i = 0; i < count; i += 1) values[i] = 0 - values[i];
    return;
  }
  for (let i = 0; i < count; i += 1) values[i] = reading.offset + reading.factor * values[i];
}

function medianOf(values: Float64Array, valid: Uint8Array, count: number): number {
  const stride = Math.max(1, Math.floor(count / 100_000));
  const scratch = new Float64Array(Math.floor(count / stride) + 1);
  let taken = 0;
  for (let i = 0; i < count; i += stride) if (valid[i] === 1) scratch[taken++] = values[i];
  return taken === 0 ? 0 : quantileInPlace(scratch, 0.5, 0, taken);
}
