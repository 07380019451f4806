/** Settings of alignment with their reasons. Lengths in metres, evidence in nats (natural-log likelihood). */
export const ALIGNMENT = {
  /** Coarse windows: long enough for chance matches to be rare, short enough that 0.5 % of scale does not smear them. */
  coarseWindow: 30,
  coarseHop: 15,
  /** Finest bin: long enough to even out the strands; a coarser trace sets its own step. The coarse search takes two at a time. */
  fineBin: 0.05,
  /** Blocks of the fine search: a slip is placed to one of them. */
  block: 0.25,
  /** Shifts are measured over this length before lines are laid through them. */
  pointLength: 3,
  /** How far a place may lie off the line through its neighbours. */
  lineReach: 0.12,
  /** How far the fine path may leave the coarse one. */
  fineReach: 0.8,
  /** Scale error of an encoder that is expected (common practice 0.1..0.5 %). */
  maxSlope: 0.006,
  /** Largest single slip of an encoder that is looked for between two windows. */
  maxSlip: 0.7,
  /** Evidence that a slip must bring in the coarse search. */
  slipCost: 8,
  /** A slip is expected once in so many metres (common practice: a few a run). */
  slipDistance: 400,
  /** Spread of the local scale about the file's own mean scale. */
  slopeSpread: 0.0006,
  /** How far the shift wanders off a straight line over a metre; over longer ways it grows with their root. */
  wander: 0.0015,
  /** Evidence that one more break of the map must bring. */
  breakCost: 12,
  /** Evidence a window must hold over its surroundings to count as a measurement. */
  informative: 4,
  /** What is known of the start without any match: unrecorded cuts and different starts. */
  startUnknown: 20,
  /** Texture beyond this many of its deviations counts as this many until the scans have been compared. */
  textureCap: 5,
  /** LF events: this many noise deviations above the median count as rope character. */
  eventThreshold: 3.5,
  eventCap: 10,
  /** Evidence per squared deviation of an LF event seen in both scans: damped, since amplitudes repeat only to about a seventh. */
  eventWeight: 0.15,
  /** Bound below which no claim is made, whatever the fit says. */
  smallestBound: 0.005,
} as const;

export type AlignmentParameters = { readonly [K in keyof typeof ALIGNMENT]: number };
