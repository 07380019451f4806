import { realSpectrum } from './fft.ts';
import { median } from './median.ts';
import { parabolicOffset } from './correlate.ts';

/**
 * Frequency (cycles a sample) of the strongest narrow line between `low` and `high`, by averaging the spectra of
 * up to `most` Hann-windowed stretches of `size` samples that hold no masked ones to speak of (at least 90 % valid);
 * and its height over the median of the band. Null where no stretch can be used or the band is too narrow.
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
  let best = first;
  for (let bin = first; bin <= last; bin += 1) if (power[bin] > power[best]) best = bin;
  const offset = parabolicOffset(power[best - 1], power[best], power[best + 1]);
  return { frequency: (best + offset) / size, ratio: power[best] / median(power.subarray(first, last + 1)), stretches };
}
