/** A report as content without looks: the page and the printed file both draw it. Text only, never markup. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone: 'plain' | 'caution' | 'verdict' }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly tone: 'plain' | 'caution' }
  | { readonly kind: 'facts'; readonly rows: readonly { readonly label: string; readonly value: string; readonly note: string }[] }
  | Table
  | StripFigure
  | { readonly kind: 'signature'; readonly roles: readonly string[] };

export interface Table {
  readonly kind: 'table';
  readonly caption: string;
  readonly columns: readonly { readonly title: string; readonly numeric: boolean }[];
  readonly rows: readonly (readonly string[])[];
  /** A sentence below each row, over its whole width: a column of sentences would be too narrow to read. */
  readonly below?: readonly string[];
  /** What an empty table means, so that silence is never read as soundness. */
  readonly whenEmpty: string;
}

/** Extremes of one channel per column of the drawing, by rope position; gaps stay gaps. For drawing only. */
export interface StripFigure {
  readonly kind: 'strip';
  readonly caption: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly lines: readonly { readonly label: string; readonly columns: readonly { readonly at: number; readonly low: number; readonly high: number }[] }[];
  readonly notInspected: readonly { readonly from: number; readonly to: number }[];
  readonly marks: readonly { readonly at: number; readonly label: string }[];
}

export interface ReportDocument {
  readonly title: string;
  readonly subtitle: string;
  readonly synthetic: boolean;
  readonly generated: string;
  readonly blocks: readonly Block[];
}
