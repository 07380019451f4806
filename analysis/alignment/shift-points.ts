import type { AlignmentParameters } from './parameters.ts';
import type { ShiftBelief, ShiftLattice } from './shift-lattice.ts';

/** One measured shift: at a position of the scan, reference position minus scan position. Metres. */
export interface ShiftPoint {
  readonly at: number;
  readonly shift: number;
  readonly sigma: number; // one sigma
}

/** How the shift is taken to go within one measured length: as it was predicted, or level where the prediction is too rough to say. */
export type Within = 'steady' | 'level';

/**
 * Shifts measured over lengths that share no sample: the evidence of the blocks of each length, added up along a path through
 * what is believed at its middle, peaks at what the length measured. Lengths whose evidence has no clear peak say nothing.
 */
export function shiftPoints(lattice: ShiftLattice, beliefs: readonly ShiftBelief[], steady: (at: number) => number, within: Within, parameters: AlignmentParameters): ShiftPoint[] {
  const { at, first, from: rows, evidence, step } = lattice;
  const group = Math.max(1, Math.round(parameters.pointLength / parameters.block));
  const points: ShiftPoint[] = [];
  for (let from = 0; from < at.length; from += group) {
    const end = Math.min(at.length, from + group);
    const middle = (from + end - 1) >> 1;
    const centre = Math.round(beliefs[middle].middle / step);
    const sums = new Float64Array(2 * ASIDE + 1);
    let shift = 0;
    let inside = true;
    for (let b = from; b < end; b += 1) {
      const index = within === 'steady' ? centre : Math.round((centre * step + steady(at[middle]) - steady(at[b])) / step);
      const cell = index - first[b];
      shift += steady(at[b]) + index * step;
      if (cell < ASIDE || cell + ASIDE >= rows[b + 1] - rows[b]) inside = false;
      else for (let d = -ASIDE; d <= ASIDE; d += 1) sums[d + ASIDE] += evidence[rows[b] + cell + d];
    }
    const peak = inside ? peakOf(sums, parameters.informative) : null;
    if (peak === null) continue;
    points.push({ at: (at[from] + at[end - 1]) / 2, shift: shift / (end - from) + peak.place * step, sigma: peak.sigma * step });
  }
  return points;
}

/** Cells to either side of the path that are looked at. */
export const ASIDE = 6;

function peakOf(sums: Float64Array, informative: number): { place: number; sigma: number } | null {
  let top = ASIDE;
  for (let k = ASIDE - 2; k <= ASIDE + 2; k += 1) if (sums[k] > sums[top]) top = k;
  const [before, here, after] = [sums[top - 1], sums[top], sums[top + 1]];
  const curvature = before - 2 * here + after;
  const around = Math.max(sums[0], sums[sums.length - 1]);
  if (!(curvature < 0) || before > here || after > here || here - around < informative) return null;
  return { place: top - ASIDE + summitOf(sums, top, (0.5 * (before - after)) / curvature), sigma: Math.sqrt(-1 / curvature) };
}

/**
 * Where the polynomial of fourth order through five cells has its top, from where the parabola through three has it (Newton's
 * steps): over two cells the evidence of a scan with little noise is no parabola. The parabola's where the two part.
 */
function summitOf(sums: Float64Array, top: number, parabola: number): number {
  const [far, near, here, next, last] = sums.subarray(top - 2, top + 3);
  const slope = (far - 8 * near + 8 * next - last) / 12;
  const bend = (-far + 16 * near - 30 * here + 16 * next - last) / 12;
  const third = (-far + 2 * near - 2 * next + last) / 2;
  const fourth = far - 4 * near + 6 * here - 4 * next + last;
  let place = parabola;
  for (let step = 0; step < 4; step += 1) {
    const curvature = bend + third * place + (fourth * place * place) / 2;
    if (!(curvature < 0)) return parabola;
    place -= (slope + bend * place + (third * place * place) / 2 + (fourth * place ** 3) / 6) / curvature;
  }
  return Math.abs(place - parabola) < MOST_APART ? place : parabola;
}

/** Cells that the two may part by. */
const MOST_APART = 0.3;
