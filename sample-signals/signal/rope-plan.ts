/** What is truly the matter with a made-up rope. Positions in metres of rope, losses in percent of metallic area, times in years since installation. */
export interface RopePlan {
  readonly name: string;
  readonly length: number;
  readonly loop: boolean;
  readonly strandSpacing: number;
  readonly averagingLength: number;
  /** Root mean square of the permanent unevenness of LMA, percent. */
  readonly texture: number;
  readonly zones: readonly PlannedZone[];
  readonly breaks: readonly PlannedBreak[];
  readonly features: readonly KnownFeature[];
}

export interface PlannedZone {
  readonly from: number;
  readonly to: number;
  /** Length over which the loss rises from nothing to its full depth at either end. */
  readonly edge: number;
  readonly kind: 'corrosion' | 'wear';
  /** Full depth at a time, percent. */
  depth(years: number): number;
}

export interface PlannedBreak {
  readonly position: number;
  /** Years after installation at which the wire broke. */
  readonly born: number;
  /** Peak of its LF pulse over that of a 2 mm wire with a 5 mm gap, 30 mm from the sensor. */
  readonly size: number;
  readonly gap: number;
  readonly distance: number;
}

/** More metal than rope: the tucks of a splice, a socket, a clamp. `loss` is negative for a gain. */
export interface KnownFeature {
  readonly from: number;
  readonly to: number;
  readonly loss: number;
  readonly spikes: number;
}

/** One pass of the head over the rope. */
export interface ScanPlan {
  readonly id: string;
  readonly years: number;
  readonly step: number;
  /** Rope position under the head at the start of the file. */
  readonly start: number;
  /** Length of rope that passes, metres of rope. */
  readonly passes: number;
  /** Position that the file shows at its start. */
  readonly firstReading: number;
  readonly reversed: boolean;
  /** The encoder shows 1 + scaleError metres for each metre of rope. */
  readonly scaleError: number;
  /** At a place in the file the wheel slips: rope passes without being counted (positive) or is counted twice. */
  readonly slips: readonly { readonly reading: number; readonly size: number }[];
  readonly gain: number;
  readonly zero: number;
  /** Percent over the whole file. */
  readonly drift: number;
  readonly lossNoise: number;
  readonly faultNoise: number;
}

/** Loss of a zone at a place, 0..1 of its depth: cosine edges, flat between. */
export function zoneShare(zone: { readonly from: number; readonly to: number; readonly edge: number }, position: number): number {
  const inside = Math.min(position - zone.from, zone.to - position);
  if (inside <= 0) return 0;
  return inside >= zone.edge ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * inside) / zone.edge);
}
