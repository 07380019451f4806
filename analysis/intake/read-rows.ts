import { UnusableInput } from '../rope/problem.ts';
import { isComment } from './detect-dialect.ts';
import type { Dialect } from './dialect.ts';
import { looksLikeUnit } from './column-words.ts';
import { createTable, growTable } from './number-table.ts';
import type { NumberTable } from './number-table.ts';
import { isMissing, parseClock, parseNumber } from './parse-cell.ts';
import { UNUSED_NUMBER, UNUSED_TEXT, scanRows } from './scan-rows.ts';
import { splitLine } from './split-line.ts';

/** A column wanted from a file. */
export interface Slot {
  readonly index: number;
  /** Numbers, or times of day as seconds. */
  readonly clock: boolean;
  /** A row without this value cannot be placed. */
  readonly needed: boolean;
}

export interface RejectedRow {
  readonly line: number;
  readonly column: string | null;
  readonly what: string;
  /** Rows read before it: says where on the rope it lies. */
  readonly afterRow: number;
}

export interface RowsRead {
  readonly table: NumberTable;
  readonly rejected: number;
  /** The first of them. */
  readonly firstRejected: readonly RejectedRow[];
  readonly repeatedHeaders: number;
  readonly summaryRows: number;
  readonly commentLines: number;
  readonly lines: number;
}

export const MAX_LINE_BYTES = 1 << 20;
/** A longer row is damage; reading it with care would only cost time. */
const MAX_ROW_BYTES = 1 << 16;
const KEPT_REJECTED = 50;
const SUMMARY = /^\s*(grand\s+)?(total|sum|summe|gesamt|somme|totale|suma|soma|итого|всего|合计|总计|mean|average|avg|mittel(wert)?|moyenne|media|średnia|среднее|平均|min(imum)?|max(imum)?|std(dev)?|rms|count|anzahl|end( of (file|data))?|ende|eof|fin|fine|koniec|конец)\b\.?\s*:?/i;

/**
 * Reads the body of a scan file into columns of numbers. Plain rows go through the byte scanner; any other row is read with
 * care and gives the same numbers. A row that cannot be read is rejected and counted, never guessed.
 * `fast` false sends every row through the careful reader: the slow twin of tests.
 */
