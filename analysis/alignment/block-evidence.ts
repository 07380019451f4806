import type { Character } from './character.ts';
import type { AlignmentParameters } from './parameters.ts';
import type { ResidualModel } from './residual-model.ts';
import type { ShiftLattice } from './shift-lattice.ts';

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
    const away = Math.round((search.shift(at[b]) - search.steady(at[b])) / step);
    centre[b] = (search.steady(at[b]) + away * step + offset) / scan.bin;
    const cells = Math.max(2, Math.ceil((search.reach(at[b]) / scan.bin) * search.perBin));
    first[b] = away - cells;
    from[b + 1] = from[b] + 2 * cells + 1;
  }
  const evidence = new Float64Array(from[blocks]);
  for (let b = 0; b < blocks; b += 1) {
    const cells = (from[b + 1] - from[b] - 1) / 2;
    const lowest = Math.floor(centre[b] - cells / search.perBin) - 1;
    const highest = Math.ceil(centre[b] + cells / search.perBin) + 2;
    const whole = evidenceOfBins(scan, reference, models, b * size, endOf(b), lowest, highest - lowest + 1, around, parameters);
    for (let k = 0; k <= 2 * cells; k += 1) evidence[from[b] + k] = between(whole, centre[b] + (k - cells) / search.perBin - lowest);
  }
  return { at, step, first, from, evidence };
}

/** The most that LF events of one block may say, nats: amplitudes repeat only roughly and two events may meet by chance. */
const MOST_OF_EVENTS = 14;

function evidenceOfBins(scan: Character, reference: Character, models: readonly ResidualModel[], from: number, end: number, lowest: number, lags: number, around: boolean, parameters: AlignmentParameters): Float64Array {
  const out = new Float64Array(lags);
  for (const model of models) addFit(model, from, end, lowest, out, around);
  if (hasEvent(scan.events, from, end)) addEvents(scan.events, reference.events, from, end, lowest, out, around, parameters.eventWeight);
  return out;
}

/** Adds how much better bins [from, end) are told by the reference, `lowest` and so many bins on, than by their own scatter alone. Nats. */
function addFit({ gain, scan, scanSeen, reference, referenceSeen, variance, most, alone, independence }: ResidualModel, from: number, end: number, lowest: number, out: Float64Array, around: boolean): void {
  const size = reference.length;
  const weight = 0.5 / independence;
  for (let l = 0; l < out.length; l += 1) {
    const { at, first, last } = overlap(from, end, lowest + l, size, around);
    let sum = 0;
    for (let i = first, k = at; i < last; i += 1, k += 1) {
      const j = k < size ? k : k - size;
      if (scanSeen[i] === 0 || referenceSeen[j] === 0) continue;
      const left = scan[i] - gain * reference[j];
      const off = (left * left) / variance[i];
      sum += alone[i] - (off < most[i] ? off : most[i]);
    }
    out[l] += weight * sum;
  }
}

/** Bins of the scan that meet the reference `lag` bins further on, and where the first of them does. On a loop all do. */
function overlap(from: number, end: number, lag: number, size: number, around: boolean): { at: number; first: number; last: number } {
  const at = from + lag;
  if (around) return { at: ((at % size) + size) % size, first: from, last: end };
  const first = Math.max(from, from - at);
  return { at: at + first - from, first, last: Math.min(end, from + size - at) };
}

function hasEvent(events: Float64Array, from: number, end: number): boolean {
  for (let i = from; i < end; i += 1) if (events[i] > 0) return true;
  return false;
}

function addEvents(scan: Float64Array, reference: Float64Array, from: number, end: number, lowest: number, out: Float64Array, around: boolean, weight: number): void {
  const size = reference.length;
  const met = new Float64Array(out.length + 2);
  for (let l = -1; l <= out.length; l += 1) {
    const { at, first, last } = overlap(from, end, lowest + l, size, around);
    let sum = 0;
    for (let i = first, k = at; i < last; i += 1, k += 1) sum += scan[i] * reference[k < size ? k : k - size];
    met[l + 1] = weight * sum;
  }
  // An event stands somewhere in its bin: its neighbours share what it says.
  for (let l = 0; l < out.length; l += 1) out[l] += Math.min(MOST_OF_EVENTS, 0.5 * met[l + 1] + 0.25 * (met[l] + met[l + 2]));
}

/** Value between whole bins by the cubic through the four nearest. */
function between(values: Float64Array, place: number): number {
  const k = Math.max(1, Math.min(values.length - 3, Math.floor(place)));
  const t = place - k;
  const [a, b, c, d] = [values[k - 1], values[k], values[k + 1], values[k + 2]];
  return b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}
