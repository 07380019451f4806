/** Settings of growth, each with its reason. Lengths in metres, losses in percent of metallic area. */
export const GROWTH = {
  /** Share of false findings accepted among the places called new, growing or receding (Benjamini and Hochberg 1995). */
  falseDiscoveryRate: 0.02,
  /** Where the claimed bound of position is wider than this a place is not compared with earlier inspections. Metres. */
  widestBound: 2,
  /** Chance accepted that noise alone gives, somewhere on the rope, an indication as strong as one that is called new. */
  chanceOfFalseNew: 0.02,
  /** A change of the mean loss below this is not called growth, however sure: the repeatability of common instruments (common practice). */
  smallestZoneChange: 0.1,
  /** A place must have been seen over this share of its length to be measured. */
  smallestSeenShare: 0.5,
  /** Standard uncertainty of the LMA scale between two scans where the rope's texture cannot tell it (common practice: 1 % of 10..20 %). */
  gainUncertainty: 0.05,
  /** Length of the averages from which the relative scale of two scans is found: beyond usual averaging lengths. */
  gainWindow: 0.5,
  /** Repeatability of an LF amplitude as a share of itself, where the rope has too few permanent faults to show it (common practice). */
  amplitudeRepeatability: 0.15,
  /** An equivalent count must rise by this share, or by half a break, before a fault is called growing. */
  smallestFaultGrowth: 0.3,
  /** Rope length within which indications are one place where the diameter is unknown; else six diameters, one lay length. */
  faultLink: 0.15,
} as const;

const MILLISECONDS_PER_YEAR = 365.25 * 86_400_000;

/** Years since the epoch of an ISO date, for rates a year. */
export function yearOf(date: string): number {
  return Date.parse(date) / MILLISECONDS_PER_YEAR;
}
