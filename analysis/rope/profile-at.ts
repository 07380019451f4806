import type { Profile } from '../condition/condition.ts';
import type { Frame } from './units.ts';

/** Value of a profile at a position, linear between its points and held beyond its ends; null where it has no points. */
export function profileAt<F extends Frame>(profile: Profile<F>, position: number): number | null {
  const { positions, values } = profile;
  if (positions.length === 0) return null;
  if (position <= positions[0]) return values[0];
  let low = 0;
  let high = positions.length - 1;
  if (position >= positions[high]) return values[high];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (positions[middle] <= position) low = middle;
    else high = middle;
  }
  const share = (position - positions[low]) / (positions[high] - positions[low]);
  return values[low] + share * (values[high] - values[low]);
}
