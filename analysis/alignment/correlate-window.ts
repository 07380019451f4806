import { realSpectrum, signalOf } from '../signal/fft.ts';
import { powerOfTwoFrom } from '../signal/power-of-two.ts';

/** Sum over a window of scan times reference, for the window's first bin at any bin of the reference. */
export type WindowProducts = (at: number) => number;

/**
 * Prepares one reference for many windows of up to `width` bins: its spectrum is made once. On a loop (`around`) the
 * reference goes on from its start. `at` may run from -(width - 1) to the reference's last bin. n log n a window.
 */
export function correlatorFor(reference: Float64Array, width: number, around: boolean): (scan: Float64Array, from: number, end: number) => WindowProducts {
  const extended = new Float64Array(reference.length + (around ? width : 0));
  extended.set(reference);
  if (around) for (let i = 0; i < width; i += 1) extended[reference.length + i] = reference[i % reference.length];
  const size = powerOfTwoFrom(extended.length + width);
  const spectrum = realSpectrum(extended, size);
  return (scan, from, end) => {
    const window = realSpectrum(scan.subarray(from, end), size);
    for (let k = 0; k < window.length; k += 2) {
      const re = window[k] * spectrum[k] + window[k + 1] * spectrum[k + 1];
      const im = window[k] * spectrum[k + 1] - window[k + 1] * spectrum[k];
      window[k] = re;
      window[k + 1] = im;
    }
    const products = signalOf(window, size);
    return (at) => products[at < 0 ? at + size : at];
  };
}
