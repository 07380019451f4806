/**
 * Minimum rope strength of 30 CFR 56.19021 and its like as a multiple of the static load, by suspended length in feet.
 * Drum: 7.0 - 0.001 L below 3000 ft, then 4.0. Friction drive: 7.0 - 0.0005 L below 4000 ft, then 5.0. Tail rope: 7.0 times its weight.
 * Guide rope: 5.0. The forms are published in an identical state rule, the constants 4.0, 5.0 and 7.0 are from memory.
 */
export function minimumStrengthFactor(duty: 'drum' | 'friction' | 'tail' | 'guide', suspendedFeet: number): number {
  if (duty === 'tail') return 7;
  if (duty === 'guide') return 5;
  if (duty === 'drum') return suspendedFeet < 3000 ? 7 - 0.001 * suspendedFeet : 4;
  return suspendedFeet < 4000 ? 7 - 0.0005 * suspendedFeet : 5;
}

interface SafetyFactors { readonly upToFeet: number; readonly whenNew: number; readonly atDiscard: number }

/** California T8 7135, mine hoists: safety factor when new and at discard by length [published]. */
const CALIFORNIA: readonly SafetyFactors[] = [
  { upToFeet: 500, whenNew: 8, atDiscard: 6.4 }, { upToFeet: 1000, whenNew: 7, atDiscard: 5.8 },
  { upToFeet: 2000, whenNew: 6, atDiscard: 5 }, { upToFeet: Infinity, whenNew: 5, atDiscard: 4.3 },
];

export function californiaSafetyFactors(lengthFeet: number): { readonly whenNew: number; readonly atDiscard: number } {
  const { whenNew, atDiscard } = lengthFeet <= 500 ? CALIFORNIA[0] : CALIFORNIA.find((each) => lengthFeet < each.upToFeet)!;
  return { whenNew, atDiscard };
}
