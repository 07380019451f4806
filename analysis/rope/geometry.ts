/**
 * Geometry of one rope: what the record states, completed from handbook factors.
 * `sources` says of every completed field where it comes from.
 */
export interface RopeGeometry {
  readonly diameterMm: number | null;
  readonly layLengthMm: number | null;
  readonly strands: number | null;
  /** Load-bearing wires of the whole rope and of the outer strands; fillers not counted. */
  readonly wires: number | null;
  readonly outerStrandWires: number | null;
  readonly wiresPerStrand: number | null;
  readonly metallicAreaMm2: number | null;
  readonly massKgPerM: number | null;
  readonly gradeMpa: number | null;
  readonly minimumBreakingForceKn: number | null;
  /** Nominal diameter of an outer wire and its share of the metallic area in percent. */
  readonly outerWireDiameterMm: number | null;
  readonly outerWireSharePercent: number | null;
  /** Count of all outer wires of the rope (of every outer strand, or of the outer layer of a locked coil). */
  readonly outerWires?: number | null;
  /** Count of outer strands: 12 of the 18 strands of an 18x7. */
  readonly outerStrands?: number | null;
  readonly seale: boolean;
  readonly core: 'fibre' | 'steel' | 'locked-coil' | null;
  readonly lay: 'ordinary' | 'lang' | null;
  readonly rotationResistant: boolean;
  readonly sources: readonly { readonly field: string; readonly value: number | string; readonly unit: string; readonly source: string }[];
}
