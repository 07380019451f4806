/** About `enough` of the values that were seen, evenly spread: so many settle a scale. A copy, whose order may be changed. */
export function someOf(values: Float64Array, seen: Uint8Array, enough: number): Float64Array {
  // No even number of bins or samples: a stride in step with the strands would see one side of them only.
  const stride = Math.max(1, Math.floor(values.length / enough)) | 1;
  const some = new Float64Array(Math.ceil(values.length / stride));
  let count = 0;
  for (let i = 0; i < values.length; i += stride) if (seen[i] === 1) some[count++] = values[i];
  return some.subarray(0, count);
}
