import { areaReduction } from './area-reduction.ts';
import type { MeasureTaker } from './judged.ts';

/** Extra loss of strength over loss of area where the damage lies evenly about the rope axis: (1 + k), k up to 0.15 [published]. */
export const EVEN_DAMAGE = 0.15;

/**
 * No magnetic test measures strength. The reduction of area is taken as the loss of strength, and the half width of what
 * published tests found for evenly spread damage (0 to 15 % more) is added to its uncertainty; uneven damage can cost half as much again.
 */
export const strengthLossFromArea: MeasureTaker = {
  along(clause, evidence, survey, limit) {
    const judged = areaReduction.along(clause, evidence, survey, limit);
    if ('needs' in judged) return judged;
    const { governing } = judged;
    return { ...judged, governing: { ...governing, uncertainty: widened(governing.value, governing.uncertainty), note: `estimated from the reduction of area, no strength was measured: evenly spread damage costs up to 15 % more, uneven damage up to 50 % more; ${governing.note}` } };
  },
  over(clause, evidence, survey, where) {
    const area = areaReduction.over(clause, evidence, survey, where);
    return area === null ? null : { value: area.value, uncertainty: widened(area.value, area.uncertainty) };
  },
};

function widened(value: number, uncertainty: number | null): number {
  // Anywhere between 0 and 15 %: a rectangular distribution has sigma = width / sqrt(12).
  return Math.hypot(uncertainty ?? 0, (EVEN_DAMAGE * value) / Math.sqrt(12));
}
