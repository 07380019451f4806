import Papa from 'papaparse';
import type { Problem } from '../rope/problem.ts';
import { leavesFolder } from '../rope/inside-folder.ts';
import { decodeText } from './decode-text.ts';
import { splitUnit, LENGTH_UNITS, normaliseUnit } from './column-words.ts';
import { parseNumber } from './parse-cell.ts';
import type { DecimalMark } from './parse-cell.ts';
import { visualKindOf } from './visual-kinds.ts';
import type { VisualNote } from './visual-note.ts';

type Field = 'position' | 'from' | 'to' | 'kind' | 'value' | 'unit' | 'severity' | 'photo' | 'remark';

const FIELD_WORDS: readonly (readonly [Field, RegExp])[] = [
  ['from', /^(from|start|begin|von|de|da|od|desde|от|从)$/i],
  ['to', /^(to|end|until|bis|à|a|do|hasta|до|到)$/i],
  ['position', /^(pos(ition)?|at|location|chainage|distance|posizione|posici[oó]n|stelle|ort|pozycja|позиция|位置)$/i],
  ['kind', /^(kind|type|finding|observation|defect|art|befund|genre|tipo|rodzaj|вид|类型|种类)$/i],
  ['value', /^(value|count|number|reading|wert|anzahl|valeur|valore|valor|warto[sś][cć]|значение|数值|值)$/i],
  ['unit', /^(unit|units|einheit|unit[eé]|unit[aà]|unidad|jednostka|единица|单位)$/i],
  ['severity', /^(severity|grade|rating|schwere|grad|gravit[eé]|gravit[aà]|severidad|stopie[nń]|степень|等级|程度)$/i],
  ['photo', /^(photo|photos|picture|image|foto|bild|фото|照片)$/i],
  ['remark', /^(remark|remarks|comment|note|notes|bemerkung|remarque|osservazione|observaci[oó]n|uwaga|uwagi|примечание|备注)$/i],
];

/**
 * Reads a file of visual notes: a header and one observation a row, comma, semicolon or tab, decimal point or comma.
 * A row that cannot be placed or has no kind becomes a problem with its line; the other rows are still returned.
 * A kind that the program does not know is kept as written, as 'other'.
 */
