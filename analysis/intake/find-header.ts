import type { TextLine } from './dialect.ts';
import { splitLine } from './split-line.ts';
import { looksLikeUnit, splitUnit } from './column-words.ts';

interface Header {
  readonly headerLine: number | null;
  readonly names: readonly string[];
  readonly units: readonly string[];
  readonly preamble: readonly string[];
  readonly decision: string;
}

/** How far above the numbers a header is looked for: blank lines, a row of units and a comment may lie between. */
const REACH = 6;
const LONGEST_HEADER = 20_000;

/** Finds names and units in the lines above the first row of numbers (index `first` of `lines`). */
export function findHeader(lines: readonly TextLine[], first: number, delimiter: string, fieldCount: number): Header {
  let units: string[] | null = null;
  for (let i = first - 1; i >= Math.max(0, first - REACH); i -= 1) {
    const cells = headerCells(lines[i].text, delimiter, fieldCount);
    if (cells === null) continue;
    const words = cells.filter((cell) => cell !== '');
    if (words.length === 0) continue;
    if (units === null && words.every(looksLikeUnit)) {
      units = cells.map(stripBrackets);
      continue;
    }
    const parted = cells.map(splitUnit);
    return {
      headerLine: lines[i].line, names: cells,
      units: parted.map(({ unit }, column) => unit || units?.[column] || ''),
      preamble: lines.slice(0, i).map((line) => line.text),
      decision: `names of the columns in line ${lines[i].line}${units ? ', units in the line below' : ''}`,
    };
  }
  const names = Array.from({ length: fieldCount }, (_, column) => `column ${column + 1}`);
  return {
    headerLine: null, names, units: units ?? names.map(() => ''), preamble: lines.slice(0, first).map((line) => line.text),
    decision: 'no line with names of columns: the columns are judged by their numbers',
  };
}

/** Cells of a line that may be a header: as many as the rows have, none a number. A comment mark before the names is dropped. */
function headerCells(text: string, delimiter: string, fieldCount: number): string[] | null {
  if (text.length > LONGEST_HEADER) return null;
  const bare = text.replace(/^\s*(#+|%+|\/\/|!)\s*/, '');
  for (const separator of delimiter === ' ' ? [' ', '\t', ';', ','] : [delimiter]) {
    const cells = joinBrackets(splitLine(bare, separator).map((cell) => cell.trim()), separator, fieldCount);
    while (cells.length > fieldCount && cells.at(-1) === '') cells.pop();
    while (cells.length < fieldCount && cells.length >= fieldCount - 1 && fieldCount > 2) cells.push('');
    if (cells.length !== fieldCount) continue;
    if (cells.some((cell) => /^[+-]?[\d.,]+$/.test(cell))) continue;
    return cells;
  }
  return null;
}

/** Where blanks part the cells, `Position [m]` comes as two: the bracket goes back to its name. */
function joinBrackets(cells: string[], separator: string, fieldCount: number): string[] {
  if (separator !== ' ' || cells.length <= fieldCount) return cells;
  const joined: string[] = [];
  for (const cell of cells) {
    if (/^[[({]/.test(cell) && joined.length > 0) joined[joined.length - 1] += ` ${cell}`;
    else joined.push(cell);
  }
  return joined;
}

function stripBrackets(cell: string): string {
  return cell.replace(/^[[({<]\s*|\s*[\])}>]$/g, '');
}
