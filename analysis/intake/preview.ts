import type { Problem } from '../rope/problem.ts';
import { UnusableInput } from '../rope/problem.ts';
import type { RunColumns } from '../rope/record.ts';
import { parseClock, parseNumber } from './parse-cell.ts';
import { dialectOf } from './read-run.ts';
import { headerFingerprint } from './header-fingerprint.ts';
import { recogniseColumns } from './recognise-columns.ts';
import type { Understanding } from './run.ts';

/** What an import screen shows of a file before it is read: enough to see whether it was understood, nothing to compute with. */
export interface RunPreview {
  readonly understanding: Understanding;
  /** Names and units of the columns, and the first rows as written. */
  readonly names: readonly string[];
  readonly units: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Lines above the table. */
  readonly preamble: readonly string[];
  /** Lowest and highest value of each column in each of a few hundred stretches of the first rows; null for columns without numbers. */
  readonly strips: readonly (Strip | null)[];
  /** What stands in the way of reading it as it is understood. */
  readonly problems: readonly Problem[];
  /** Stands for files of this make, to look up a recipe by. */
  readonly fingerprint: string;
}

export interface Strip {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

const SHOWN_ROWS = 40;
const STRIP_POINTS = 300;

/** Preview from the first part of a file (HEAD_BYTES are plenty). Either a preview or the problems that prevent one. */
export function previewRun(firstBytes: Uint8Array, file: string, columns?: RunColumns): RunPreview | { readonly problems: readonly Problem[] } {
  try {
    const dialect = dialectOf(firstBytes, file);
    const recognition = recogniseColumns(dialect, columns, file);
    return {
      understanding: {
        encoding: dialect.encoding.encoding, delimiter: dialect.delimiter, decimalMark: dialect.decimal, headerLine: dialect.headerLine,
        preambleLines: dialect.preamble.length, columns: recognition.guesses, decisions: dialect.decisions,
      },
      names: dialect.names, units: dialect.units, preamble: dialect.preamble, rows: dialect.sample.slice(0, SHOWN_ROWS),
      strips: dialect.names.map((_, index) => stripOf(dialect.sample.map((row) => row[index] ?? ''), dialect.decimal)),
      problems: recognition.problems, fingerprint: headerFingerprint(dialect.names, dialect.delimiter),
    };
  } catch (error) {
    if (error instanceof UnusableInput) return { problems: error.problems };
    throw error;
  }
}

function stripOf(cells: readonly string[], decimal: '.' | ','): Strip | null {
  const low: number[] = [];
  const high: number[] = [];
  const width = Math.max(1, Math.ceil(cells.length / STRIP_POINTS));
  for (let from = 0; from < cells.length; from += width) {
    let least = Infinity;
    let most = -Infinity;
    for (let i = from; i < Math.min(cells.length, from + width); i += 1) {
      const value = parseNumber(cells[i], decimal) ?? parseClock(cells[i]);
      if (value === null) continue;
      if (value < least) least = value;
      if (value > most) most = value;
    }
    if (least <= most) {
      low.push(least);
      high.push(most);
    }
  }
  return low.length === 0 ? null : { low, high };
}

/** A named choice of columns, remembered for an instrument: the next file with the same header needs no click. */
export interface Recipe {
  readonly name: string;
  readonly fingerprint: string;
  readonly columns: RunColumns;
}

/** Recipe for the next files like this one. Names are kept as they stand in the header. */
export function makeRecipe(name: string, preview: RunPreview, columns: RunColumns): Recipe {
  return { name, fingerprint: preview.fingerprint, columns };
}

/** The newest recipe that fits a file, or null. A header without names fits none: numbers alone do not tell instruments apart. */
export function recipeFor(recipes: readonly Recipe[], preview: RunPreview): Recipe | null {
  if (preview.understanding.headerLine === null) return null;
  return recipes.findLast((recipe) => recipe.fingerprint === preview.fingerprint) ?? null;
}
