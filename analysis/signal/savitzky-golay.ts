/**
 * Smooths a signal without gaps by fitting a polynomial of `degree` to the `width` samples (odd) about each one by least
 * squares and taking its value there (Savitzky and Golay 1964): noise falls and narrow summits keep their height, which a
 * mean would flatten. At the ends the fit of the first and last full window is read off (scipy.signal.savgol_filter,
 * mode 'interp'). Throws RangeError where the signal is shorter than the window or the degree does not fit. Length times width.
 */
export function savitzkyGolay(values: ArrayLike<number>, width: number, degree: number): Float64Array {
  if (width % 2 !== 1 || degree >= width || degree < 0) throw new RangeError('the window must be odd and hold more samples than the degree of the polynomial');
  const count = values.length;
  if (count < width) throw new RangeError('the signal is shorter than the window');
  const half = (width - 1) >> 1;
  const out = new Float64Array(count);
  const middle = weightsAt(0, half, degree);
  for (let i = half; i < count - half; i += 1) out[i] = weigh(values, i - half, middle);
  for (let offset = -half; offset < 0; offset += 1) {
    out[half + offset] = weigh(values, 0, weightsAt(offset, half, degree));
    out[count - 1 - half - offset] = weigh(values, count - width, weightsAt(-offset, half, degree));
  }
  return out;
}

function weigh(values: ArrayLike<number>, from: number, weights: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < weights.length; k += 1) sum += weights[k] * values[from + k];
  return sum;
}

/** Weights whose sum over a window is the fitted polynomial at `offset` samples from its middle, by polynomials orthogonal over the window. */
export function weightsAt(offset: number, half: number, degree: number): Float64Array {
  const places = Float64Array.from({ length: 2 * half + 1 }, (_, k) => (k - half) / Math.max(1, half));
  const at = offset / Math.max(1, half);
  const weights = new Float64Array(places.length);
  let before = new Float64Array(places.length);
  let current = new Float64Array(places.length).fill(1);
  let beforeAt = 0;
  let currentAt = 1;
  let beforeEnergy = 1;
  for (let order = 0; order <= degree; order += 1) {
    const energy = current.reduce((sum, value) => sum + value * value, 0);
    for (let k = 0; k < weights.length; k += 1) weights[k] += (current[k] * currentAt) / energy;
    // On a window that is even about its middle the recurrence has two terms.
    const ratio = order === 0 ? 0 : energy / beforeEnergy;
    const next = current.map((value, k) => places[k] * value - ratio * before[k]);
    [before, current, beforeEnergy] = [current, next, energy];
    [beforeAt, currentAt] = [currentAt, at * currentAt - ratio * beforeAt];
  }
  return weights;
}
