/**
 * Factors of EN 12385 by rope class, as printed in a published handbook of wire ropes (its table 1.9):
 *   A = C d^2 (mm2),  m = W d^2 / 100 (kg/m),  Fmin = K d^2 R / 1000 (kN),  d in mm, R in N/mm2.
 * The fill factor is 4 C / pi. Values marked `memory` were not found in print and must be checked before anyone relies on them.
 */
export interface CoreFactors {
  readonly mass: number;
  readonly area: number;
  readonly breaking: number;
}

export interface ClassFactors {
  readonly name: string;
  readonly fibre: CoreFactors | null;
  readonly steel: CoreFactors | null;
  /** Breaking-force factor where the steel core is a single wire strand. */
  readonly breakingWithStrandCore: number | null;
  readonly provenance: 'published' | 'memory' | 'disputed';
}

const row = (name: string, fibre: readonly [number, number, number], steel: readonly [number, number, number], strandCore: number | null = null, provenance: ClassFactors['provenance'] = 'published'): ClassFactors => ({
  name, fibre: factors(fibre), steel: factors(steel), breakingWithStrandCore: strandCore, provenance,
});
const factors = ([mass, area, breaking]: readonly [number, number, number]): CoreFactors => ({ mass, area, breaking });

/** Mass W, area C and breaking force K for a fibre core, then for a steel core; last the K of a wire strand core. */
export const CLASS_FACTORS: readonly ClassFactors[] = [
  row('6x7', [0.345, 0.369, 0.332], [0.384, 0.432, 0.359], 0.388),
  row('8x7', [0.327, 0.335, 0.291], [0.391, 0.439, 0.359]),
  row('6x19', [0.359, 0.384, 0.330], [0.400, 0.449, 0.356]),
  row('8x19', [0.340, 0.349, 0.293], [0.407, 0.457, 0.356]),
  row('6x36', [0.367, 0.393, 0.330], [0.409, 0.460, 0.356]),
  row('8x36', [0.348, 0.357, 0.293], [0.417, 0.468, 0.356]),
  row('6x35N', [0.352, 0.377, 0.317], [0.392, 0.441, 0.345]),
  // The two mass factors of the M classes are printed differently in a second table (0.346 and 0.381).
  row('6x19M', [0.344, 0.357, 0.307], [0.372, 0.418, 0.332], 0.362, 'disputed'),
  row('6x37M', [0.334, 0.357, 0.295], [0.372, 0.418, 0.319], 0.346, 'disputed'),
  row('18x7', [0.382, 0.408, 0.328], [0.401, 0.433, 0.328]),
  row('34x7', [0.390, 0.416, 0.318], [0.401, 0.428, 0.318]),
];

/** Classes held only from memory, as the middle of the remembered range. */
export const REMEMBERED_FACTORS: readonly (ClassFactors & { readonly range: string })[] = [
  { name: '35xK7', fibre: null, steel: { mass: 0.55, area: 0.585, breaking: 0.375 }, breakingWithStrandCore: null, provenance: 'memory', range: 'C 0.55 to 0.62, K 0.35 to 0.40' },
  { name: 'spiral strand', fibre: null, steel: { mass: 0.51, area: 0.60, breaking: 0.525 }, breakingWithStrandCore: null, provenance: 'memory', range: 'C about 0.60, K 0.52 to 0.53' },
  { name: 'full-locked coil', fibre: null, steel: { mass: 0.575, area: 0.675, breaking: 0.624 }, breakingWithStrandCore: null, provenance: 'memory', range: 'C 0.64 to 0.71, W 0.55 to 0.60, loss of breaking force 5 to 10 %' },
];

export function classFactors(name: string): ClassFactors | null {
  return CLASS_FACTORS.find((each) => each.name === name) ?? REMEMBERED_FACTORS.find((each) => each.name === name) ?? null;
}

/** Metallic area in mm2 of diameter `d` mm. */
export const metallicArea = (areaFactor: number, d: number): number => areaFactor * d * d;
/** Mass in kg/m. */
export const massPerMetre = (massFactor: number, d: number): number => (massFactor * d * d) / 100;
/** Minimum breaking force in kN of rope grade `grade` N/mm2. */
export const breakingForce = (breakingFactor: number, d: number, grade: number): number => (breakingFactor * d * d * grade) / 1000;
/** Share of the circle of diameter d that is metal: f = 4 C / pi. */
export const fillFactor = (areaFactor: number): number => (4 * areaFactor) / Math.PI;
/** Metallic area in mm2 from the calculated aggregate breaking force in kN: A = 1000 F / R. */
export const areaFromAggregateForce = (aggregateKn: number, grade: number): number => (1000 * aggregateKn) / grade;
/** Share (percent) of the metallic area of one wire of diameter `delta` mm: 100 (delta/d)^2 (pi/4) / C. */
export const wireSharePercent = (delta: number, d: number, areaFactor: number): number => (100 * (delta / d) ** 2 * (Math.PI / 4)) / areaFactor;
