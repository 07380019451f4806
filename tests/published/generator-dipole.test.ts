import { describe, expect, test } from 'vitest';
import { axialField, poleStrengthOf, radialField } from '../../sample-signals/signal/dipole.ts';
import { strandPhase } from '../../sample-signals/signal/permanent-texture.ts';
import { randomFrom } from '../../sample-signals/signal/random.ts';
import { averaged, emptyGrid } from '../../sample-signals/signal/rope-grid.ts';
import { zoneShare } from '../../sample-signals/signal/rope-plan.ts';

/**
 * Values of a finite dipole of two poles, from magnetostatics: saturation polarisation 1.8 T, wire of 2 mm; millitesla.
 * Worked out by hand from the published charge model of leakage fields; the generator must show the same shapes.
 */
const poleStrength = poleStrengthOf(1.8, 0.002);
const milli = 1000;

describe('pulse of a broken wire', () => {
  test.each([[1, 0.1331], [2, 0.2649], [5, 0.6398], [10, 1.1384], [20, 1.5361], [30, 1.4142]])('15 mm away, gap %f mm: peak %f mT', (gap, peak) => {
    expect(milli * axialField(0, { gap: gap / 1000, distance: 0.015, poleStrength })).toBeCloseTo(peak, 4);
  });

  test.each([[8, 3.821, 3], [10, 2.054, 3], [20, 0.2748, 4], [30, 0.0825, 4]])('gap 5 mm, %f mm away: peak %f mT', (distance, peak, digits) => {
    expect(milli * axialField(0, { gap: 0.005, distance: distance / 1000, poleStrength })).toBeCloseTo(peak, digits);
  });

  test('the strongest peak comes at a gap of root two times the distance', () => {
    const peak = (gap: number) => axialField(0, { gap, distance: 0.015, poleStrength });
    const gaps = Array.from({ length: 4000 }, (_, i) => 0.01 + i * 5e-6);
    const best = gaps.reduce((a, b) => (peak(b) > peak(a) ? b : a));
    expect(1000 * best).toBeCloseTo(21.2, 1);
  });

  test('a small gap gives the published shape: width, lobes and extremes in units of the distance', () => {
    const small = { gap: 1e-6, distance: 1, poleStrength };
    const top = axialField(0, small);
    const at = (u: number) => axialField(u, small) / top;
    expect(at(0.7679 / 2)).toBeCloseTo(0.5, 4);
    expect(at(Math.SQRT1_2)).toBeCloseTo(0, 6);
    expect(at(1.2247)).toBeCloseTo(-0.2024, 4);
    expect(at(1.2247)).toBeLessThan(Math.min(at(1.2), at(1.25)));
    const across = (u: number) => radialField(u, small) / top;
    expect(across(0)).toBeCloseTo(0, 9);
    expect(Math.abs(across(0.5))).toBeCloseTo(0.8587, 4);
    expect(across(-0.5)).toBeCloseTo(-across(0.5), 9);
    expect(Math.abs(across(0.5))).toBeGreaterThan(Math.max(Math.abs(across(0.48)), Math.abs(across(0.52))));
  });
});

describe('LMA as the mean over an averaging length of 300 mm', () => {
  const shown = (loss: number, width: number) => {
    const grid = emptyGrid(6, 0.001);
    for (let i = 0; i < grid.values.length; i += 1) if (Math.abs(i * 0.001 - 3) < width / 2) grid.values[i] = loss;
    return Math.max(...averaged(grid, 0.3, false).values);
  };
  test('10 % over 100 mm shows 3.33 %', () => expect(shown(10, 0.1)).toBeCloseTo(3.33, 1));
  test('10 % over 300 mm and more shows 10 %', () => {
    expect(shown(10, 0.302)).toBeCloseTo(10, 6);
    expect(shown(10, 1)).toBeCloseTo(10, 6);
  });
  test('one wire of 1.71 % with a gap of 5 mm shows 0.0285 %', () => expect(shown(1.71, 0.005)).toBeCloseTo(0.0285, 4));

  test('a step of loss is shown as a ramp as long as the averaging length', () => {
    const grid = emptyGrid(6, 0.001);
    for (let i = 3000; i < grid.values.length; i += 1) grid.values[i] = 10;
    const ramp = averaged(grid, 0.3, false).values;
    expect(ramp[2845]).toBe(0);
    expect(ramp[3000]).toBeCloseTo(5, 1);
    expect(ramp[2925]).toBeCloseTo(2.5, 1);
    expect(ramp[3155]).toBeCloseTo(10, 6);
  });

  test('a window that is no whole number of samples keeps the sum of the loss', () => {
    const grid = emptyGrid(4, 0.007);
    for (let i = 200; i < 260; i += 1) grid.values[i] = 5;
    const before = grid.values.reduce((sum, value) => sum + value, 0);
    for (const loop of [false, true]) expect(averaged(grid, 0.25, loop).values.reduce((sum, value) => sum + value, 0)).toBeCloseTo(before, 6);
  });
});

test('the strand pattern of six strands with a lay of 260 mm repeats every 43.33 mm on the whole rope', () => {
  const phase = strandPhase(randomFrom('strand check'), 300, 0.005, 0.26 / 6).values;
  const turns = (phase[phase.length - 1] - phase[0]) / (2 * Math.PI);
  expect((1000 * 0.005 * (phase.length - 1)) / turns).toBeCloseTo(43.33, 0);
});

test('edges of a zone rise from nothing at its ends to the full depth inside', () => {
  const zone = { from: 10, to: 20, edge: 2 };
  expect([9.99, 10, 11, 12, 15, 19, 20].map((at) => zoneShare(zone, at))).toEqual([0, 0, expect.closeTo(0.5, 9), 1, 1, expect.closeTo(0.5, 9), 0]);
});
