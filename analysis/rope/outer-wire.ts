/**
 * Nominal size of wires from the make alone [derived]: circles that touch their neighbours.
 * The lay angle and the play that makers leave between wires make real wires a few percent thinner.
 */

/** Diameter of each of `count` equal circles laid side by side inside a circle of diameter `outside`: D / (1 + 1 / sin(pi / count)). */
export function touchingCircle(outside: number, count: number): number {
  return count < 3 ? outside / count : outside / (1 + 1 / Math.sin(Math.PI / count));
}

/** Nominal outer wire diameter (mm) of a rope of `strands` equal outer strands with `outerWiresPerStrand` outer wires each. */
export function nominalOuterWire(ropeDiameter: number, strands: number, outerWiresPerStrand: number): number {
  return touchingCircle(strands === 1 ? ropeDiameter : touchingCircle(ropeDiameter, strands), outerWiresPerStrand);
}

/** Width (mm) of each of `count` outer shaped wires of a locked coil, taken as square: w = pi d / (count + pi). */
export function nominalShapedWire(ropeDiameter: number, count: number): number {
  return (Math.PI * ropeDiameter) / (count + Math.PI);
}
