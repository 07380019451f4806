import { describe, expect, it } from 'vitest';
import { complexSignal, complexSpectrum, realSpectrum } from '../../analysis/signal/fft.ts';
import { fillGaps } from '../../analysis/signal/fill-gaps.ts';
import { medianAbsoluteDeviation, NORMAL_MAD } from '../../analysis/signal/mad.ts';
import { median } from '../../analysis/signal/median.ts';
import { quantile } from '../../analysis/signal/quantile.ts';
import { savitzkyGolay, weightsAt } from '../../analysis/signal/savitzky-golay.ts';
import { seekLine } from '../../analysis/signal/seek-line.ts';
import { slidingMean } from '../../analysis/signal/sliding-mean.ts';
import { slidingMedian } from '../../analysis/signal/sliding-median.ts';
import { solveToeplitz } from '../../analysis/signal/solve-toeplitz.ts';
import { readSeries } from '../support/published-data.ts';
import reference from './data/signals/signal_reference.json';
import toeplitz from './data/signals/toeplitz_reference.json';

/** Recorded signals (an electrocardiogram, sunspots, a well log) against scipy, numpy and pandas: data/signals/SOURCES.md. */
const ecg = readSeries('signals/ecg_mitbih208_17000_18000.csv');
const longEcg = readSeries('signals/ecg_mitbih208_10s.csv');
const sunspots = readSeries('signals/sunspots_monthly.csv');
const signals: Record<string, Float64Array> = { ecg, 'long ecg': longEcg, sunspots, well: readSeries('changepoint/well_log_4050.csv') };
const { scipy, numpy, pandas } = reference.versions;
const whole = new Uint8Array(ecg.length).fill(1);
const gapped = whole.slice();
for (const i of reference.gaps) gapped[i] = 0;
const spoilt = ecg.map((value, i) => (gapped[i] === 1 ? value : 1e6));

function expectNear(found: ArrayLike<number>, wanted: readonly number[], tolerance: number): void {
  expect(found.length).toBe(wanted.length);
  let worst = 0;
  wanted.forEach((value, i) => { worst = Math.max(worst, Math.abs(found[i] - value)); });
  expect(worst).toBeLessThanOrEqual(tolerance);
}

describe(`Savitzky-Golay smoothing against scipy.signal.savgol_filter ${scipy}`, () => {
  it.each(reference.savgol)('window $width, degree $degree on the electrocardiogram', ({ width, degree, y }) => expectNear(savitzkyGolay(ecg, width, degree), y, 1e-10));
  it.each(reference.savgol_coeffs)('weights of window $width, degree $degree', ({ width, degree, c }) => expectNear(weightsAt(0, (width - 1) / 2, degree), c, 1e-14));
  it('the printed weights of Savitzky and Golay 1964: -3 12 17 12 -3 over 35, and -2 3 6 7 6 3 -2 over 21', () => {
    expectNear(weightsAt(0, 2, 2), [-3, 12, 17, 12, -3].map((each) => each / 35), 1e-15);
    expectNear(weightsAt(0, 3, 2), [-2, 3, 6, 7, 6, 3, -2].map((each) => each / 21), 1e-15);
  });
});

describe('sliding medians and means', () => {
  it.each(reference.medfilt)(`median of $width is scipy.signal.medfilt's ${scipy} where the window is whole (beyond the ends scipy sees zeros)`, ({ width, y }) => {
    const half = (width - 1) / 2;
    expect([...slidingMedian(ecg, whole, width).values.slice(half, -half)]).toEqual(y.slice(half, -half));
  });
  it.each(reference.uniform_filter1d)(`mean of $width is scipy.ndimage.uniform_filter1d's ${scipy} where the window is whole`, ({ width, y }) => {
    const half = (width - 1) / 2;
    expectNear(slidingMean(ecg, whole, width).values.slice(half, -half), y.slice(half, -half), 1e-12);
  });
  it.each(reference.rolling)(`with gaps and at the ends, a window of $width is pandas' ${pandas} Series.rolling(center=True, min_periods=1)`, ({ width, median: medians, mean: means }) => {
    const byMedian = slidingMedian(spoilt, gapped, width);
    const byMean = slidingMean(spoilt, gapped, width);
    medians.forEach((value, i) => {
      expect(byMedian.valid[i]).toBe(value === null ? 0 : 1);
      expect(byMean.valid[i]).toBe(value === null ? 0 : 1);
      if (value === null) return;
      expect(byMedian.values[i]).toBeCloseTo(value, 12);
      expect(byMean.values[i]).toBeCloseTo(means[i]!, 9);
    });
  });
  it(`a gap is bridged for filters as numpy.interp ${numpy} does`, () => expectNear(fillGaps(spoilt, gapped), reference.interp, 1e-12));
});

describe(`robust statistics against numpy ${numpy} and scipy.stats ${scipy}`, () => {
  it.each(reference.robust)('$signal', ({ signal, median: middle, mad, mad_normal: normal, quantiles }) => {
    expect(median(signals[signal])).toBe(middle);
    expect(Math.abs(medianAbsoluteDeviation(signals[signal]) / mad - 1)).toBeLessThan(1e-12);
    expect(Math.abs(medianAbsoluteDeviation(signals[signal], NORMAL_MAD) / normal - 1)).toBeLessThan(1e-12);
    for (const [share, value] of Object.entries(quantiles)) expect(Math.abs(quantile(signals[signal], Number(share)) - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
  });
});

describe('spectra', () => {
  it(`transforms a real signal, zero padded, as numpy.fft.rfft ${numpy}`, () => {
    const spectrum = realSpectrum(ecg, 1024);
    for (const { bin, re, im } of reference.rfft) expectNear(spectrum.slice(2 * bin, 2 * bin + 2), [re, im], 1e-10);
  });
  it(`transforms a complex signal as numpy.fft.fft ${numpy}, and back`, () => {
    const interleaved = Float64Array.from({ length: 1024 }, (_, i) => ecg[(i % 2 === 0 ? 0 : 488) + (i >> 1)]);
    const spectrum = complexSpectrum(interleaved);
    for (const { bin, re, im } of reference.fft) expectNear(spectrum.slice(2 * bin, 2 * bin + 2), [re, im], 1e-10);
    expectNear(complexSignal(spectrum), [...interleaved], 1e-12);
  });
  it(`finds the line of the sunspot cycle where scipy.signal.welch ${scipy} has its summit, within a bin: eleven years`, () => {
    const { size, low, high, peak_frequency: summit } = reference.welch_sunspots;
    const line = seekLine(sunspots, new Uint8Array(sunspots.length).fill(1), size, low, high)!;
    expect(Math.abs(line.frequency - summit)).toBeLessThan(1 / size);
    expect(1 / line.frequency / 12).toBeGreaterThan(10);
    expect(1 / line.frequency / 12).toBeLessThan(11.5);
  });
});

describe(`Toeplitz systems against scipy.linalg.solve_toeplitz ${toeplitz.versions.scipy}`, () => {
  it.each(toeplitz.cases)('$name, $right.length values', ({ column, right, x }) => {
    const size = Math.max(...x.map(Math.abs));
    expectNear(solveToeplitz(column, right)!, x, 1e-8 * size);
  });
  it('one that is not positive definite has no solution here', () => expect(solveToeplitz(toeplitz.indefinite, [1, 1, 1])).toBeNull());
});
