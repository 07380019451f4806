import { realSpectrum } from './fft.ts';
import { median } from './median.ts';
import { parabolicOffset } from './parabolic-offset.ts';
import { findPeaks } from './find-peaks.ts';
import { savitzkyGolay } from './savitzky-golay.ts';

/**
 * Frequency (cycles a sample) of the strongest narrow line between `low` and `high`, by averaging the spectra of
 * up to `most` Hann-windowed stretches of `size` samples that hold no masked ones to speak of (at least 90 % valid);
 * and its prominence over the median of the band. Null where no stretch can be used, the band is too narrow or holds no line.
 */
export function seekLine(values: Float64Array, valid: Uint8Array, size: number, low: number, high: number, most = 48): { frequency: number; ratio: number; stretches: number } | null {
  const first = Math.max(1, Math.floor(low * size));
  const last = Math.min(size / 2 - 1, Math.ceil(high * size));
  const possible = Math.floor((values.length - size / 2) / (size / 2));
  if (last - first < 4 || possible < 1) return null;
  const every = Math.max(1, Math.floor(possible / most));
  const power = new Float64Array(last + 2);
  const windowed = new Float64Array(size);
  let stretches = 0;
  for (let k = 0; k < possible; k += every) {
    const from = (k * size) / 2;
    let members = 0;
    for (let i = 0; i < size; i += 1) {
      const good = valid[from + i] === 1;
      windowed[i] = good ? values[from + i] * (1 - Math.cos((2 * Math.PI * (i + 0.5)) / size)) : 0;
      if (good) members += 1;
    }
    if (members < 0.9 * size) continue;
    const spectrum = realSpectrum(windowed, size);
    for (let bin = first - 1; bin <= last + 1; bin += 1) power[bin] += spectrum[2 * bin] ** 2 + spectrum[2 * bin + 1] ** 2;
    stretches += 1;
  }
  if (stretches === 0) return null;
  const line = strongestLine(power.subarray(first - 1, last + 2));
  return line && { frequency: (first - 1 + line.bin) / size, ratio: line.ratio, stretches };
}

/** Bins over which the scatter of the spectrum is smoothed, and the degree that keeps the height of a line a few bins wide. */
const SMOOTHING = { width: 5, degree: 2 };
/** No line is narrower than about this many bins after the Hann window and the smoothing; in a narrow band it is no hump. */
const WINDOW_WIDTH = 4;

/**
 * The most prominent summit of a band, in bins: a line must stand out from its own surroundings. The largest bin may be the
 * end of a slope that falls through the band.
 */
function strongestLine(band: Float64Array): { bin: number; ratio: number } | null {
  const smooth = savitzkyGolay(band, SMOOTHING.width, SMOOTHING.degree);
  const peaks = findPeaks(smooth).filter((peak) => peak.width <= Math.max(WINDOW_WIDTH, band.length / 4));
  if (peaks.length === 0) return null;
  const { index, prominence } = peaks.reduce((most, peak) => (peak.prominence > most.prominence ? peak : most));
  return { bin: index + parabolicOffset(smooth[index - 1], smooth[index], smooth[index + 1]), ratio: prominence / median(band) };
}
