import { describe, expect, it } from 'vitest';
import { fitPulse } from '../../analysis/condition/fit-pulse.ts';
import { BANK_SHAPES, HALVING, halfKernels, mirrored, unthinned } from '../../analysis/condition/pulse-bank.ts';
import { AXIAL_WIDTH, isOdd, PULSE_SHAPES, pulseAt, pulseOf, widthOf } from '../../analysis/condition/pulse-shapes.ts';
import type { PulseShape } from '../../analysis/condition/pulse-shapes.ts';
import { solveToeplitz } from '../../analysis/signal/solve-toeplitz.ts';
import { labRandom } from '../support/lab-random.ts';

/**
 * Field of a broken wire as two poles of opposite charge at the ends of its gap (magnetostatics; the dipole family of
 * Zatsepin and Shcherbinin 1966), written out here from the formula: distances in metres, amplitude free.
 */
const axialField = (x: number, gap: number, r: number): number => (x + gap / 2) / ((x + gap / 2) ** 2 + r * r) ** 1.5 - (x - gap / 2) / ((x - gap / 2) ** 2 + r * r) ** 1.5;
const radialField = (x: number, gap: number, r: number): number => r / ((x + gap / 2) ** 2 + r * r) ** 1.5 - r / ((x - gap / 2) ** 2 + r * r) ** 1.5;

describe('forms that the pulse bank seeks, over u = x / r for a sensor r away', () => {
  const r = 0.02;
  const width = AXIAL_WIDTH * r;
  const axial = (u: number) => pulseAt('axial', u * r, width);
  const radial = (u: number) => pulseAt('radial', u * r, width);

  it('axial: (1 - 2 u^2) / (1 + u^2)^2.5, half height at 0.384 r, so 0.768 r wide', () => {
    expect(2 * bisect((u) => axial(u) - 0.5, 0, 0.7)).toBeCloseTo(0.768, 3);
    expect(widthOf('axial', width) / r).toBeCloseTo(0.768, 3);
  });
  it('axial: zero at u = 0.7071, lobes of -0.2024 at u = 1.2247', () => {
    expect(bisect(axial, 0.5, 1)).toBeCloseTo(0.7071, 4);
    expect(axial(1.2247)).toBeCloseTo(-0.2024, 4);
    expect(axial(1.2247)).toBeLessThan(Math.min(axial(1.2), axial(1.25)));
  });
  it('radial: zero over the gap, extremes at u = 0.5 either way, so r from peak to peak', () => {
    expect(radial(0)).toBe(0);
    expect(radial(0.5)).toBeCloseTo(1, 9);
    expect(radial(-0.5)).toBeCloseTo(-1, 9);
    expect(radial(0.5)).toBeGreaterThan(Math.max(radial(0.49), radial(0.51)));
    // In units of the axial peak the extreme is 0.859: 3 u / (1 + u^2)^2.5.
    expect((3 * 0.5) / 1.25 ** 2.5).toBeCloseTo(0.859, 3);
  });
  it('every form is even or odd, peaks at 1, and its table follows it within 1e-4', () => {
    for (const shape of PULSE_SHAPES) {
      let peak = 0;
      for (let x = -0.1; x <= 0.1; x += 0.00037) {
        const value = pulseAt(shape, x, width);
        expect(pulseAt(shape, -x, width)).toBeCloseTo(isOdd(shape) ? -value : value, 12);
        expect(Math.abs(pulseOf(shape, width)(x) - (Math.abs(x) < 6 * width ? value : 0))).toBeLessThan(1e-4);
        peak = Math.max(peak, Math.abs(value));
      }
      expect(peak).toBeGreaterThan(0.999);
      expect(peak).toBeLessThanOrEqual(1 + 1e-9);
    }
  });
  it('the width stated for each form is that of its main peak at half height', () => {
    for (const shape of PULSE_SHAPES) {
      const at = (x: number) => pulseAt(shape, x, width);
      let top = 0;
      for (let x = 0; x < 0.05; x += 1e-5) if (at(x) > at(top)) top = x;
      const outer = bisect((x) => at(x) - 0.5, top, top + width);
      const inner = isOdd(shape) ? bisect((x) => at(x) - 0.5, 0, top) : -outer;
      expect((outer - inner) / widthOf(shape, width)).toBeCloseTo(1, 2);
    }
  });
});

