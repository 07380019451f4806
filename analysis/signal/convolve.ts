/**
 * Convolution with a short, odd kernel, result as long as the signal and centred on it; beyond the ends the signal
 * counts as zero. Cost: length times kernel length, so for kernels up to about a hundred taps.
 */
export function convolveSame(values: Float64Array, kernel: Float64Array): Float64Array {
  const count = values.length;
  const half = (kernel.length - 1) >> 1;
  const taps = kernel.length;
  const out = new Float64Array(count);
  const reversed = kernel.slice().reverse();
  const inner = Math.max(half, count - half);
  for (let i = 0; i < Math.min(half, count); i += 1) out[i] = edgeSum(values, reversed, i - half);
  for (let i = half; i < count - half; i += 1) {
    let sum = 0;
    const base = i - half;
    for (let k = 0; k < taps; k += 1) sum += values[base + k] * reversed[k];
    out[i] = sum;
  }
  for (let i = inner; i < count; i += 1) out[i] = edgeSum(values, reversed, i - half);
  return out;
}

function edgeSum(values: Float64Array, reversed: Float64Array, base: number): number {
  let sum = 0;
  for (let k = Math.max(0, -base); k < reversed.length && base + k < values.length; k += 1) sum += values[base + k] * reversed[k];
  return sum;
}
