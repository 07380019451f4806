/**
 * Outside source: class factors of EN 12385 as printed in a handbook of wire ropes (table 1.9) and rows of API 9A table C.1
 * for 6x7 ropes with fibre core. [P] published, [M] from memory, [D] derived from a stated formula.
 */
import { describe, expect, it } from 'vitest';
import { windowInMetres } from '../../analysis/criteria/resolve-limit.ts';
import { areaFromAggregateForce, fillFactor, wireSharePercent } from '../../analysis/rope/handbook-factors.ts';
import { geometryOf } from '../criteria/rope-for-tests.ts';

/** W1 C1 K1 (fibre core), W2 C2 K2 (steel core), K3 (wire strand core) [P; the cells marked (!) differ in a second table]. */
const FACTORS: [string, number, number, number, number, number, number, number | null][] = [
  ['6x7', 0.345, 0.369, 0.332, 0.384, 0.432, 0.359, 0.388],
  ['8x7', 0.327, 0.335, 0.291, 0.391, 0.439, 0.359, null],
  ['6x19S', 0.359, 0.384, 0.330, 0.400, 0.449, 0.356, null],
  ['6x19W', 0.359, 0.384, 0.330, 0.400, 0.449, 0.356, null],
  ['6x25F', 0.359, 0.384, 0.330, 0.400, 0.449, 0.356, null],
  ['8x19S', 0.340, 0.349, 0.293, 0.407, 0.457, 0.356, null],
  ['6x36WS', 0.367, 0.393, 0.330, 0.409, 0.460, 0.356, null],
  ['8x36WS', 0.348, 0.357, 0.293, 0.417, 0.468, 0.356, null],
  ['6x35N', 0.352, 0.377, 0.317, 0.392, 0.441, 0.345, null],
  ['6x19M', 0.344, 0.357, 0.307, 0.372, 0.418, 0.332, 0.362], // W (!) 0.346, 0.381
  ['6x37M', 0.334, 0.357, 0.295, 0.372, 0.418, 0.319, 0.346], // W (!) 0.346, 0.381
  ['18x7', 0.382, 0.408, 0.328, 0.401, 0.433, 0.328, null],
  ['34x7', 0.390, 0.416, 0.318, 0.401, 0.428, 0.318, null],
];

const rope = (construction: string, diameter_mm: number, grade_mpa: number) => geometryOf({ construction, diameter_mm, grade_mpa });

describe('class factors of EN 12385 [P]', () => {
  // With d = 100 mm and R = 1000 N/mm2: A = 10 000 C, m = 100 W, F = 10 000 K.
  it.each(FACTORS)('%s', (construction, w1, c1, k1, w2, c2, k2, k3) => {
    for (const [core, w, c, k] of [['FC', w1, c1, k1], ['IWRC', w2, c2, k2]] as const) {
      const { metallicAreaMm2, massKgPerM, minimumBreakingForceKn } = rope(`${construction}-${core}`, 100, 1000);
      expect(metallicAreaMm2).toBeCloseTo(1e4 * c, 6);
      expect(massKgPerM).toBeCloseTo(100 * w, 8);
      expect(minimumBreakingForceKn).toBeCloseTo(1e4 * k, 6);
    }
    if (k3 !== null) expect(rope(`${construction}-WSC`, 100, 1000).minimumBreakingForceKn).toBeCloseTo(1e4 * k3, 6);
  });
});

/** Diameter mm: mass kg/100 m, force kN at 1770 and at 1960 N/mm2; three significant figures as printed [P]. */
const API_9A: [number, number, number, number][] = [
  [10, 34.5, 58.8, 65.1], [12, 49.7, 84.6, 93.7], [22, 167, 284, 315], [26, 233, 397, 440], [28, 270, 461, 510],
  [32, 353, 602, 666], [36, 447, 762, 843], [38, 498, 849, 940],
];
const threeFigures = (value: number) => Number(value.toPrecision(3));

describe('API 9A table C.1, 6x7 with fibre core [P]', () => {
  it.each(API_9A)('d %i mm', (d, mass, at1770, at1960) => {
    expect(threeFigures(100 * rope('6x7-FC', d, 1770).massKgPerM!)).toBe(mass);
    expect(threeFigures(rope('6x7-FC', d, 1770).minimumBreakingForceKn!)).toBe(at1770);
    expect(threeFigures(rope('6x7-FC', d, 1960).minimumBreakingForceKn!)).toBe(at1960);
  });
  it.each([[16, 1770, 88.3, 150], [20, 1770, 138, 235], [24, 1960, 199, 375], [40, 1770, 552, 940], [40, 1960, 552, 1040]])('d %i mm at %i', (d, grade, mass, force) => {
    const found = rope('6x7-FC', d, grade);
    expect(threeFigures(100 * found.massKgPerM!)).toBe(mass);
    expect(threeFigures(found.minimumBreakingForceKn!)).toBe(force);
  });
});

