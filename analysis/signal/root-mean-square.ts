/** Root of the mean square of values[from..end). Throws RangeError on no values. */
export function rootMeanSquare(values: ArrayLike<number>, from = 0, end = values.length): number {
  if (end <= from) throw new RangeError('a root mean square needs at least one value');
  let sum = 0;
  for (let i = from; i < end; i += 1) sum += values[i] * values[i];
  return Math.sqrt(sum / (end - from));
}
