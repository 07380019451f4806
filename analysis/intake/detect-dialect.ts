import type { Dialect, TextLine } from './dialect.ts';
import type { EncodingGuess } from './detect-encoding.ts';
import { findHeader } from './find-header.ts';
import type { DecimalMark } from './parse-cell.ts';
import { isGrouped, isMissing, parseClock, parseNumber } from './parse-cell.ts';
import { splitLine } from './split-line.ts';

const COMMENT = /^\s*(#|%|\/\/|!|;;|--\s|\*\s)/;
/** Lines looked at; enough to see past a long preamble, few enough to be quick. */
const SNIFFED_LINES = 400;
/** Rows kept for judging the shape of columns: at 1-5 mm a sample some ten metres of rope. */
const SAMPLE_ROWS = 4000;

interface Candidate {
  readonly delimiter: string;
  readonly decimal: DecimalMark;
}

const CANDIDATES: readonly Candidate[] = [';', '\t', ',', '|', ' '].flatMap((delimiter) => (['.', ','] as const).map((decimal) => ({ delimiter, decimal })));

interface Trial extends Candidate {
  readonly fieldCount: number;
  /** Rows of that many fields of which all but a few are numbers. */
  readonly rows: number;
  readonly grouped: number;
  readonly first: number;
}

export function isComment(text: string): boolean {
  return COMMENT.test(text);
}

/** Finds delimiter, decimal mark, header and first row of numbers; null where no table of two or more columns is found. */
export function detectDialect(text: string, encoding: EncodingGuess): Dialect | null {
  const newline = text.includes('\n') ? '\n' : '\r';
  const lines = logicalLines(text, newline);
  const stated = /^\s*"?sep=(.|\t)"?\s*$/i.exec(lines[0]?.text ?? '')?.[1];
  const looked = lines.slice(0, SNIFFED_LINES);
  const trials = CANDIDATES.filter((each) => (stated === undefined || each.delimiter === stated) && looked.some((line) => line.text.includes(each.delimiter) || (each.delimiter === ' ' && line.text.includes('\t')))).map((each) => tryCandidate(looked, each)).filter((trial) => trial.rows > 0);
  if (trials.length === 0) return null;
  const best = trials.reduce((a, b) => (better(b, a) ? b : a));
  const header = findHeader(lines, best.first, best.delimiter, best.fieldCount);
  const sample: (readonly string[])[] = [];
  for (let i = best.first; i < lines.length && sample.length < SAMPLE_ROWS; i += 1) {
    const cells = isComment(lines[i].text) ? [] : splitLine(lines[i].text, best.delimiter);
    if (cells.length === best.fieldCount && judgeCells(cells, best.decimal).numeric) sample.push(cells);
  }
  const decisions = [
    `${encoding.reason}`,
    `fields parted by ${nameOf(best.delimiter)}, decimal ${best.decimal === '.' ? 'point' : 'comma'}: ${best.rows} of the first ${looked.length} lines then hold ${best.fieldCount} fields of numbers`,
    ...(best.grouped > 0 ? ['thousands are grouped'] : []),
    header.decision,
  ];
  return {
    encoding, newline, delimiter: best.delimiter, decimal: best.decimal, fieldCount: best.fieldCount,
    headerLine: header.headerLine, firstDataLine: lines[best.first].line, names: header.names, units: header.units,
    preamble: header.preamble, decisions,
    sample,
  };
}

function nameOf(delimiter: string): string {
  return { ';': 'semicolon', ',': 'comma', '\t': 'tab', '|': 'bar', ' ': 'blanks' }[delimiter] ?? delimiter;
}

/** More rows of numbers win; then no grouped thousands; then the simpler reading. */
function better(a: Trial, b: Trial): boolean {
  if (Math.abs(a.rows - b.rows) > 0.02 * Math.max(a.rows, b.rows)) return a.rows > b.rows;
  if ((a.grouped > 0) !== (b.grouped > 0)) return a.grouped === 0;
  return a.fieldCount > b.fieldCount;
}

function tryCandidate(lines: readonly TextLine[], { delimiter, decimal }: Candidate): Trial {
  const counts = new Map<number, number>();
  const judged = lines.map((line) => judgeRow(line.text, delimiter, decimal));
  for (const row of judged) if (row.numeric) counts.set(row.fields, (counts.get(row.fields) ?? 0) + 1);
  let fieldCount = 0;
  for (const [fields, rows] of counts) if (fields >= 2 && rows > (counts.get(fieldCount) ?? 0)) fieldCount = fields;
  const fits = (row: Row) => row.numeric && row.fields === fieldCount;
  return {
    delimiter, decimal, fieldCount, rows: counts.get(fieldCount) ?? 0,
    grouped: judged.filter((row) => fits(row) && row.grouped).length,
    first: firstOfBlock(judged.map(fits)),
  };
}

/** The first fitting row that is followed by more of them: a lone row of numbers in a preamble is not the body. */
function firstOfBlock(fits: readonly boolean[]): number {
  for (let i = 0; i < fits.length; i += 1) {
    if (fits[i] && (fits[i + 1] || fits[i + 2] || i >= fits.length - 2)) return i;
  }
  return Math.max(0, fits.indexOf(true));
}

interface Row {
  readonly fields: number;
  readonly numeric: boolean;
  readonly grouped: boolean;
}

/** A row of the body: at least two numbers, and no more than a quarter of the other cells (rounded up) may be text, such as a remark. */
function judgeRow(text: string, delimiter: string, decimal: DecimalMark): Row {
  if (text.length > 10_000 || isComment(text)) return { fields: 0, numeric: false, grouped: false };
  return judgeCells(splitLine(text, delimiter), decimal);
}

function judgeCells(cells: readonly string[], decimal: DecimalMark): Row {
  let numbers = 0;
  let words = 0;
  let grouped = false;
  for (const cell of cells) {
    if (parseNumber(cell, decimal) !== null) {
      numbers += 1;
      if (isGrouped(cell, decimal)) grouped = true;
    } else if (parseClock(cell) !== null) numbers += 1;
    else if (!isMissing(cell)) words += 1;
  }
  return { fields: cells.length, numeric: numbers >= 2 && words <= Math.ceil(cells.length / 4) && (words === 0 || numbers > words), grouped };
}

/** Lines of text; a line with an open quote goes on in the next, for a few lines at most. */
export function logicalLines(text: string, newline: '\n' | '\r'): TextLine[] {
  const raw = text.split(newline);
  if (raw.at(-1) === '') raw.pop();
  const lines: TextLine[] = [];
  for (let i = 0; i < raw.length; i += 1) {
    let joined = raw[i];
    const line = i + 1;
    if (joined.includes('"') && hasOddQuotes(joined)) {
      const close = raw.slice(i + 1, i + 6).findIndex(hasOddQuotes);
      if (close >= 0) {
        joined = raw.slice(i, i + close + 2).join(' ');
        i += close + 1;
      }
    }
    lines.push({ line, text: joined.endsWith('\r') ? joined.slice(0, -1) : joined });
  }
  return lines;
}

function hasOddQuotes(text: string): boolean {
  return (text.split('"').length - 1) % 2 === 1;
}
