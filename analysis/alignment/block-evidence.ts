import type { Character } from './character.ts';
import type { AlignmentParameters } from './parameters.ts';
import type { ResidualModel } from './residual-model.ts';
import { longestRow } from './shift-lattice.ts';
import type { ShiftLattice } from './shift-lattice.ts';
import { modulo } from '../signal/modulo.ts';

/** Where to look: predicted shift (metres) at a position of the scan, and how far to either side of it. */
export interface Search {
  readonly shift: (at: number) => number;
  /** A shift without jumps, from which the lattice counts. */
  readonly steady: (at: number) => number;
  readonly reach: (at: number) => number;
  /** Shifts between two bins that are told apart. */
  readonly perBin: number;
}

/**
 * How well each block of the scan fits the reference at each shift: Gaussian texture with the gain, the scatter and the
 * independence that `models` hold, scatter capped so that new damage says little, plus the damped product of LF events.
 * Where one of the two saw nothing no shift gains. Linear in bins times shifts.
 */
export function blockEvidence(scan: Character, reference: Character, models: readonly ResidualModel[], search: Search, around: boolean, parameters: AlignmentParameters): ShiftLattice {
  const size = Math.max(4, Math.round(parameters.block / scan.bin));
  const blocks = Math.max(1, Math.floor(scan.length / size));
  const endOf = (b: number): number => (b === blocks - 1 ? scan.length : (b + 1) * size);
  const offset = scan.start - reference.start;
  const step = scan.bin / search.perBin;
  const at = new Float64Array(blocks);
  const first = new Int32Array(blocks);
  const from = new Int32Array(blocks + 1);
  const centre = new Float64Array(blocks);
  for (let b = 0; b < blocks; b += 1) {
    at[b] = scan.start + (b * size + (endOf(b) - b * size - 1) / 2) * scan.bin;
    const steady = search.steady(at[b]);
    const away = Math.round((search.shift(at[b]) - steady) / step);
    centre[b] = (steady + away * step + offset) / scan.bin;
    const cells = Math.max(2, Math.ceil((search.reach(at[b]) / scan.bin) * search.perBin));
    first[b] = away - cells;
    from[b + 1] = from[b] + 2 * cells + 1;
  }
  const evidence = new Float64Array(from[blocks]);
  const whole = new Float64Array(longestRow(from) + 6);
  for (let b = 0; b < blocks; b += 1) {
    const cells = (from[b + 1] - from[b] - 1) / 2;
    const lowest = Math.floor(centre[b] - cells / search.perBin) - 1;
    const lags = Math.ceil(centre[b] + cells / search.perBin) + 3 - lowest;
    whole.fill(0, 0, lags);
    for (const model of models) addFit(model, b * size, endOf(b), lowest, lags, whole, around);
    if (hasEvent(scan.events, b * size, endOf(b))) addEvents(scan.events, reference.events, b * size, endOf(b), lowest, whole.subarray(0, lags), around, parameters.eventWeight);
    betweenBins(whole, centre[b] - cells / search.perBin - lowest, search.perBin, evidence, from[b], from[b + 1]);
  }
  return { at, step, first, from, evidence };
}

/** The most that LF events of one block may say, nats: amplitudes repeat only roughly and two events may meet by chance. */
const MOST_OF_EVENTS = 14;

/** Adds how much better bins [from, end) are told by the reference, `lowest` and so many bins on, than by their own scatter alone. Nats. */
function addFit(model: ResidualModel, from: number, end: number, lowest: number, lags: number, out: Float64Array, around: boolean): void {
  const size = model.reference.length;
  const weight = 0.5 / model.independence;
  for (let i = from; i < end; i += 1) {
    if (model.scanSeen[i] === 0) continue;
    if (!around) {
      const met = i + lowest;
      addFitOfBin(model, weight, i, met, Math.max(0, -met), Math.min(lags, size - met), out);
      continue;
    }
    // Round a loop the lags run on from its beginning.
    for (let l = 0, met = modulo(i + lowest, size); l < lags; met = 0) {
      const until = Math.min(lags, l + size - met);
      addFitOfBin(model, weight, i, met - l, l, until, out);
      l = until;
    }
  }
}

/** Bin i of the scan against bins met + first to met + last - 1 of the reference. */
function addFitOfBin({ gain, scan, reference, referenceSeen, variance, most, alone }: ResidualModel, weight: number, i: number, met: number, first: number, last: number, out: Float64Array): void {
  const value = scan[i];
  const perSquare = weight / variance[i];
  const limit = weight * most[i];
  const own = weight * alone[i];
  for (let l = first; l < last; l += 1) {
    if (referenceSeen[met + l] === 0) continue;
    const left = value - gain * reference[met + l];
    // No branch here: which of the two is less cannot be foretold, and each wrong guess costs more than the sum.
    out[l] += own - Math.min(left * left * perSquare, limit);
  }
}

function hasEvent(events: Float64Array, from: number, end: number): boolean {
  for (let i = from; i < end; i += 1) if (events[i] > 0) return true;
  return false;
}

function addEvents(scan: Float64Array, reference: Float64Array, from: number, end: number, lowest: number, out: Float64Array, around: boolean, weight: number): void {
  const size = reference.length;
  const met = new Float64Array(out.length + 2);
  for (let i = from; i < end; i += 1) {
    if (!(scan[i] > 0)) continue;
    for (let l = 0; l < met.length; l += 1) {
      const k = i + lowest + l - 1;
      const j = around ? modulo(k, size) : k;
      if (j >= 0 && j < size) met[l] += weight * scan[i] * reference[j];
    }
  }
  // An event stands somewhere in its bin: its neighbours share what it says.
  for (let l = 0; l < out.length; l += 1) out[l] += Math.min(MOST_OF_EVENTS, 0.5 * met[l + 1] + 0.25 * (met[l] + met[l + 2]));
}

/** Fills out[from..end) with values between whole bins, `perBin` to a bin from `place` on, by the cubic through the four nearest. */
function betweenBins(values: Float64Array, place: number, perBin: number, out: Float64Array, from: number, end: number): void {
  for (let phase = 0; phase < perBin; phase += 1) {
    // Cells a whole number of bins apart share their weights.
    let k = Math.floor(place + phase / perBin);
    const t = place + phase / perBin - k;
    const before = 0.5 * t * (t * (2 - t) - 1);
    const here = 1 + 0.5 * t * t * (3 * t - 5);
    const next = 0.5 * t * (1 + t * (4 - 3 * t));
    const after = 0.5 * t * t * (t - 1);
    for (let cell = from + phase; cell < end; cell += perBin, k += 1) out[cell] = before * values[k - 1] + here * values[k] + next * values[k + 1] + after * values[k + 2];
  }
}
