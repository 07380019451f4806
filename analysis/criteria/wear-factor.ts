/** Wear or corrosion (percent of wire diameter) and the factor by which the break limit shrinks [published; 30 is printed as 39, taken as a misprint]. */
const WEAR_FACTORS: readonly (readonly [number, number])[] = [[40, 0], [30, 0.5], [25, 0.6], [20, 0.7], [15, 0.75], [10, 0.85]];

/** Break limit of the Russian rule for worn wires; 0 from 40 % wear on: discard whatever the count. */
export function wearAdjustedBreakLimit(limit: number, wearPercent: number): number {
  const factor = WEAR_FACTORS.find(([from]) => wearPercent >= from)?.[1] ?? 1;
  return limit * factor;
}
