/** One wire break seen from outside: two magnetic poles at the faces of the gap. Lengths in metres, field in tesla. */
export interface Dipole {
  readonly gap: number;
  /** Distance from the break to the sensor. */
  readonly distance: number;
  /** Saturation polarisation times wire area, Wb. */
  readonly poleStrength: number;
}

/** Saturation polarisation (T) times the area of a round wire of the given diameter (m). */
export function poleStrengthOf(saturation: number, wireDiameter: number): number {
  return saturation * Math.PI * 0.25 * wireDiameter * wireDiameter;
}

/** Field along the rope at x metres from the middle of the gap: one peak between two negative lobes. */
export function axialField(x: number, { gap, distance, poleStrength }: Dipole): number {
  const left = x + gap / 2;
  const right = x - gap / 2;
  return (poleStrength / (4 * Math.PI)) * (left / Math.hypot(left, distance) ** 3 - right / Math.hypot(right, distance) ** 3);
}

/** Field across the rope: zero over the gap, a positive and a negative extreme beside it. */
export function radialField(x: number, { gap, distance, poleStrength }: Dipole): number {
  return ((poleStrength * distance) / (4 * Math.PI)) * (1 / Math.hypot(x + gap / 2, distance) ** 3 - 1 / Math.hypot(x - gap / 2, distance) ** 3);
}
