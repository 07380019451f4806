import { decodeText } from '../../analysis/intake/decode-text.ts';
import { detectDialect } from '../../analysis/intake/detect-dialect.ts';
import { recogniseColumns } from '../../analysis/intake/recognise-columns.ts';
import type { ColumnGuess } from '../../analysis/intake/run.ts';
import type { RunColumns } from '../../analysis/rope/record.ts';

/** The beginning of a scan file as the program reads it, for the intake screen. */
export interface FileHead {
  readonly names: readonly string[];
  readonly units: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly guesses: readonly ColumnGuess[];
  readonly decisions: readonly string[];
  /** Why the file cannot be read as a table, or null. */
  readonly refusal: string | null;
}

/** How much of a file is looked at: enough for a long preamble. */
export const HEAD_BYTES = 96_000;
const ROWS_SHOWN = 12;

/** Reads the beginning of a file with the same parts that intake uses. */
export function readHead(bytes: Uint8Array, file: string, stated: RunColumns | undefined): FileHead {
  const refused = (refusal: string): FileHead => ({ names: [], units: [], rows: [], guesses: [], decisions: [], refusal });
  if (bytes.length === 0) return refused('the file is empty');
  const decoded = decodeText(bytes);
  if (decoded === null) return refused('the file is not text: export the scan as CSV');
  const dialect = detectDialect(decoded.text, decoded.guess);
  if (dialect === null) return refused('no table of numbers was found in its beginning');
  const { guesses } = recogniseColumns(dialect, stated, file);
  return { names: dialect.names, units: dialect.units, rows: dialect.sample.slice(0, ROWS_SHOWN), guesses, decisions: dialect.decisions, refusal: null };
}
