import DynamicTimeWarping from 'dynamic-time-warping';
import { describe, expect, it } from 'vitest';
import { alignPair, readPair, rootMeanSquare } from '../support/recorded-pairs.ts';
import { delayTrial } from '../support/window-delay.ts';

/**
 * Real recordings warped along known straight lines (sources beside the data). The figures asked are what the best plain
 * windowed correlation reached on the same files (root mean square in samples, table beside the generating script's output).
 */
const ASKED = { ecg_snr20: 0.42, ecg_snr20_newdefects: 0.66, well_log_snr20: 0.9 } as const;

describe('maps of real recordings against their true warp', () => {
  it.each(Object.entries(ASKED) as [keyof typeof ASKED, number][])('%s: root mean square error at most %f samples', async (name, asked) => {
    const pair = readPair(name);
    const found = await alignPair(pair);
    const offset = meanOffset(pair.truth);
    const offsetOnly = rootMeanSquare(pair.truth.map((_, i) => i + offset), pair.truth);
    expect(rootMeanSquare(found, pair.truth)).toBeLessThanOrEqual(asked);
    expect(rootMeanSquare(found, pair.truth)).toBeLessThan(offsetOnly);
  });

  it('errs less than plain dynamic time warping (npm dynamic-time-warping 1.0.0) on the same pair', async () => {
    const pair = readPair('ecg_snr20');
    // Every second sample: the library keeps the whole square of costs.
    const [first, second] = [pair.first, pair.second].map((values) => Array.from(values).filter((_, i) => i % 2 === 0));
    const path = new DynamicTimeWarping(first, second, (a: number, b: number) => (a - b) ** 2).getPath();
    const sums = second.map(() => ({ sum: 0, count: 0 }));
    for (const [i, j] of path) {
      sums[j].sum += 2 * i;
      sums[j].count += 1;
    }
    const warped = sums.map(({ sum, count }) => sum / count);
    const truth = Array.from(pair.truth).filter((_, i) => i % 2 === 0);
    expect(rootMeanSquare(await alignPair(pair), pair.truth)).toBeLessThan(rootMeanSquare(warped, truth));
  });
});

function meanOffset(truth: Float64Array): number {
  return truth.reduce((sum, value, i) => sum + value - i, 0) / truth.length;
}

/** Cramer-Rao bound for a delay between two noisy records of one signal (for example Carter 1987, Proc. IEEE 75; from memory). */
describe('the shift of one window against the Cramer-Rao bound', () => {
  const template = readPair('ecg_snr20').first;
  // The recording as it is, its own noise taken as signal, smoothed so that a fraction of a sample means something.
  const smooth = template.map((_, i) => [1, 4, 6, 4, 1].reduce((sum, weight, k) => sum + (weight / 16) * template[Math.max(0, Math.min(template.length - 1, i + k - 2))], 0));

  it('at 30 dB is within 1.2 times the bound and not significantly below it', () => {
    const { rmse, bound, draws } = delayTrial(smooth, 1500, 256, 30, 400, 11);
    expect(rmse / bound).toBeLessThanOrEqual(1.2);
    expect(rmse / bound).toBeGreaterThan(1 - 2.6 / Math.sqrt(2 * draws));
  });

  // The bound is that of a signal of which nothing is known. Where most of the noise lies outside the signal's band, the reference
  // can be freed of its own (smoothReference), and what is left is the noise of the scan alone: less by the root of two at most.
  it.each([128, 256, 512].flatMap((length) => [40, 30, 20, 10].map((decibel) => [length, decibel] as const)))('over %i samples at %i dB is within twice the bound', (length, decibel) => {
    const { rmse, bound, draws, silent } = delayTrial(smooth, 1500, length, decibel, 150, length + decibel);
    expect(rmse / bound).toBeLessThanOrEqual(2);
    expect(rmse / bound).toBeGreaterThan((1 - 2.6 / Math.sqrt(2 * draws)) / Math.SQRT2);
    expect(silent).toBeLessThanOrEqual(0.02 * draws);
  });
});
