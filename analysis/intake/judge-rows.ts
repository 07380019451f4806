import { finding } from './findings.ts';
import type { Finding } from './findings.ts';
import type { RowsRead } from './read-rows.ts';

const LISTED = 10;

/** Findings on rows that could not be read, or placed (`unplaced` of them), placed by the row before each; call before the positions are reordered. */
export function judgeRows(rows: RowsRead, unplaced: number, positions: Float64Array): Finding[] {
  const { rejected, firstRejected, table } = rows;
  const last = Math.max(0, table.rows - 1);
  const found = firstRejected.slice(0, LISTED).map((row) => {
    const at = positions[Math.min(last, Math.max(0, row.afterRow - 1))];
    return finding('row-rejected', 'warning', at, at, `Line ${row.line}${row.column === null ? '' : `, column ${row.column}`}: ${row.what}; the row is left out. Correct it in the source and export again.`);
  });
  const ends = [positions[0], positions[last]];
  const whole = [Math.min(...ends), Math.max(...ends)] as const;
  if (rejected > LISTED) found.push(finding('row-rejected', 'warning', ...whole, `Further rows that could not be read and are left out: ${rejected - LISTED}.`));
  if (unplaced > 0) found.push(finding('row-rejected', 'warning', ...whole, `Rows with a mark such as -9999 for a position, left out: ${unplaced}. Not inspected where nothing else covers it.`));
  if (rows.repeatedHeaders > 0) found.push(finding('repeated-header', 'info', ...whole, `Headers among the rows: ${rows.repeatedHeaders}. Several recordings may have been joined in this file.`));
  if (rows.summaryRows > 0) found.push(finding('summary-row', 'info', ...whole, `Rows of totals or means, left out: ${rows.summaryRows}.`));
  return found;
}
