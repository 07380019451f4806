import type { Problem } from '../../analysis/rope/problem.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';
import type { DisplayPoints } from '../../analysis/display/display-points.ts';
import type { Reading } from '../../analysis/display/reading.ts';
import type { SectionHistory } from '../../analysis/section/section.ts';
import type { ReportDocument } from '../../analysis/report/document.ts';
import type { WorkerSource } from '../host/rope-source.ts';
import type { AnalysisView } from './analysis-view.ts';

/** What the page asks of the analysis worker. Positions in metres. */
export interface Questions {
  /** What to draw between two rope positions, for every inspection. */
  strips: { question: { from: number; to: number; pixels: number }; answer: InspectionStrips[] };
  /** Later minus earlier loss, both averaged over `average` metres. */
  difference: { question: { earlier: string; later: string; average: number; from: number; to: number; pixels: number }; answer: DisplayPoints | null };
  /** One file in its own positions, for the intake screen. */
  run: { question: { file: string; pixels: number }; answer: RunStrips | null };
  /** Every inspection's samples at one rope position. */
  reading: { question: { at: number }; answer: InspectionReading[] };
  /** What every inspection shows at one place. */
  section: { question: { at: number; halfWidth: number; date: string | null }; answer: SectionHistory };
  report: { question: Record<string, never>; answer: ReportDocument };
}

export type QuestionName = keyof Questions;

export interface InspectionStrips {
  readonly inspection: string;
  readonly loss: DisplayPoints | null;
  readonly fault: DisplayPoints | null;
}

export interface RunStrips {
  readonly loss: DisplayPoints | null;
  readonly fault: DisplayPoints | null;
}

export interface InspectionReading extends Reading {
  readonly inspection: string;
}

export type ToWorker =
  | { readonly kind: 'open'; readonly source: WorkerSource; readonly journal: readonly JournalEntry[]; readonly generated: string; readonly product: string }
  | { readonly kind: 'cancel' }
  | { readonly kind: 'ask'; readonly id: number; readonly name: QuestionName; readonly question: unknown };

export type FromWorker =
  | { readonly kind: 'progress'; readonly stage: string; readonly share: number }
  | { readonly kind: 'opened'; readonly view: AnalysisView }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly message: string }
  /** `superseded`: a newer question of the same name came before this one was looked at. */
  | { readonly kind: 'answer'; readonly id: number; readonly answer: unknown; readonly superseded: boolean; readonly failure: string | null };
