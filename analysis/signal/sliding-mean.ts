/**
 * Mean over a window of `width` samples (odd) centred on each sample, of valid samples only; where the window holds none,
 * the result is 0 and `valid` of the result 0. Windows shrink at the ends: nothing is invented beyond them. Linear time.
 */
export function slidingMean(values: Float64Array, valid: Uint8Array, width: number): { values: Float64Array; valid: Uint8Array } {
  const count = values.length;
  const half = (width - 1) >> 1;
  const means = new Float64Array(count);
  const known = new Uint8Array(count);
  let sum = 0;
  let members = 0;
  for (let i = -half; i < count; i += 1) {
    const enters = i + half;
    if (enters < count && valid[enters] === 1) {
      sum += values[enters];
      members += 1;
    }
    const leaves = i - half - 1;
    if (leaves >= 0 && valid[leaves] === 1) {
      sum -= values[leaves];
      members -= 1;
      if (members === 0) sum = 0;
    }
    if (i >= 0 && members > 0) {
      means[i] = sum / members;
      known[i] = 1;
    }
  }
  return { values: means, valid: known };
}
