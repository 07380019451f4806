import { isMark } from './mask-samples.ts';
import type { NumberTable } from './number-table.ts';
import { THRESHOLDS } from './thresholds.ts';

/**
 * Takes out rows whose position is a mark for `nothing measured` (-9999 and the like) far off the positions around it; in
 * place, for all columns of the table. A scan that really passes 9999 keeps it. Returns how many rows were taken out.
 */
export function dropMarkedPositions(positions: Float64Array, columns: readonly Float64Array[], table: NumberTable): number {
  const { rows } = table;
  let near = firstUnmarked(positions, rows);
  let kept = 0;
  for (let i = 0; i < rows; i += 1) {
    const at = positions[i];
    if (isMark(at) && Math.abs(at - near) > THRESHOLDS.markDistance.value) continue;
    near = at;
    if (kept !== i) for (let c = 0; c < columns.length; c += 1) columns[c][kept] = columns[c][i];
    kept += 1;
  }
  // A file of nothing but marks is left for the checks that follow to refuse.
  if (kept === 0) return 0;
  table.rows = kept;
  return rows - kept;
}

function firstUnmarked(positions: Float64Array, rows: number): number {
  for (let i = 0; i < rows; i += 1) if (!isMark(positions[i])) return positions[i];
  return positions[0];
}
