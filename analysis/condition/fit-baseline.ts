/** Piecewise-linear level over blocks: value at each knot, knots evenly spaced from the first block to the last. */
export interface BaselineCurve {
  readonly spacing: number; // blocks
  readonly knots: Float64Array;
}

export function baselineAt({ spacing, knots }: BaselineCurve, block: number): number {
  const place = block / spacing;
  const below = Math.max(0, Math.min(knots.length - 2, Math.floor(place)));
  return knots[below] + (place - below) * (knots[below + 1] - knots[below]);
}

/**
 * Weighted least squares of a level that bends only at its knots, its bends held down by `stiffness` (in units of block
 * weights times blocks). Solved by elimination in a band of five: knots are few.
 */
export function fitBaseline(level: Float64Array, weight: Float64Array, spacing: number, stiffness: number): BaselineCurve {
  const count = Math.max(2, Math.ceil((level.length - 1) / spacing - 1e-9) + 1);
  const matrix = Array.from({ length: count }, () => new Float64Array(count));
  const right = new Float64Array(count);
  for (let block = 0; block < level.length; block += 1) {
    const w = weight[block];
    if (w <= 0) continue;
    const below = Math.min(count - 2, Math.floor(block / spacing));
    const share = block / spacing - below;
    matrix[below][below] += w * (1 - share) ** 2;
    matrix[below][below + 1] += w * share * (1 - share);
    matrix[below + 1][below] += w * share * (1 - share);
    matrix[below + 1][below + 1] += w * share ** 2;
    right[below] += w * (1 - share) * level[block];
    right[below + 1] += w * share * level[block];
  }
  for (let k = 1; k + 1 < count; k += 1) addBend(matrix, k, stiffness);
  // Where nothing holds a knot it stays on the line of its neighbours, or level.
  for (let k = 0; k < count; k += 1) matrix[k][k] += 1e-9;
  for (let k = 1; k < count; k += 1) addSlope(matrix, k, 1e-6);
  return { spacing, knots: eliminate(matrix, right) };
}

function addBend(matrix: Float64Array[], middle: number, stiffness: number): void {
  const pattern = [1, -2, 1];
  for (let a = 0; a < 3; a += 1) for (let b = 0; b < 3; b += 1) matrix[middle - 1 + a][middle - 1 + b] += stiffness * pattern[a] * pattern[b];
}

function addSlope(matrix: Float64Array[], k: number, stiffness: number): void {
  matrix[k][k] += stiffness;
  matrix[k - 1][k - 1] += stiffness;
  matrix[k][k - 1] -= stiffness;
  matrix[k - 1][k] -= stiffness;
}

/** Gaussian elimination of a symmetric positive matrix whose entries lie within two of the diagonal. */
function eliminate(matrix: Float64Array[], right: Float64Array): Float64Array {
  const count = right.length;
  for (let k = 0; k < count; k += 1) {
    for (let row = k + 1; row <= Math.min(count - 1, k + 2); row += 1) {
      const factor = matrix[row][k] / matrix[k][k];
      if (factor === 0) continue;
      for (let column = k; column <= Math.min(count - 1, k + 2); column += 1) matrix[row][column] -= factor * matrix[k][column];
      right[row] -= factor * right[k];
    }
  }
  const solution = new Float64Array(count);
  for (let k = count - 1; k >= 0; k -= 1) {
    let sum = right[k];
    for (let column = k + 1; column <= Math.min(count - 1, k + 2); column += 1) sum -= matrix[k][column] * solution[column];
    solution[k] = sum / matrix[k][k];
  }
  return solution;
}
