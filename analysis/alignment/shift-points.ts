import type { AlignmentParameters } from './parameters.ts';
import type { ShiftBelief, ShiftLattice } from './shift-lattice.ts';

/** One measured shift: at a position of the scan, reference position minus scan position. Metres. */
export interface ShiftPoint {
  readonly at: number;
  readonly shift: number;
  readonly sigma: number; // one sigma
}

/**
 * Shifts measured over lengths that share no sample: the evidence of the blocks of each length, added up along the path that
 * is believed, peaks at what the length measured. Lengths whose evidence has no clear peak say nothing.
 */
export function shiftPoints(lattice: ShiftLattice, beliefs: readonly ShiftBelief[], about: (at: number) => number, parameters: AlignmentParameters): ShiftPoint[] {
  const group = Math.max(1, Math.round(parameters.pointLength / parameters.block));
  const points: ShiftPoint[] = [];
  for (let from = 0; from < lattice.at.length; from += group) {
    const end = Math.min(lattice.at.length, from + group);
    const sums = new Float64Array(2 * ASIDE + 1);
    let shift = 0;
    let inside = true;
    // The path at the middle block is taken for all: a path that wanders within the length would measure itself.
    const centre = Math.round(beliefs[(from + end - 1) >> 1].middle / lattice.step);
    const lean = about(lattice.at[(from + end - 1) >> 1]);
    for (let b = from; b < end; b += 1) {
      const cell = Math.round((centre * lattice.step + lean - about(lattice.at[b])) / lattice.step) - lattice.first[b];
      shift += about(lattice.at[b]) + (cell + lattice.first[b]) * lattice.step;
      if (cell < ASIDE || cell + ASIDE >= lattice.from[b + 1] - lattice.from[b]) inside = false;
      else for (let d = -ASIDE; d <= ASIDE; d += 1) sums[d + ASIDE] += lattice.evidence[lattice.from[b] + cell + d];
    }
    const peak = inside ? peakOf(sums, parameters.informative) : null;
    if (peak === null) continue;
    const at = (lattice.at[from] + lattice.at[end - 1]) / 2;
    points.push({ at, shift: shift / (end - from) + peak.place * lattice.step, sigma: peak.sigma * lattice.step });
  }
  return points;
}

/** Cells to either side of the path that are looked at. */
const ASIDE = 6;

function peakOf(sums: Float64Array, informative: number): { place: number; sigma: number } | null {
  let top = ASIDE;
  for (let k = ASIDE - 2; k <= ASIDE + 2; k += 1) if (sums[k] > sums[top]) top = k;
  const [before, here, after] = [sums[top - 1], sums[top], sums[top + 1]];
  const curvature = before - 2 * here + after;
  const around = Math.max(sums[0], sums[sums.length - 1]);
  if (!(curvature < 0) || before > here || after > here || here - around < informative) return null;
  return { place: top - ASIDE + (0.5 * (before - after)) / curvature, sigma: Math.sqrt(-1 / curvature) };
}
