/** Weighted mean of levels from one block up to another, within what there is; 0 where nothing was measured. */
export function meanLevel(level: Float64Array, weight: Float64Array, from: number, end: number): number {
  let [sum, mass] = [0, 0];
  for (let block = Math.max(0, from); block < Math.min(level.length, end); block += 1) {
    sum += weight[block] * level[block];
    mass += weight[block];
  }
  return mass > 0 ? sum / mass : 0;
}

/** The higher of the mean levels of `reach` blocks before and behind a stretch. */
export function levelBeside(level: Float64Array, weight: Float64Array, from: number, end: number, reach: number): number {
  return Math.max(meanLevel(level, weight, from - reach, from), meanLevel(level, weight, end, end + reach));
}
