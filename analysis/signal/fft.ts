import FFT from 'fft.js';

/** Tables for one size are costly to make (about twice a transform) and are kept: sizes are few. */
const plans = new Map<number, FFT>();

function planOf(size: number): FFT {
  let plan = plans.get(size);
  if (!plan) {
    plan = new FFT(size);
    plans.set(size, plan);
  }
  return plan;
}

/**
 * Spectrum of a real signal, zero padded to `size` (a power of two): interleaved real and imaginary parts of bins
 * 0..size/2, so `size + 2` numbers. No scaling. n log n.
 */
export function realSpectrum(values: ArrayLike<number>, size: number): Float64Array {
  const data = new Float64Array(size);
  data.set(values);
  const out = new Float64Array(size * 2);
  planOf(size).realTransform(out, data);
  return out.slice(0, size + 2);
}

/** Forward transform of an interleaved complex signal of a power-of-two length, into `out` (another array). No scaling. */
export function complexSpectrum(interleaved: Float64Array, out: Float64Array = new Float64Array(interleaved.length)): Float64Array {
  planOf(interleaved.length / 2).transform(out, interleaved);
  return out;
}

/** Inverse of complexSpectrum, scaled by one over the length. */
export function complexSignal(interleaved: Float64Array, out: Float64Array = new Float64Array(interleaved.length)): Float64Array {
  planOf(interleaved.length / 2).inverseTransform(out, interleaved);
  return out;
}
