import type { Interval } from '../rope/interval.ts';
import type { Problem } from '../rope/problem.ts';
import type { QualityFinding } from '../rope/finding.ts';
import type { RunColumns } from '../rope/record.ts';
import type { Trace } from '../rope/trace.ts';
import type { ScanClock } from './photos/scan-clock.ts';

/** What intake understood of a file and why, one line per decision, for the import screen and the report. */
export interface Understanding {
  readonly encoding: string;
  readonly delimiter: string;
  readonly decimalMark: '.' | ',';
  readonly headerLine: number | null;
  readonly preambleLines: number;
  readonly columns: readonly ColumnGuess[];
  readonly decisions: readonly string[];
}

export interface ColumnGuess {
  readonly role: 'position' | 'lma' | 'lf' | 'speed' | 'time' | 'unused';
  readonly index: number;
  readonly name: string;
  readonly unit: string;
  readonly reason: string;
  /** 0..1; below 0.5 the program asks instead of going on. */
  readonly certainty: number;
}

/**
 * What the direction of loss rests on. `fixed`: stated, or the column is an area that is left. `written` is the factor's sign
 * that was applied. `evidence` (percent metres) is positive where long lengths stand off to the positive side as written.
 */
export interface LossSignBasis {
  readonly fixed: boolean;
  readonly written: 1 | -1;
  readonly evidence: number;
}

/** One scan file, read, cleaned and put on an even grid of its own positions. */
export interface Run {
  readonly file: string;
  readonly sha256: string;
  readonly rows: number;
  readonly rowsRejected: number;
  readonly understanding: Understanding;
  readonly trace: Trace<'measured'>;
  /** True where the file's own positions fell with time; the trace's positions always rise. */
  readonly positionsFell: boolean;
  /** Stated in the record, or null: to be found out by alignment. */
  readonly statedDirection: 'forward' | 'reverse' | null;
  readonly covered: readonly Interval<'measured'>[];
  readonly quality: readonly QualityFinding<'measured'>[];
  /** How the direction of loss was told; left out where the run has no LMA. */
  readonly lossSign?: LossSignBasis;
  /** When the head stood where; only where it was asked for and the file tells the time. */
  readonly clock?: ScanClock;
  /** A run below the floor of quality: kept for the record, never used for a judgement. */
  readonly rejected: boolean;
}

/** Bytes of one file, whole or in pieces. */
export type Bytes = Uint8Array | AsyncIterable<Uint8Array>;

export interface RunRequest {
  readonly file: string;
  readonly bytes: Bytes;
  /** Total size where it is known, for progress. */
  readonly size: number | null;
  readonly columns: RunColumns | undefined;
  readonly direction: 'forward' | 'reverse' | undefined;
  /** Context that helps to judge the run. */
  /** Length of the rope at the date of the inspection, m. */
  readonly ropeLength: number | null;
  /** True: an endless rope, on which a run may go past its own start. */
  readonly loop?: boolean;
  /** ISO date of the inspection where its photos are to be held against the clock of the scan; left out: no clock is read. */
  readonly clockOn?: string;
  readonly metallicArea: number | null;
  readonly ropeDiameter: number | null;
}

/** Either a run or the reasons why there is none. Never both, never neither. */
export type RunResult = { readonly run: Run } | { readonly problems: readonly Problem[] };
