import { studentQuantile } from './student-t.ts';

export interface LeastSquares {
  readonly coefficients: Float64Array;
  /** One sigma of each coefficient, from the scatter about the fit; NaN without degrees of freedom. */
  readonly standardErrors: Float64Array;
  /** Root of the weighted residual sum of squares over the degrees of freedom; NaN without degrees of freedom. */
  readonly residualSd: number;
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  /** Variance of the fitted value at a row of the design, in units of the residual variance. */
  readonly leverageOf: (row: ArrayLike<number>) => number;
}

/** A column whose part independent of the others is smaller than this share of it is not told apart from them. */
const DEPENDENT = 1e-14;

/**
 * Linear least squares by Householder reflections of the design itself: the normal equations would lose half of the digits on
 * designs whose columns are alike. `rows` n by p with n >= p; weights inverse to the variances (all 1 where left out).
 * Null where the columns are linearly dependent. Cost: n p^2.
 */
export function leastSquares(rows: readonly ArrayLike<number>[], values: ArrayLike<number>, weights?: ArrayLike<number>): LeastSquares | null {
  const n = rows.length;
  const p = n === 0 ? 0 : rows[0].length;
  if (p === 0 || n < p) return null;
  const root = (i: number) => (weights === undefined ? 1 : Math.sqrt(weights[i]));
  const scale = Float64Array.from({ length: p }, (_, j) => Math.hypot(...rows.map((row, i) => row[j] * root(i))) || 1);
  const columns = Array.from(scale, (size, j) => Float64Array.from(rows, (row, i) => (row[j] * root(i)) / size));
  const right = Float64Array.from(rows, (_, i) => values[i] * root(i));
  const diagonal = reflect(columns, right);
  if (diagonal === null) return null;
  const scaled = backSubstitute(columns, diagonal, right);
  const inverse = Array.from(scale, (_, j) => backSubstitute(columns, diagonal, Float64Array.from({ length: n }, (_unused, i) => (i === j ? 1 : 0))));
  const coefficients = scaled.map((each, j) => each / scale[j]);
  const residualSumOfSquares = rows.reduce((sum, row, i) => sum + (root(i) * (values[i] - dot(row, coefficients))) ** 2, 0);
  const degreesOfFreedom = n - p;
  const residualSd = degreesOfFreedom > 0 ? Math.sqrt(residualSumOfSquares / degreesOfFreedom) : NaN;
  const leverageOf = (row: ArrayLike<number>): number => inverse.reduce((sum, column) => sum + scale.reduce((part, size, j) => part + (row[j] / size) * column[j], 0) ** 2, 0);
  const standardErrors = scale.map((size, j) => (residualSd * Math.hypot(...inverse.map((column) => column[j]))) / size);
  return { coefficients, standardErrors, residualSd, residualSumOfSquares, degreesOfFreedom, leverageOf };
}

/**
 * Interval that holds, with probability `share`, the mean at a row of the design (`ofReading` false) or a new reading of weight 1
 * there (`ofReading` true). Student's t on the scatter about the fit; null without degrees of freedom.
 */
export function intervalAt(fit: LeastSquares, row: ArrayLike<number>, share: number, ofReading: boolean): { value: number; low: number; high: number } | null {
  if (fit.degreesOfFreedom < 1) return null;
  const value = dot(row, fit.coefficients);
  const half = studentQuantile(share, fit.degreesOfFreedom) * fit.residualSd * Math.sqrt(fit.leverageOf(row) + (ofReading ? 1 : 0));
  return { value, low: value - half, high: value + half };
}

function dot(row: ArrayLike<number>, coefficients: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < coefficients.length; j += 1) sum += row[j] * coefficients[j];
  return sum;
}

/** Reflects the columns to triangular form (R above the diagonal, its diagonal returned) and carries the right side along. */
function reflect(columns: readonly Float64Array[], right: Float64Array): Float64Array | null {
  const n = right.length;
  const diagonal = new Float64Array(columns.length);
  for (let j = 0; j < columns.length; j += 1) {
    const own = columns[j];
    const size = Math.hypot(...own.subarray(j));
    if (!(size > DEPENDENT)) return null;
    diagonal[j] = own[j] > 0 ? -size : size;
    own[j] -= diagonal[j];
    const half = -diagonal[j] * own[j];
    for (const other of [...columns.slice(j + 1), right]) {
      let product = 0;
      for (let i = j; i < n; i += 1) product += own[i] * other[i];
      const factor = product / half;
      for (let i = j; i < n; i += 1) other[i] -= factor * own[i];
    }
  }
  return diagonal;
}

function backSubstitute(columns: readonly Float64Array[], diagonal: Float64Array, right: Float64Array): Float64Array {
  const p = columns.length;
  const solved = new Float64Array(p);
  for (let j = p - 1; j >= 0; j -= 1) {
    let sum = right[j];
    for (let k = j + 1; k < p; k += 1) sum -= columns[k][j] * solved[k];
    solved[j] = sum / diagonal[j];
  }
  return solved;
}
