/**
 * Solves T x = b for the symmetric Toeplitz matrix T of `column` (T[i][j] = column[|i - j|]) by Levinson's recursion
 * (Levinson 1947; Golub and Van Loan, Matrix Computations, 4.7; both from memory). Null where T is not positive definite. Quadratic time.
 */
export function solveToeplitz(column: ArrayLike<number>, right: ArrayLike<number>): Float64Array | null {
  const count = right.length;
  const x = new Float64Array(count);
  // Prediction of a value from those before it, the nearest first, and its mean square error.
  const ahead = new Float64Array(count);
  const before = new Float64Array(count);
  let error = column[0];
  for (let n = 0; n < count; n += 1) {
    if (!(error > 0)) return null;
    let gap = right[n];
    for (let k = 0; k < n; k += 1) gap -= column[n - k] * x[k];
    const step = gap / error;
    for (let k = 0; k < n; k += 1) x[k] -= step * ahead[n - 1 - k];
    x[n] = step;
    if (n + 1 === count) break;
    let reflection = column[n + 1];
    for (let k = 0; k < n; k += 1) reflection -= ahead[k] * column[n - k];
    reflection /= error;
    before.set(ahead);
    for (let k = 0; k < n; k += 1) ahead[k] -= reflection * before[n - 1 - k];
    ahead[n] = reflection;
    error *= 1 - reflection * reflection;
  }
  return x;
}