export async function readRows(pieces: AsyncIterable<Uint8Array>, dialect: Dialect, slots: readonly Slot[], sizeHint: number | null, file: string, fast = true): Promise<RowsRead> {
  const state = createState(dialect, slots, sizeHint);
  const newline = dialect.newline.charCodeAt(0);
  let carry = new Uint8Array(0);
  for await (const given of pieces) {
    // One kind of array and no other (a reader may hand over a subclass): the scanner is then compiled for it alone.
    const piece = new Uint8Array(given.buffer, given.byteOffset, given.byteLength);
    const first = piece.indexOf(newline);
    if (first < 0) {
      carry = joined(carry, piece);
      if (carry.length > MAX_LINE_BYTES) throw tooLong(file, state.line);
      continue;
    }
    let from = 0;
    if (carry.length > 0) {
      const line = joined(carry, piece.subarray(0, first + 1));
      readPiece(state, line, 0, line.length, fast);
      from = first + 1;
    }
    const last = piece.lastIndexOf(newline) + 1;
    if (last > from) readPiece(state, piece, from, last, fast);
    carry = piece.slice(last);
  }
  if (carry.length > 0) {
    state.unfinished = true;
    readPiece(state, joined(carry, Uint8Array.of(newline)), 0, carry.length + 1, false);
  }
  return { table: state.table, rejected: state.rejected, firstRejected: state.firstRejected, repeatedHeaders: state.repeatedHeaders, summaryRows: state.summaryRows, commentLines: state.commentLines, lines: state.line - 1 };
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

function tooLong(file: string, line: number): UnusableInput {
  return new UnusableInput([{ file, line, column: null, what: `a line is longer than ${MAX_LINE_BYTES} bytes`, remedy: 'save the scan as text with one row for each sample' }]);
}

function createState(dialect: Dialect, slots: readonly Slot[], sizeHint: number | null) {
  const targets = new Int32Array(dialect.fieldCount).fill(UNUSED_TEXT);
  const wanted = new Set(slots.map((slot) => slot.index));
  for (let index = 0; index < targets.length; index += 1) {
    if (wanted.has(index)) continue;
    if (dialect.sample.every((row) => parseNumber(row[index] ?? '', dialect.decimal) !== null || isMissing(row[index] ?? ''))) targets[index] = UNUSED_NUMBER;
  }
  slots.forEach((slot, n) => { targets[slot.index] = n; });
  const bytesPerRow = dialect.sample.length === 0 ? 20 : dialect.sample.reduce((sum, row) => sum + row.reduce((length, cell) => length + cell.length + 1, 1), 0) / dialect.sample.length;
  const wide = dialect.encoding.encoding.startsWith('utf-16') ? 2 : 1;
  return {
    dialect, slots,
    layout: { delimiter: dialect.delimiter.charCodeAt(0), decimal: dialect.decimal.charCodeAt(0), newline: dialect.newline.charCodeAt(0), targets },
    table: createTable(slots.length, sizeHint === null ? 65_536 : (sizeHint / wide / bytesPerRow) * 1.03 + 64),
    decoder: new TextDecoder(wide === 2 ? 'utf-8' : dialect.encoding.encoding),
    header: normalised(dialect.names.join(dialect.delimiter)),
    needed: Math.max(...slots.map((slot) => slot.index)) + 1,
    /** Decimals of the last column where all rows agree on them: a last line without its end that has fewer is cut off. */
    lastDecimals: commonDecimals(dialect),
    line: 1, unfinished: false, rejected: 0, repeatedHeaders: 0, summaryRows: 0, commentLines: 0, firstRejected: [] as RejectedRow[],
  };
}
type State = ReturnType<typeof createState>;

function readPiece(state: State, bytes: Uint8Array, from: number, to: number, fast: boolean): void {
  const { newline } = state.layout;
  let at = from;
  while (state.line < state.dialect.firstDataLine && at < to) {
    at = bytes.indexOf(newline, at) + 1;
    state.line += 1;
  }
  if (at >= to) return;
  const unusual = (start: number, end: number, passed: number) => readWithCare(state, bytes, start, end, state.line + passed);
  if (fast) {
    state.line += scanRows(bytes, at, to, state.layout, state.table, unusual);
    return;
  }
  while (at < to) {
    const end = bytes.indexOf(newline, at);
    unusual(at, end, 0);
    state.line += 1;
    at = end + 1;
  }
}

function readWithCare(state: State, bytes: Uint8Array, start: number, end: number, line: number): void {
  const { dialect, slots, table } = state;
  if (end - start > MAX_ROW_BYTES) return reject(state, line, null, 'the line is far too long for a row');
  const text = state.decoder.decode(bytes.subarray(start, bytes[end - 1] === 13 && end > start ? end - 1 : end));
  if (/^[\s\u001a\u0000]*$/.test(text)) return;
  if (text.includes('\r') && dialect.newline === '\n') return reject(state, line, null, 'a carriage return stands inside the row');
  if (isComment(text)) { state.commentLines += 1; return; }
  const cells = splitLine(text, dialect.delimiter);
  if (cells.every((cell) => cell.trim() === '')) return;
  if (isRepeatedHeader(state, cells)) { state.repeatedHeaders += 1; return; }
  if (cells.some((cell) => cell.length < 80 && SUMMARY.test(cell))) { state.summaryRows += 1; return; }
  while (cells.length > dialect.fieldCount && cells.at(-1)!.trim() === '') cells.pop();
  if (cells.length > dialect.fieldCount || cells.length < (state.unfinished ? dialect.fieldCount : state.needed)) {
    return reject(state, line, null, `the row has ${cells.length} fields where ${dialect.fieldCount} are expected`);
  }
  if (state.unfinished && decimalsOf(cells.at(-1)!, dialect) < state.lastDecimals) return reject(state, line, dialect.names.at(-1)!, 'the file ends in the middle of a number');
  if (table.rows >= table.capacity) growTable(table);
  for (let n = 0; n < slots.length; n += 1) {
    const cell = cells[slots[n].index];
    let value = parseNumber(cell, dialect.decimal) ?? (slots[n].clock ? parseClock(cell) : null);
    if (value === null && isMissing(cell)) value = NaN;
    const name = dialect.names[slots[n].index];
    if (value === null) return reject(state, line, name, `${JSON.stringify(cell.length > 30 ? `${cell.slice(0, 27)}...` : cell)} is not a number`);
    if (slots[n].needed && Number.isNaN(value)) return reject(state, line, name, 'the row has no position');
    table.columns[n][table.rows] = value;
  }
  table.rows += 1;
}

function decimalsOf(cell: string, dialect: Dialect): number {
  const trimmed = cell.trim();
  const mark = trimmed.lastIndexOf(dialect.decimal);
  return mark < 0 ? 0 : trimmed.length - mark - 1;
}

function commonDecimals(dialect: Dialect): number {
  const found = new Set(dialect.sample.slice(0, -1).map((row) => decimalsOf(row[dialect.fieldCount - 1] ?? '', dialect)));
  return found.size === 1 ? [...found][0] : 0;
}

function reject(state: State, line: number, column: string | null, what: string): void {
  state.rejected += 1;
  if (state.firstRejected.length < KEPT_REJECTED) state.firstRejected.push({ line, column, what, afterRow: state.table.rows });
}

function isRepeatedHeader(state: State, cells: readonly string[]): boolean {
  const { dialect } = state;
  if (dialect.headerLine !== null && normalised(cells.join(dialect.delimiter)) === state.header) return true;
  const words = cells.filter((cell) => cell.trim() !== '');
  return words.length > 1 && words.every((cell) => looksLikeUnit(cell) && !isMissing(cell) && !/^\d/.test(cell.trim()));
}

function normalised(text: string): string {
  return text.toLowerCase().replace(/[\s"]+/g, '');
}
