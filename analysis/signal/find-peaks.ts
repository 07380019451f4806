/** A local maximum: what a line or a pulse is measured by before anything is fitted to it. */
export interface Peak {
  readonly index: number;
  /** How far it stands over the higher of the two lowest places that part it from higher ground (or from the end). */
  readonly prominence: number;
  /** Full width in samples at `height`, half the prominence below the summit, between samples by straight lines. */
  readonly width: number;
  readonly height: number;
}

/**
 * Local maxima of a signal without gaps that are at least `leastProminence` prominent and `leastWidth` samples wide at
 * half their prominence, in order: the definitions of scipy.signal.find_peaks with rel_height 0.5. The middle of a level summit counts
 * (rounded down); the first and last sample are never peaks. Quadratic at worst, for a signal that rises all along.
 */
export function findPeaks(values: ArrayLike<number>, leastProminence = 0, leastWidth = 0): Peak[] {
  const found: Peak[] = [];
  for (const index of localMaxima(values)) {
    const prominence = values[index] - highestSaddle(values, index);
    if (prominence < leastProminence) continue;
    const height = values[index] - prominence / 2;
    const width = crossing(values, index, 1, height) - crossing(values, index, -1, height);
    if (width >= leastWidth) found.push({ index, prominence, width, height });
  }
  return found;
}

function localMaxima(values: ArrayLike<number>): number[] {
  const found: number[] = [];
  let i = 1;
  while (i < values.length - 1) {
    if (values[i - 1] >= values[i]) {
      i += 1;
      continue;
    }
    let end = i;
    while (end + 1 < values.length && values[end + 1] === values[i]) end += 1;
    if (end + 1 < values.length && values[end + 1] < values[i]) found.push((i + end) >> 1);
    i = end + 1;
  }
  return found;
}

/** The higher of the lowest places to either side before the signal rises above the summit or ends. */
function highestSaddle(values: ArrayLike<number>, summit: number): number {
  let left = values[summit];
  for (let i = summit; i >= 0 && values[i] <= values[summit]; i -= 1) if (values[i] < left) left = values[i];
  let right = values[summit];
  for (let i = summit; i < values.length && values[i] <= values[summit]; i += 1) if (values[i] < right) right = values[i];
  return Math.max(left, right);
}

/** Where the signal falls through `height` on one side of a summit. It does before higher ground, because `height` is above the saddle there. */
function crossing(values: ArrayLike<number>, summit: number, side: 1 | -1, height: number): number {
  let i = summit;
  while (i + side >= 0 && i + side < values.length && values[i] > height) i += side;
  if (values[i] >= height) return i;
  return i - (side * (height - values[i])) / (values[i - side] - values[i]);
}
