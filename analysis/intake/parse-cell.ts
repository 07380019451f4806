export type DecimalMark = '.' | ',';

/** No number, mark or time is written longer; a limit keeps damaged cells from costing time. */
const LONGEST_CELL = 64;

/** What instruments and spreadsheets write where nothing was measured. Compared in lower case, without blanks. */
const MISSING = new Set([
  '', '-', '--', '---', '----', '.', '..', '...', '*', '**', '***', '****', '?', '??', '???', 'x', '/', '—', '–',
  'nan', '+nan', '-nan', 'nan.0', 'qnan', 'snan', '1.#qnan', '-1.#ind', '1.#ind', '1.#inf', '-1.#inf', '1,#qnan', '-1,#ind', 'inf', '+inf', '-inf', 'infinity', '-infinity',
  'na', 'n/a', '#n/a', '#nv', '#n/d', '#value!', '#wert!', '#div/0!', '#ref!', '#num!', '#zahl!', '#valeur!', 'null', '(null)', 'nil', 'none', 'missing', 'void', 'invalid', 'error', 'err',
  'k.a.', 'k.a', 'n.v.', 'n.d.', 'nd', 'n.c.', 's/d', 'b.d.', 'brak', 'н/д', 'нд', '无', 'ovl', 'overload', 'ovr', 'overflow', 'over', '+over', '-over', 'ol', '#####', '########',
]);

export function isMissing(text: string): boolean {
  if (text.length > LONGEST_CELL) return false;
  return MISSING.has(text.trim().toLowerCase());
}

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;
const GROUPED = /^[+-]?[1-9]\d{0,2}(([.,'’ \u00a0\u202f\u2009])\d{3})(\2\d{3})*([.,]\d*)?$/;

/**
 * Number written in a cell under one decimal mark, or null where the text is none. Thousands may be grouped by blank,
 * apostrophe or the mark that is not decimal, in threes only. A trailing percent sign or unit is not part of a number.
 */
export function parseNumber(text: string, decimal: DecimalMark): number | null {
  if (text.length > LONGEST_CELL) return null;
  const trimmed = text.trim().replace(/^\u2212/, '-');
  const plain = decimal === ',' ? trimmed.replace(',', '.') : trimmed;
  if (PLAIN.test(plain) && !(decimal === ',' && trimmed.includes('.'))) return finite(Number(plain));
  const grouped = GROUPED.exec(trimmed);
  if (!grouped || grouped[2] === decimal || (grouped[4] !== undefined && grouped[4][0] !== decimal)) return null;
  return finite(Number(trimmed.replaceAll(grouped[2], '').replace(',', '.')));
}

/** Whether the number in a cell was written with grouped thousands. */
export function isGrouped(text: string, decimal: DecimalMark): boolean {
  if (text.length > LONGEST_CELL) return false;
  const grouped = GROUPED.exec(text.trim());
  return grouped !== null && grouped[2] !== decimal;
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

const CLOCK = /^(?:(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T ]|(\d{1,2})[./-](\d{1,2})[./-](\d{4}) )?(?:(\d{1,2}):)?(\d{1,2}):(\d{1,2})(?:[.,](\d+))?(Z|[+-]\d{2}:?\d{2})?$/;

/** Time of day, date and time, or minutes and seconds, as seconds; null where the text is none. Dates count days from 1970. */
export function parseClock(text: string): number | null {
  if (text.length > LONGEST_CELL) return null;
  const found = CLOCK.exec(text.trim());
  if (!found) return null;
  const [, year, month, day, day2, month2, year2, hours, minutes, seconds, fraction] = found;
  const days = year !== undefined ? Date.UTC(Number(year), Number(month) - 1, Number(day)) / 86_400_000
    : year2 !== undefined ? Date.UTC(Number(year2), Number(month2) - 1, Number(day2)) / 86_400_000 : 0;
  return days * 86_400 + Number(hours ?? 0) * 3600 + Number(minutes) * 60 + Number(seconds) + (fraction === undefined ? 0 : Number(`0.${fraction}`));
}