/** Area mm2, mass kg/m, minimum breaking force kN [D from the factors above]. */
const WORKED: [string, number, number, number, number, number][] = [
  ['6x7-FC', 16, 1770, 94.5, 0.883, 150.4], ['6x7-FC', 20, 1770, 147.6, 1.380, 235.1], ['6x7-FC', 24, 1960, 212.5, 1.987, 374.8],
  ['6x7-FC', 40, 1770, 590.4, 5.520, 940.2], ['6x7-FC', 40, 1960, 590.4, 5.520, 1041.2], ['6x19S-FC', 20, 1770, 153.6, 1.436, 233.6],
  ['6x36WS-IWRC', 20, 1770, 184.0, 1.636, 252.0], ['6x36WS-IWRC', 24, 1960, 265.0, 2.356, 401.9], ['6x19S-IWRC', 32, 1770, 459.8, 4.096, 645.2],
  ['8x36WS-IWRC', 22, 1770, 226.5, 2.018, 305.0], ['18x7-FC', 16, 1960, 104.4, 0.978, 164.6], ['34x7-WSC', 20, 1960, 171.2, 1.604, 249.3],
];

describe('worked examples [D]', () => {
  it.each(WORKED)('%s d %i grade %i', (construction, d, grade, area, mass, force) => {
    const found = rope(construction, d, grade);
    expect(Math.abs(found.metallicAreaMm2! - area)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(Math.abs(found.massKgPerM! - mass)).toBeLessThanOrEqual(0.0005 + 1e-9);
    expect(Math.abs(found.minimumBreakingForceKn! - force)).toBeLessThanOrEqual(0.055);
  });

  it('gives the breaking force that a published fracture example uses: 6x19 fibre core, 32 mm, 1960, 662.3 kN', () => {
    expect(rope('6x19S-FC', 32, 1960).minimumBreakingForceKn).toBeCloseTo(662.3, 1);
  });

  it('reads a locked coil of 72 mm and 6772 kN at an assumed 1960: A 3455, C 0.666, f 0.849', () => {
    const area = areaFromAggregateForce(6772, 1960);
    expect(area).toBeCloseTo(3455.1, 1);
    const factor = area / 72 ** 2;
    expect(factor).toBeCloseTo(0.666, 3);
    expect(fillFactor(factor)).toBeCloseTo(0.849, 3);
  });

  it.each([[0.369, 0.470], [0.384, 0.489], [0.393, 0.500], [0.449, 0.572], [0.460, 0.586], [0.468, 0.596], [0.408, 0.520], [0.428, 0.545]])('fill factor of C %f is %f', (area, fill) => {
    expect(Math.abs(fillFactor(area) - fill)).toBeLessThanOrEqual(0.0006);
  });

  it('gives the share of one wire: 2.0 mm in 20 mm 6x36 IWRC 1.71 %, 2.5 mm in 40 mm 6x19 FC 0.80 %', () => {
    expect(wireSharePercent(2, 20, 0.460)).toBeCloseTo(1.71, 2);
    expect(wireSharePercent(2.5, 40, 0.384)).toBeCloseTo(0.80, 2);
  });

  it('spaces the strands of d 40, lay 260 mm, six strands 43.33 mm apart', () => {
    const found = geometryOf({ construction: '6x19S-FC', diameter_mm: 40, lay_length_mm: 260 });
    expect(found.layLengthMm! / found.strands!).toBeCloseTo(43.33, 2);
  });

  it.each([[6, 'd', 0.192], [30, 'd', 0.96], [40, 'd', 1.28], [200, 'd', 6.4], [500, 'd', 16]] as const)('window of %i%s at d 32 is %f m', (length, unit, metres) => {
    expect(windowInMetres({ length, unit }, { diameterMm: 32, layLengthMm: null })).toBeCloseTo(metres, 12);
  });
});

/** Load-bearing wires of one strand and outer wires of one strand, fillers apart [D/M]. */
const STRANDS: [string, number, number][] = [['7', 7, 6], ['19S', 19, 9], ['19W', 19, 12], ['25F', 19, 12], ['26WS', 26, 10], ['31WS', 31, 12], ['36WS', 36, 14], ['41WS', 41, 16]];

describe('wire counts', () => {
  it.each(STRANDS)('strand %s', (strand, wires, outer) => {
    const six = geometryOf({ construction: `6x${strand}-FC`, diameter_mm: 20 });
    expect(six.wiresPerStrand).toBe(wires);
    expect(six.wires).toBe(6 * wires);
    expect(six.outerWires).toBe(6 * outer);
    expect(geometryOf({ construction: `8x${strand}-IWRC` }).outerStrandWires).toBe(8 * wires);
  });
  it.each([['6x7', 42], ['6x19S', 114], ['6x25F', 114], ['6x26WS', 156], ['6x31WS', 186], ['6x36WS', 216], ['6x41WS', 246], ['8x19S', 152], ['8x25F', 152], ['8x26WS', 208], ['8x36WS', 288], ['18x7', 126], ['35x7', 245]])('%s holds %i', (construction, total) => {
    expect(geometryOf({ construction }).wires).toBe(total);
  });
  it('reads 6x19 = 114 and 6x37 = 222 as a crane rule prints them [P]', () => {
    expect(geometryOf({ construction: '6x19' }).wires).toBe(114);
    expect(geometryOf({ construction: '6x37' }).wires).toBe(222);
  });
});
