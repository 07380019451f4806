import { blockEvidence } from '../../analysis/alignment/block-evidence.ts';
import type { Character } from '../../analysis/alignment/character.ts';
import { ALIGNMENT } from '../../analysis/alignment/parameters.ts';
import { mostOf } from '../../analysis/alignment/residual-model.ts';
import type { ResidualModel } from '../../analysis/alignment/residual-model.ts';
import { smoothReference } from '../../analysis/alignment/smooth-reference.ts';
import { beliefsOf } from '../../analysis/alignment/shift-lattice.ts';
import { shiftPoints } from '../../analysis/alignment/shift-points.ts';
import { labRandom } from './lab-random.ts';

/** Error of one window's shift against the least that any unbiased estimator can reach. Samples. */
export interface DelayTrial {
  readonly rmse: number;
  readonly bound: number;
  readonly draws: number;
  /** Draws in which the window did not say anything: it claims nothing then, and counts in no error. */
  readonly silent: number;
}

/**
 * Two noisy records of one window of `template`, the second late by a fraction of a sample, many times: the window's shift as
 * alignment measures it. The bound for two noisy records of one unknown signal is sqrt(2 s^2 / sum s'(n)^2) (Cramer-Rao).
 */
export function delayTrial(template: Float64Array, start: number, length: number, decibel: number, draws: number, seed: number): DelayTrial {
  const random = labRandom(seed);
  const sigma = deviationOf(template) * 10 ** (-decibel / 20);
  let squares = 0;
  let silent = 0;
  for (let draw = 0; draw < draws; draw += 1) {
    const delay = random.uniform() - 0.5;
    const noisy = (value: number): number => value + sigma * random.normal();
    const reference = Float64Array.from({ length: length + 2 * MARGIN }, (_, i) => noisy(template[start - MARGIN + i]));
    const scan = Float64Array.from({ length }, (_, i) => noisy(splined(template, start + i + delay)));
    const measured = measuredShift(scan, reference, sigma);
    if (measured === null) silent += 1;
    else squares += (measured - delay) ** 2;
  }
  let slopes = 0;
  for (let i = 0; i < length; i += 1) slopes += ((template[start + i + 1] - template[start + i - 1]) / 2) ** 2;
  return { rmse: Math.sqrt(squares / (draws - silent)), bound: Math.sqrt((2 * sigma * sigma) / slopes), draws, silent };
}

const MARGIN = 16;

/** As the looks do that measure shifts. */
const PER_BIN = 1;

/** Through the very functions that measure shifts in a scan, with the noise known. One bin is one sample. */
function measuredShift(scan: Float64Array, reference: Float64Array, sigma: number): number | null {
  const character = (values: Float64Array, start: number): Character => ({ start, bin: 1, length: values.length, texture: values, textureSeen: new Uint8Array(values.length).fill(1), events: new Float64Array(values.length), fault: new Float64Array(values.length), faultSeen: new Uint8Array(values.length) });
  const [own, other] = [character(scan, 0), character(reference, -MARGIN)];
  const places = Float64Array.from({ length: scan.length }, (_, i) => i + MARGIN);
  const expected = smoothReference({ values: scan, seen: own.textureSeen }, { values: reference, seen: other.textureSeen }, places, false, false)?.values ?? reference;
  const model: ResidualModel = {
    gain: 1, scan, scanSeen: own.textureSeen, reference: expected, referenceSeen: other.textureSeen, variance: new Float64Array(scan.length).fill(2 * sigma * sigma),
    most: mostOf(scan, new Float64Array(scan.length).fill(2 * sigma * sigma)), alone: new Float64Array(scan.length), independence: 1,
  };
  const parameters = { ...ALIGNMENT, block: scan.length, pointLength: scan.length, informative: 0 };
  const lattice = blockEvidence(own, other, [model], { steady: () => 0, shift: () => 0, reach: () => 8, perBin: PER_BIN }, false, parameters);
  const beliefs = beliefsOf(lattice, [{ drift: 0.1, slipChance: 0.01, largestSlip: 2 }]);
  const point = shiftPoints(lattice, beliefs, () => 0, 'steady', parameters)[0];
  return point?.shift ?? null;
}

/** Windowed sinc: the template is well below half the sampling rate. */
function splined(values: Float64Array, place: number): number {
  const middle = Math.round(place);
  let sum = 0;
  for (let k = middle - 12; k <= middle + 12; k += 1) {
    const x = place - k;
    const window = Math.cos((Math.PI * x) / 26) ** 2;
    sum += values[k] * window * (Math.abs(x) < 1e-9 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
  }
  return sum;
}

function deviationOf(values: Float64Array): number {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length);
}
