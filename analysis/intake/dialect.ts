import type { DecimalMark } from './parse-cell.ts';
import type { EncodingGuess } from './detect-encoding.ts';

/** How one file is written, found from its first part. Lines count from 1. */
export interface Dialect {
  readonly encoding: EncodingGuess;
  /** ';', ',', '|', tab, or ' ' for runs of blanks. */
  readonly delimiter: string;
  readonly decimal: DecimalMark;
  /** Line end that separates rows; a carriage return before a line feed is trimmed. */
  readonly newline: '\n' | '\r';
  readonly headerLine: number | null;
  readonly firstDataLine: number;
  readonly names: readonly string[];
  /** Units of a row of units or of the names' brackets; '' where none. */
  readonly units: readonly string[];
  readonly fieldCount: number;
  /** The lines above the header, for hints such as a unit or an instrument's name. */
  readonly preamble: readonly string[];
  readonly decisions: readonly string[];
  /** Cells of the first rows as written, for judging shapes and for the import screen. */
  readonly sample: readonly (readonly string[])[];
}

/** A logical line: quoted cells may hold line ends. */
export interface TextLine {
  readonly line: number;
  readonly text: string;
}
