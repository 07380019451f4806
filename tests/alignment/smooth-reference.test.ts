import { describe, expect, it } from 'vitest';
import { smoothReference } from '../../analysis/alignment/smooth-reference.ts';
import type { Laid } from '../../analysis/alignment/texture-bands.ts';
import { labRandom } from '../support/lab-random.ts';

const laid = (values: Float64Array): Laid => ({ values, seen: new Uint8Array(values.length).fill(1) });

/** Texture whose bins follow each other with correlation `follow` (autoregressive of first order), unit power, and two scans of it with noise of their own. */
function twoScans(count: number, follow: number, noise: number, seed: number): { texture: Float64Array; scan: Laid; reference: Laid } {
  const { normal } = labRandom(seed);
  const texture = new Float64Array(count);
  for (let i = 0; i < count; i += 1) texture[i] = (i === 0 ? 0 : follow * texture[i - 1]) + Math.sqrt(1 - follow * follow) * normal();
  const heard = () => laid(texture.map((value) => value + noise * normal()));
  return { texture, scan: heard(), reference: heard() };
}

/** Solves a x = b by elimination, the slow and obvious way. */
function solved(a: number[][], b: number[]): number[] {
  const rows = a.map((row, i) => [...row, b[i]]);
  rows.forEach((row, i) => {
    for (let below = i + 1; below < rows.length; below += 1) {
      const factor = rows[below][i] / row[i];
      for (let k = i; k < rows[below].length; k += 1) rows[below][k] -= factor * row[k];
    }
  });
  const x = new Array<number>(rows.length).fill(0);
  for (let i = rows.length - 1; i >= 0; i -= 1) x[i] = (rows[i][rows.length] - x.reduce((sum, value, k) => sum + (k > i ? rows[i][k] * value : 0), 0)) / rows[i][i];
  return x;
}

const meanSquare = (values: ArrayLike<number>): number => Array.from(values).reduce((sum, value) => sum + value * value, 0) / values.length;

describe('a reference without the noise that does not repeat (Wiener 1949: normal equations of the known covariances)', () => {
  it.each([[0.8, 0.5], [0.8, 1], [0.9, 2], [0, 1]])('texture that follows itself by %f in noise of %f is expected as well as theory allows', (follow, noise) => {
    const count = 60_000;
    const { texture, scan, reference } = twoScans(count, follow, noise, 11);
    const places = Float64Array.from({ length: count }, (_, i) => i);
    const smooth = smoothReference(scan, reference, places, false, false)!;
    const lags = Array.from({ length: 9 }, (_, k) => k - 4);
    const covariance = lags.map((a) => lags.map((b) => follow ** Math.abs(a - b) + (a === b ? noise * noise : 0)));
    const shared = lags.map((a) => follow ** Math.abs(a));
    const filter = solved(covariance, shared);
    const least = 1 - filter.reduce((sum, weight, k) => sum + weight * shared[k], 0);
    const inside = (values: Float64Array) => values.subarray(10, count - 10);
    const error = meanSquare(inside(texture.map((value, i) => value - smooth.values[i])));
    expect(error).toBeGreaterThan(0.95 * least);
    expect(error).toBeLessThan(1.05 * least);
    expect(error).toBeLessThan(meanSquare(inside(texture.map((value, i) => value - reference.values[i]))));
  });

  it('two scans that share nothing make none, but for once in hundreds', () => {
    const places = Float64Array.from({ length: 3000 }, (_, i) => i);
    let made = 0;
    for (let seed = 1; seed <= 300; seed += 1) if (smoothReference(twoScans(3000, 0, 0.5, seed).scan, twoScans(3000, 0.8, 0.5, seed + 1000).reference, places, false, false) !== null) made += 1;
    // Chi-square of five degrees of freedom passes 20 once in 800 times (Abramowitz and Stegun 26.8): more than 3 of 300 is no chance.
    expect(made).toBeLessThanOrEqual(3);
  });

  it('laid half a bin off it sharpens nothing: what lies between bins was smoothed by laying it there', () => {
    const { texture: rough } = twoScans(40_000, 0.9, 0, 9);
    const texture = rough.map((_, i) => (rough[i] + (rough[i + 1] ?? 0) + (rough[i + 2] ?? 0) + (rough[i + 3] ?? 0)) / 4);
    const [reference, scan] = [0, 1].map((first) => laid(Float64Array.from({ length: 20_000 }, (_, i) => texture[2 * i + first])));
    const smooth = smoothReference(scan, reference, Float64Array.from({ length: 20_000 }, (_, i) => i + 0.5), false, false)!;
    expect(meanSquare(smooth.values.subarray(10, 19_990))).toBeLessThan(1.001 * meanSquare(reference.values.subarray(10, 19_990)));
  });

  it('texture of the opposite sign is none of a channel that keeps its sign', () => {
    const places = Float64Array.from({ length: 5000 }, (_, i) => i);
    const { scan, reference } = twoScans(5000, 0.8, 0.5, 3);
    const turned = laid(scan.values.map((value) => -value));
    expect(smoothReference(turned, reference, places, false, false)).toBeNull();
    expect(smoothReference(turned, reference, places, false, true)!.values[2500]).toBeCloseTo(-smoothReference(scan, reference, places, false, false)!.values[2500], 12);
  });

  it('a loop runs on over its seam, and what was not seen stays unseen', () => {
    const count = 8000;
    const { scan, reference } = twoScans(count, 0.8, 0.5, 5);
    const places = Float64Array.from({ length: count }, (_, i) => i);
    const turned = (values: Float64Array, by: number) => Float64Array.from(values, (_, i) => values[(i + by) % count]);
    const whole = smoothReference(scan, reference, places, true, false)!;
    const moved = smoothReference(laid(turned(scan.values, 3)), laid(turned(reference.values, 3)), places, true, false)!;
    for (const i of [0, 1, 2, 4000, count - 2, count - 1]) expect(moved.values[i]).toBeCloseTo(whole.values[(i + 3) % count], 3);
    const holed = { ...reference, seen: reference.seen.map((seen, i) => (i < 100 ? 0 : seen)) };
    expect(smoothReference(scan, holed, places, false, false)!.seen.subarray(0, 101)).toEqual(holed.seen.subarray(0, 101));
  });
});
