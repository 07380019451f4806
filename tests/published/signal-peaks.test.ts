import { describe, expect, it } from 'vitest';
import { findPeaks } from '../../analysis/signal/find-peaks.ts';
import { readSeries } from '../support/published-data.ts';
import reference from './data/signals/signal_reference.json';

/** Peaks of recorded signals against scipy.signal.find_peaks; data and versions in data/signals/SOURCES.md. */
const signals: Record<string, Float64Array> = {
  ecg: readSeries('signals/ecg_mitbih208_17000_18000.csv'), 'long ecg': readSeries('signals/ecg_mitbih208_10s.csv'),
  sunspots: readSeries('signals/sunspots_monthly.csv'), well: readSeries('changepoint/well_log_4050.csv'),
};

describe(`find_peaks of scipy ${reference.versions.scipy}`, () => {
  it.each(reference.find_peaks)('$signal, prominence $prominence, width $width: places exact, prominences, widths and their heights to 1e-9', (wanted) => {
    const peaks = findPeaks(signals[wanted.signal], wanted.prominence, wanted.width);
    expect(peaks.map((peak) => peak.index)).toEqual(wanted.index);
    peaks.forEach((peak, i) => {
      expect(Math.abs(peak.prominence - wanted.prominences[i])).toBeLessThanOrEqual(1e-9 * Math.max(1, wanted.prominences[i]));
      expect(Math.abs(peak.width - wanted.widths[i])).toBeLessThanOrEqual(1e-9 * Math.max(1, wanted.widths[i]));
      expect(Math.abs(peak.height - wanted.heights[i])).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted.heights[i])));
    });
  });

  it('the example printed in its documentation: prominences 1.495 and 2.3, widths 36.93773946 and 39.32723577', () => {
    const peaks = findPeaks(signals.ecg, 1, 20);
    const { prominences, widths } = reference.find_peaks_documented;
    expect(peaks.map((peak) => peak.prominence)).toEqual(prominences.map((value) => expect.closeTo(value, 10)));
    expect(peaks.map((peak) => peak.width)).toEqual(widths.map((value) => expect.closeTo(value, 8)));
  });
});
