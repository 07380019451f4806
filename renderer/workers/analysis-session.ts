import type { JournalEntry } from '../../analysis/rope/journal.ts';
import type { Problem } from '../../analysis/rope/problem.ts';
import type { WorkerSource } from '../host/rope-source.ts';
import type { AnalysisView } from './analysis-view.ts';
import type { FromWorker, QuestionName, Questions, ToWorker } from './messages.ts';

/** How an analysis ended. */
export type Ending =
  | { readonly kind: 'opened'; readonly view: AnalysisView }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly message: string };

export interface AnalysisSession {
  readonly ended: Promise<Ending>;
  cancel(): void;
  /** Null: a newer question of the same name made this one pointless. */
  ask<N extends QuestionName>(name: N, question: Questions[N]['question']): Promise<Questions[N]['answer'] | null>;
  close(): void;
}

/** The part of a Worker that a session uses, so that a test can stand in for it. */
export interface WorkerLike {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Start {
  readonly source: WorkerSource;
  readonly journal: readonly JournalEntry[];
  readonly generated: string;
  readonly product: string;
}

/** How long a polite cancel may take before the worker is ended. */
const PATIENCE_MS = 1500;

/** Starts an analysis in a worker of its own. Closing the session frees the worker. */
export function startSession(worker: WorkerLike, start: Start, onProgress: (stage: string, share: number) => void): AnalysisSession {
  const waiting = new Map<number, { resolve: (answer: unknown) => void; reject: (error: Error) => void }>();
  let nextId = 1;
  let over = false;
  let settled = false;
  let settle: (ending: Ending) => void = () => undefined;
  const ended = new Promise<Ending>((resolve) => { settle = resolve; });
  const end = (ending: Ending, keepWorker: boolean) => {
    settled = true;
    if (!over && !keepWorker) worker.terminate();
    over = over || !keepWorker;
    settle(ending);
  };
  worker.onmessage = ({ data }) => {
    if (data.kind === 'progress') onProgress(data.stage, data.share);
    else if (data.kind === 'answer') {
      const asker = waiting.get(data.id);
      waiting.delete(data.id);
      if (data.failure !== null) asker?.reject(new Error(data.failure));
      else asker?.resolve(data.superseded ? null : data.answer);
    } else end(data, data.kind === 'opened');
  };
  worker.onerror = (event) => {
    end({ kind: 'failed', message: event.message || 'the analysis could not be started' }, false);
    for (const { reject } of waiting.values()) reject(new Error('the analysis ended'));
    waiting.clear();
  };
  worker.postMessage({ kind: 'open', ...start });
  return {
    ended,
    cancel() {
      worker.postMessage({ kind: 'cancel' });
      setTimeout(() => { if (!settled) end({ kind: 'cancelled' }, false); }, PATIENCE_MS);
    },
    ask(name, question) {
      if (over) return Promise.resolve(null);
      const id = nextId++;
      worker.postMessage({ kind: 'ask', id, name, question });
      return new Promise((resolve, reject) => waiting.set(id, { resolve: resolve as (answer: unknown) => void, reject }));
    },
    close() {
      if (!over) worker.terminate();
      over = true;
      for (const { resolve } of waiting.values()) resolve(null);
      waiting.clear();
    },
  };
}