describe('two poles fitted by the analysis', () => {
  const step = 0.002;
  const sampled = (field: (x: number, gap: number, r: number) => number, gap: number, r: number, at: number) => {
    const values = Float64Array.from({ length: 301 }, (_, i) => field(i * step - at, gap, r));
    const peak = values.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
    return values.map((each) => each / peak);
  };
  const even = { bell: 0, axial: 0, hat: 0, radial: 0, slope: 0, coil: 0 };

  it.each([[0.015, 0.01, 0.0003], [0.02, 0.016, 0.0077], [0.03, 0.0256, -0.0004]])('a small gap read axially %f m away, first guess %f m wide: its place, 0.768 r wide, height 1', (r, guess, shift) => {
    const fit = fitPulse(sampled(axialField, 0.0005, r, 0.3 + shift), step, 0.3 + shift + 0.001, guess, 0.064, even)!;
    expect(fit.shape).toBe('axial');
    expect(Math.abs(fit.at - (0.3 + shift))).toBeLessThan(0.0005);
    expect(Math.abs(fit.amplitude - 1)).toBeLessThan(0.05);
    // Widths are tried an eighth apart.
    expect(Math.abs(Math.log(widthOf('axial', fit.width) / (0.768 * r)))).toBeLessThan(Math.log(1.13) / 2 + 0.02);
  });
  it('read radially: a pair, its place over the gap', () => {
    const fit = fitPulse(sampled(radialField, 0.0005, 0.02, 0.3021), step, 0.303, 0.016, 0.064, even)!;
    expect(fit.shape).toBe('radial');
    expect(Math.abs(fit.at - 0.3021)).toBeLessThan(0.0005);
    expect(Math.abs(fit.amplitude)).toBeCloseTo(1, 1);
  });
  it('a coil reads the derivative of the axial field: a pair of opposite peaks, its middle the break', () => {
    const coil = (x: number, gap: number, r: number) => axialField(x + 1e-5, gap, r) - axialField(x - 1e-5, gap, r);
    const fit = fitPulse(sampled(coil, 0.0005, 0.02, 0.2987), step, 0.3, 0.016, 0.064, even)!;
    expect(fit.shape).toBe('coil');
    expect(Math.abs(fit.at - 0.2987)).toBeLessThan(0.0005);
    expect(Math.abs(fit.amplitude)).toBeCloseTo(1, 1);
    expect(Math.abs(Math.log(fit.width / (AXIAL_WIDTH * 0.02)))).toBeLessThan(Math.log(1.13) / 2);
  });
  it.each([0.01, 0.02, 0.05])('filters of the bank %d m wide answer 1 to their own pulse, on samples and between, whatever the noise', (width) => {
    for (const noise of [white, wandering, firstOrder]) {
      for (const phase of [0, 0.5] as const) {
        const kernels = halfKernels(width, step, 1, phase, noise);
        for (const shape of BANK_SHAPES) expect(answerOf(step, kernels[shape], shape, phase, (x) => pulseAt(shape, x, width))).toBeCloseTo(1, 9);
      }
    }
  });
  it('in white noise they are the pulse itself, where all noise is common they do not answer a constant', () => {
    const half = halfKernels(0.02, step, 1, 0, white).bell;
    half.forEach((weight, k) => expect(weight / half[0]).toBeCloseTo(pulseAt('bell', k * step, 0.02), 9));
    expect(answerOf(step, half, 'bell', 0, () => 1)).toBeGreaterThan(1);
    expect(answerOf(step, halfKernels(0.02, step, 1, 0, wandering).bell, 'bell', 0, () => 1)).toBeCloseTo(0, 2);
  });
  it('their variance is the least that any estimate can have: 1 over s\' C^-1 s (generalised least squares, Aitken 1935, from memory)', () => {
    for (const shape of BANK_SHAPES) {
      const own = mirrored(halfKernels(0.02, step, 1, 0, firstOrder)[shape], isOdd(shape), 0);
      const other = mirrored(halfKernels(0.02, step, 1, 0, white)[shape], isOdd(shape), 0);
      const variance = (kernel: Float64Array) => kernel.reduce((sum, a, i) => sum + kernel.reduce((inner, b, j) => inner + a * b * firstOrder[Math.abs(i - j)], 0), 0);
      expect(variance(own)).toBeLessThan(variance(other));
      const pulse = own.map((_, i) => pulseAt(shape, (i - (own.length >> 1)) * step, 0.02));
      const least = 1 / solveToeplitz(firstOrder, pulse)!.reduce((sum, value, i) => sum + value * pulse[i], 0);
      expect(variance(own) / least).toBeCloseTo(1, 1);
      expect(variance(own)).toBeGreaterThanOrEqual(least * (1 - 1e-9));
    }
  });
  it('a filter of halved samples gives the same on the samples as recorded', () => {
    const random = labRandom(3);
    const recorded = Float64Array.from({ length: 401 }, () => random.normal());
    const halved = (values: Float64Array) => Float64Array.from({ length: (values.length + 1) >> 1 }, (_, k) => HALVING.reduce((sum, weight, j) => sum + weight * (values[2 * k + j - 2] ?? 0), 0));
    const kernel = mirrored(halfKernels(0.05, step, 4, 0, white).hat, false, 0);
    const at = (values: Float64Array, weights: Float64Array, centre: number) => weights.reduce((sum, weight, k) => sum + weight * values[centre + k - (weights.length >> 1)], 0);
    expect(at(halved(halved(recorded)), kernel, 50)).toBeCloseTo(at(recorded, unthinned(unthinned(kernel)), 200), 12);
  });
});

/** Autocovariances by lag: of white noise, of a level that wanders as a whole beside it, of a first-order process. */
const white = Float64Array.from({ length: 120 }, (_, lag) => (lag === 0 ? 1 : 0));
const wandering = white.map((value) => value + 1e4);
const firstOrder = white.map((_, lag) => 0.8 ** lag);

function answerOf(step: number, half: Float64Array, shape: PulseShape, phase: 0 | 0.5, value: (x: number) => number): number {
  const whole = mirrored(half, isOdd(shape), phase);
  return whole.reduce((sum, weight, i) => sum + weight * value((i - (whole.length - 1) / 2) * step), 0);
}

function bisect(value: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const rising = value(high) > value(low);
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (value(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
