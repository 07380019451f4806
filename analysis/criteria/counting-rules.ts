/** Rules for counting broken wires that several national rules share, as pure functions. Positions in metres. */
export interface BrokenWire {
  readonly position: number;
  /** Name of the wire where it is known, such as 'strand 2 wire 7'; null: taken as a wire of its own. */
  readonly wire: string | null;
}

/** Number of broken wires between `from` and `to` (both included): several breaks of one wire count once. */
export function brokenWiresBetween(breaks: readonly BrokenWire[], from: number, to: number): number {
  const named = new Set<string>();
  let unnamed = 0;
  for (const each of breaks) {
    if (each.position < from || each.position > to) continue;
    if (each.wire === null) unnamed += 1;
    else named.add(each.wire);
  }
  return named.size + unnamed;
}

/** Reduction of area in percent by `wires` broken wires of `sharePercent` each. */
export const reductionByBrokenWires = (wires: number, sharePercent: number): number => wires * sharePercent;

export interface OuterWireBreak {
  readonly position: number;
  /** Number of the outer wire around the rope, counted from 1. */
  readonly wireNumber: number;
}

/**
 * Locked coil: two adjacent broken outer wires, or two with a single sound one between them, mean discard where the break points
 * lie less than one lay length of the outer wires apart [published]. Returns the first such pair, or null.
 */
export function adjacentOuterWires(breaks: readonly OuterWireBreak[], layLength: number, outerWires: number): readonly [OuterWireBreak, OuterWireBreak] | null {
  const sorted = [...breaks].sort((a, b) => a.position - b.position);
  for (let i = 0; i < sorted.length; i += 1) {
    for (let j = i + 1; j < sorted.length && sorted[j].position - sorted[i].position < layLength; j += 1) {
      const apart = Math.abs(sorted[i].wireNumber - sorted[j].wireNumber);
      const around = Math.min(apart, outerWires - apart);
      if (around === 1 || around === 2) return [sorted[i], sorted[j]];
    }
  }
  return null;
}

/** Wear or corrosion (percent of wire diameter) and the factor by which the break limit shrinks [published; 30 is printed as 39, taken as a misprint]. */
const WEAR_FACTORS: readonly (readonly [number, number])[] = [[40, 0], [30, 0.5], [25, 0.6], [20, 0.7], [15, 0.75], [10, 0.85]];

/** Break limit of the Russian rule for worn wires; 0 from 40 % wear on: discard whatever the count. */
export function wearAdjustedBreakLimit(limit: number, wearPercent: number): number {
  const factor = WEAR_FACTORS.find(([from]) => wearPercent >= from)?.[1] ?? 1;
  return limit * factor;
}

/**
 * Loss of strength in percent from loss of area: (1 + k) x area loss, 0 <= k < 0.15 where the damage lies evenly about the rope
 * axis and up to 0.5 where it does not [derived reading of a published abstract; no strength is measured].
 */
export function strengthLoss(areaLossPercent: number, k: number): number {
  return (1 + k) * areaLossPercent;
}
