import { realSpectrum, signalOf } from './fft.ts';
import { powerOfTwoFrom } from './power-of-two.ts';

/**
 * Full cross-correlation c[k] = sum over i of a[i + lag] b[i] with lag = k - (b.length - 1), the order of
 * scipy.signal.correlate(mode='full'). Nothing is subtracted and nothing normalised. By FFT, n log n.
 */
export function correlate(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  const count = a.length + b.length - 1;
  const size = powerOfTwoFrom(count);
  const product = realSpectrum(a, size);
  const second = realSpectrum(b, size);
  for (let i = 0; i < product.length; i += 2) {
    const re = product[i] * second[i] + product[i + 1] * second[i + 1];
    product[i + 1] = product[i + 1] * second[i] - product[i] * second[i + 1];
    product[i] = re;
  }
  const circular = signalOf(product, size);
  const full = new Float64Array(count);
  // Negative lags stand at the end of the circular result.
  for (let k = 0; k < count; k += 1) full[k] = circular[(k - (b.length - 1) + size) % size];
  return full;
}

/** The lag (samples) of the largest value of a full correlation with a second signal of `secondLength` samples. */
export function lagOfMaximum(full: Float64Array, secondLength: number): number {
  let best = 0;
  for (let k = 1; k < full.length; k += 1) if (full[k] > full[best]) best = k;
  return best - (secondLength - 1);
}

/** Offset (-0.5..0.5) of the summit of the parabola through three equally spaced values, the middle one the largest. */
export function parabolicOffset(before: number, at: number, after: number): number {
  const bend = before - 2 * at + after;
  if (bend >= 0) return 0;
  return Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend)));
}
