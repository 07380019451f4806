import type { SectionQuestion } from '../../analysis/section/section-history.ts';

/** What a command asks of its worker. */
export interface Job {
  readonly folder: string;
  readonly json: string | null;
  readonly report: string | null;
  readonly section: SectionQuestion | null;
}

export type FromWorker =
  | { readonly kind: 'progress'; readonly stage: string; readonly share: number }
  | { readonly kind: 'remark'; readonly text: string }
  | { readonly kind: 'done'; readonly outputs: readonly { readonly file: string; readonly text: string }[] }
  | { readonly kind: 'unusable'; readonly lines: readonly string[] }
  | { readonly kind: 'failed'; readonly text: string };

/** Exit codes that callers rely on. */
export const EXIT = { made: 0, failed: 1, unusable: 2 } as const;