export function readNotes(bytes: Uint8Array, file: string, inspectionId: string): { notes: VisualNote[]; problems: Problem[] } {
  const problem = (line: number | null, column: string | null, what: string, remedy: string): Problem => ({ file, line, column, what, remedy });
  if (bytes.length === 0) return { notes: [], problems: [problem(null, null, 'the file is empty', 'write a header and notes into it, or take it out of the record')] };
  const decoded = decodeText(bytes);
  if (decoded === null) return { notes: [], problems: [problem(null, null, 'the file is binary, not text', 'save the notes as CSV')] };
  const rows = parseRows(decoded.text);
  const header = rows.findIndex(({ cells }) => cells.filter((cell) => fieldOf(cell) !== null).length >= 2);
  if (header < 0) return { notes: [], problems: [problem(rows[0]?.line ?? 1, null, 'no header with position_m (or from_m, to_m) and kind is found', 'make position_m,kind,value,unit,severity,photo,remark the first row')] };
  const columns = columnsOf(rows[header].cells);
  const lacking = [...(columns.position === undefined && (columns.from === undefined || columns.to === undefined) ? ['position_m, or from_m and to_m'] : []), ...(columns.kind === undefined ? ['kind'] : [])];
  if (lacking.length > 0) return { notes: [], problems: lacking.map((each) => problem(rows[header].line, null, `the header has no ${each}`, 'add the column')) };
  const body = rows.slice(header + 1).filter(({ cells }) => cells.some((cell) => cell.trim() !== '') && !/^\s*#/.test(cells[0]));
  const decimal = decimalOf(body.map((row) => row.cells), columns);
  const notes: VisualNote[] = [];
  const problems: Problem[] = [];
  for (const { line, cells } of body) {
    const read = readRow(cells, columns, decimal);
    if (read.faults.length > 0) problems.push(...read.faults.map(({ column, what, remedy }) => problem(line, column, what, remedy)));
    else for (const value of read.values) notes.push({ ...read.note, value, id: `${inspectionId}-note-${notes.length + 1}`, inspection: inspectionId });
  }
  return { notes, problems };
}

type Columns = Partial<Record<Field, number>> & { metres: number };

function parseRows(text: string): { line: number; cells: string[] }[] {
  const rows: { line: number; cells: string[] }[] = [];
  let line = 1;
  let from = 0;
  Papa.parse<string[]>(text, {
    skipEmptyLines: false, delimitersToGuess: [',', ';', '\t', '|'],
    step: ({ data, meta }) => {
      rows.push({ line, cells: data });
      for (let i = from; i < meta.cursor; i += 1) if (text[i] === '\n' || (text[i] === '\r' && text[i + 1] !== '\n')) line += 1;
      from = meta.cursor;
    },
  });
  return rows;
}

function fieldOf(cell: string): Field | null {
  const { name } = splitUnit(cell.trim());
  return FIELD_WORDS.find(([, words]) => words.test(name.trim()))?.[0] ?? null;
}

function columnsOf(cells: readonly string[]): Columns {
  const columns: Columns = { metres: 1 };
  cells.forEach((cell, index) => {
    const field = fieldOf(cell);
    if (field === null || columns[field] !== undefined) return;
    columns[field] = index;
    if (field === 'position' || field === 'from') columns.metres = LENGTH_UNITS[normaliseUnit(splitUnit(cell).unit)] ?? 1;
  });
  return columns;
}

/** A comma counts as decimal mark where any position is written with one. */
function decimalOf(rows: readonly (readonly string[])[], columns: Columns): DecimalMark {
  const places = [columns.position, columns.from, columns.to].filter((index) => index !== undefined);
  return rows.some((cells) => places.some((index) => /^\s*-?\d+,\d+\s*$/.test(cells[index] ?? ''))) ? ',' : '.';
}

/** Two readings in one cell: `31.9/32.1`, `31,9 x 32,1`, `31.9 and 32.1`. */
const PAIR = /^(\d+(?:[.,]\d+)?)\s*(?:\/|x|×|\+|&|and|und|et|e)\s*(\d+(?:[.,]\d+)?)$/i;

interface Fault {
  readonly column: string;
  readonly what: string;
  readonly remedy: string;
}

/** A note of one row with its values: one or none, or two diameters measured at right angles, which are a note each. */
function readRow(cells: readonly string[], columns: Columns, decimal: DecimalMark): { note: Omit<VisualNote, 'id' | 'inspection' | 'value'>; values: (number | null)[]; faults: Fault[] } {
  const cell = (field: Field) => (columns[field] === undefined ? '' : (cells[columns[field]] ?? '').trim());
  const faults: Fault[] = [];
  const number = (field: Field, text = cell(field)): number | null => {
    if (text === '') return null;
    const value = parseNumber(text, decimal) ?? parseNumber(text, decimal === ',' ? '.' : ',');
    if (value === null) faults.push({ column: field, what: `${JSON.stringify(text)} is not a number`, remedy: field === 'value' ? 'put words into remark or severity' : 'give the place in metres' });
    return value;
  };
  const position = number('position');
  const from = number('from') ?? position;
  const to = number('to') ?? position ?? from;
  const kind = cell('kind');
  const pair = visualKindOf(kind) === 'diameter' ? PAIR.exec(cell('value')) : null;
  const values = pair === null ? [number('value')] : [number('value', pair[1]), number('value', pair[2])];
  const photo = cell('photo') || null;
  if (faults.length === 0 && (from === null || to === null)) faults.push({ column: columns.position === undefined ? 'from_m' : 'position_m', what: 'the note has no position', remedy: 'say where on the rope it was seen' });
  if (from !== null && to !== null && from > to) faults.push({ column: 'from_m', what: `from ${from} lies beyond to ${to}`, remedy: 'swap them' });
  if (kind === '') faults.push({ column: 'kind', what: 'the note has no kind', remedy: 'say what was seen, such as broken-wires or diameter' });
  const leaves = photo === null ? null : leavesFolder(photo);
  if (leaves !== null) faults.push({ column: 'photo', what: leaves, remedy: 'name the photo from the photo folder' });
  const scaled = (metres: number | null) => (metres ?? 0) * columns.metres;
  return { faults, values, note: { from: scaled(from), to: scaled(to), kind: visualKindOf(kind), kindAsWritten: kind, unit: cell('unit'), severity: cell('severity'), photo, remark: cell('remark') } };
}
