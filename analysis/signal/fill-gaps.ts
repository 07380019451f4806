/**
 * A copy with a straight line across every masked stretch (held beyond the first and last valid sample; 0 where none is
 * valid), for filters that need a value everywhere. The mask stays what it was: filled samples are never judged.
 */
export function fillGaps(values: Float64Array, valid: Uint8Array): Float64Array {
  const count = values.length;
  const filled = new Float64Array(count);
  let last = -1;
  for (let i = 0; i <= count; i += 1) {
    if (i < count && valid[i] !== 1) continue;
    const right = i < count ? values[i] : last >= 0 ? values[last] : 0;
    const left = last >= 0 ? values[last] : right;
    const span = i - last;
    for (let k = last + 1; k < i; k += 1) filled[k] = left + ((right - left) * (k - last)) / span;
    if (i < count) filled[i] = values[i];
    last = i;
  }
  return filled;
}
