import type { Checkpoint } from '../rope/checkpoint.ts';
import type { CreateHasher } from '../rope/hasher.ts';
import type { Problem } from '../rope/problem.ts';
import { UnusableInput } from '../rope/problem.ts';
import { hashedPieces, narrowPieces, takeHead } from './byte-source.ts';
import { cleanRun } from './clean-run.ts';
import { roleOfName, splitUnit } from './column-words.ts';
import { detectDialect } from './detect-dialect.ts';
import { detectEncoding } from './detect-encoding.ts';
import type { Dialect } from './dialect.ts';
import { parseNumber } from './parse-cell.ts';
import { readRows } from './read-rows.ts';
import type { RowsRead, Slot } from './read-rows.ts';
import { recogniseColumns } from './recognise-columns.ts';
import type { Recognition } from './recognise-columns.ts';
import type { RunRequest, RunResult } from './run.ts';
import { THRESHOLDS } from './thresholds.ts';

/** How much of a file is looked at before it is read: long enough for any preamble and for the shape of the signals. */
export const HEAD_BYTES = 256 * 1024;

interface Context {
  readonly checkpoint: Checkpoint;
  readonly createHash: CreateHasher;
}

/**
 * Reads one scan file, streaming: encoding, dialect and columns are found from its first part, the body becomes columns of
 * numbers, and these become an even grid with masks and findings. Either a run or the problems; Cancelled passes through.
 */
export async function readRun(request: RunRequest, context: Context): Promise<RunResult> {
  try {
    return await readUsableRun(request, context);
  } catch (error) {
    if (error instanceof UnusableInput) return { problems: error.problems };
    throw error;
  }
}

async function readUsableRun(request: RunRequest, { checkpoint, createHash }: Context): Promise<RunResult> {
  const { file } = request;
  const hasher = createHash();
  const pieces = hashedPieces(request.bytes, request.size, hasher, checkpoint);
  const head = await takeHead(pieces, HEAD_BYTES);
  const dialect = dialectOf(head, file);
  const recognition = recogniseColumns(dialect, request.columns, file);
  if (recognition.problems.length > 0) return { problems: recognition.problems };
  const slots = slotsOf(recognition, dialect, request.clockOn !== undefined);
  const size = request.bytes instanceof Uint8Array ? request.bytes.length : request.size;
  const { encoding, markLength } = dialect.encoding;
  const rows = await readRows(narrowPieces(head, pieces, encoding, markLength), dialect, slots, size, file);
  const problems = bodyProblems(rows, dialect, file);
  if (problems.length > 0) return { problems };
  return cleanRun({ request, dialect, recognition, slots, rows, sha256: hasher.digest() });
}

/** Encoding and dialect of the first part of a file; throws UnusableInput where it is no table of numbers. */
export function dialectOf(head: Uint8Array, file: string): Dialect {
  const refuse = (line: number | null, what: string, remedy: string): never => {
    throw new UnusableInput([{ file, line, column: null, what, remedy }]);
  };
  if (head.length === 0) refuse(null, 'the file is empty', 'export the scan again, or take the run out of the record');
  const encoding = detectEncoding(head);
  if (encoding === null) return refuse(1, 'the file is binary, not text', 'export the scan as CSV or text from the instrument');
  const text = new TextDecoder(encoding.encoding).decode(wholeLines(head.subarray(encoding.markLength), encoding.encoding.startsWith('utf-16')));
  if (text.trim() === '') refuse(1, 'the file holds nothing but blanks', 'export the scan again, or take the run out of the record');
  const dialect = detectDialect(text, encoding);
  if (dialect === null && isHeaderOnly(text)) return refuse(firstTextLine(text), 'the file holds a header and no rows of numbers', 'export the scan again, or take the run out of the record');
  return dialect ?? refuse(firstTextLine(text), 'no table of numbers with two or more columns is found', 'export the scan as CSV with a row for each sample: position, LMA and LF');
}

/** The head without the line that its end cuts through, where it is long enough to be cut. */
function wholeLines(head: Uint8Array, wide: boolean): Uint8Array {
  if (head.length < HEAD_BYTES) return head;
  const last = Math.max(head.lastIndexOf(10), head.lastIndexOf(13));
  if (last < head.length / 2) return head;
  const end = last + 1 - (wide ? (last % 2 === 0 ? 0 : 1) : 0);
  return head.subarray(0, wide ? end - (end % 2) : end);
}

/** One line of text, of which at least two cells name a column of a scan. */
function isHeaderOnly(text: string): boolean {
  const lines = text.split(/[\r\n]+/).filter((line) => line.trim() !== '');
  return lines.length === 1 && lines[0].length < 2000 && lines[0].split(/[;,\t|]/).filter((cell) => roleOfName(splitUnit(cell).name) !== null).length >= 2;
}

function firstTextLine(text: string): number {
  return text.split(/\r\n|\n|\r/).findIndex((line) => line.trim() !== '') + 1;
}

/** The columns to read; a time of day only where it is asked for or nothing simpler gives the speed. */
function slotsOf({ columnOf }: Recognition, dialect: Dialect, clockWanted: boolean): Slot[] {
  const slots: Slot[] = [];
  const integrates = columnOf.position === undefined;
  for (const role of ['position', 'lma', 'lf', 'speed', 'time'] as const) {
    const index = columnOf[role];
    if (index === undefined) continue;
    const clock = role === 'time' && dialect.sample.some((row) => /:/.test(row[index] ?? '') && parseNumber(row[index], dialect.decimal) === null);
    // Beside a speed the time only helps to find slip: not worth the careful reading that a time of day needs.
    if (clock && !clockWanted && !integrates && columnOf.speed !== undefined) continue;
    slots.push({ index, clock, needed: role === 'position' || (integrates && role === 'time') });
  }
  return slots;
}

function bodyProblems(rows: RowsRead, dialect: Dialect, file: string): Problem[] {
  const { table, rejected, firstRejected } = rows;
  const share = rejected / Math.max(1, rejected + table.rows);
  if (rejected > 0 && share > THRESHOLDS.rowsRejected.value) {
    return [
      ...firstRejected.slice(0, 5).map(({ line, column, what }) => ({ file, line, column, what, remedy: 'correct the row or export the scan again' })),
      { file, line: null, column: null, what: `${rejected} of ${rejected + table.rows} rows cannot be read`, remedy: 'check delimiter, decimal mark and columns when importing' },
    ];
  }
  if (table.rows < THRESHOLDS.fewestRows.value) {
    return [{ file, line: dialect.firstDataLine, column: null, what: `only ${table.rows} rows of numbers are found: no scan`, remedy: 'export the whole scan' }];
  }
  return [];
}
