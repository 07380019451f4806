import { growTable } from './number-table.ts';
import type { NumberTable } from './number-table.ts';

/** What the scanner needs to know of a dialect, as bytes. */
export interface RowLayout {
  readonly delimiter: number;
  readonly decimal: number;
  readonly newline: number;
  /** For each field: slot of the table, or one of the two marks below. */
  readonly targets: Int32Array;
}

/** A column that is not needed and holds numbers: text in it marks an unusual row. */
export const UNUSED_NUMBER = -1;
/** A column that is not needed and may hold anything. */
export const UNUSED_TEXT = -2;

/** 10^0 to 10^15: exact in double precision, as are integers of 15 digits, so that their quotient is rounded once and correctly. */
const POWERS = Float64Array.from({ length: 16 }, (_, i) => Number(`1e${i}`));
const MAX_DIGITS = 15;
/** Digits that always fit into 31 bits. */
const QUICK_DIGITS = 9;
const BLANK = 32;
const QUOTE = 34;
const MINUS = 45;
const PLUS = 43;
const RETURN = 13;

/**
 * Reads whole rows of plain decimal numbers from `bytes[from, to)` into the table; the last byte must be the line end.
 * A row that is anything but plain (text, quotes, exponents, grouped thousands, empty cells, another number of fields) is
 * handed to `unusual` with its bounds, for the careful reader. Every number equals Number(text) to the last bit. Linear time.
 * Returns the count of lines passed.
 */
export function scanRows(bytes: Uint8Array, from: number, to: number, layout: RowLayout, table: NumberTable, unusual: (start: number, end: number, lines: number) => void): number {
  const { delimiter, decimal, newline, targets } = layout;
  const point = decimal - 48;
  const fields = targets.length;
  const byBlanks = delimiter === BLANK;
  let lines = 0;
  let at = from;
  let columns = table.columns;
  while (at < to) {
    if (table.rows >= table.capacity) growTable(table);
    columns = table.columns;
    const row = table.rows;
    const start = at;
    let field = 0;
    let plain = true;
    for (;;) {
      while (bytes[at] === BLANK) at += 1;
      const target = targets[field];
      if (target >= 0) {
        let byte = bytes[at];
        const negative = byte === MINUS;
        if (negative || byte === PLUS) byte = bytes[++at];
        // Whole numbers of 32 bits are quick; the rare number of more digits than they hold is read over again.
        const first = at;
        let mantissa = 0;
        let digit = byte - 48;
        while (digit >= 0 && digit <= 9) {
          mantissa = (Math.imul(mantissa, 10) + digit) | 0;
          digit = bytes[++at] - 48;
        }
        let digits = at - first;
        let scale = 0;
        if (digit === point) {
          const fraction = ++at;
          digit = bytes[at] - 48;
          while (digit >= 0 && digit <= 9) {
            mantissa = (Math.imul(mantissa, 10) + digit) | 0;
            digit = bytes[++at] - 48;
          }
          scale = at - fraction;
          digits += scale;
        }
        if (digits === 0 || digits > MAX_DIGITS) { plain = false; break; }
        const whole = digits <= QUICK_DIGITS ? mantissa : longMantissa(bytes, first, at);
        const size = scale === 0 ? whole : whole / POWERS[scale];
        columns[target][row] = negative ? -size : size;
      } else {
        at = skipUnused(bytes, at, target, delimiter, newline);
        if (at < 0) { plain = false; break; }
      }
      field += 1;
      while (bytes[at] === BLANK) at += 1;
      let next = bytes[at];
      if (next === RETURN && newline !== RETURN && bytes[at + 1] === newline) next = bytes[++at];
      if (next === newline) break;
      if (field >= fields || (!byBlanks && next !== delimiter) || (byBlanks && (bytes[at - 1] !== BLANK))) { plain = false; break; }
      if (!byBlanks) at += 1;
    }
    if (plain && field === fields) {
      at += 1;
      table.rows = row + 1;
    } else {
      let end = start;
      while (bytes[end] !== newline) end += 1;
      unusual(start, end, lines);
      at = end + 1;
    }
    lines += 1;
  }
  return lines;
}

/** The digits of a number of at most 15 of them, whatever stands between; exact in double precision. */
function longMantissa(bytes: Uint8Array, from: number, to: number): number {
  let mantissa = 0;
  for (let at = from; at < to; at += 1) {
    const digit = bytes[at] - 48;
    if (digit >= 0 && digit <= 9) mantissa = mantissa * 10 + digit;
  }
  return mantissa;
}

/** Index past a field that is not needed, or -1 where the row needs the careful reader. */
function skipUnused(bytes: Uint8Array, from: number, target: number, delimiter: number, newline: number): number {
  let at = from;
  let byte = bytes[at];
  if (byte === QUOTE || (target === UNUSED_NUMBER && byte !== delimiter && (byte < PLUS || byte > 57))) return -1;
  while (byte !== delimiter && byte !== newline && byte !== RETURN) {
    if (byte === QUOTE) return -1;
    byte = bytes[++at];
  }
  return at;
}
