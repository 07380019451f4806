/// <reference lib="webworker" />
import '../no-eval.ts';
import { assess } from '../../analysis/assess.ts';
import type { Analysis } from '../../analysis/assess.ts';
import { Cancelled, UnusableInput } from '../../analysis/rope/problem.ts';
import { answerer } from './answer.ts';
import { createHash } from './create-hash.ts';
import type { FromWorker, QuestionName, ToWorker } from './messages.ts';
import { newestWins } from './newest-wins.ts';
import { politeCheckpoint, turnOfLoop } from './polite-checkpoint.ts';
import { folderOf } from './worker-folder.ts';
import { viewOf } from './analysis-view.ts';

/** One worker holds one analysis: a new one is started for each, and the old one answers until the new one is ready. */
const post = (message: FromWorker, transfer: Transferable[] = []) => self.postMessage(message, { transfer });
let cancelled = false;
let answer: ReturnType<typeof answerer> | null = null;

const ask = newestWins<unknown>(
  async ({ id, name, question }) => {
    try {
      if (answer === null) throw new Error('no analysis is open');
      const { value, transfer } = await answer(name as QuestionName, question);
      post({ kind: 'answer', id, answer: value, superseded: false, failure: null }, transfer);
    } catch (error) {
      post({ kind: 'answer', id, answer: null, superseded: false, failure: messageOf(error) });
    }
  },
  ({ id }) => post({ kind: 'answer', id, answer: null, superseded: true, failure: null }),
  (task) => void turnOfLoop().then(task),
);

async function open(message: Extract<ToWorker, { kind: 'open' }>): Promise<void> {
  const checkpoint = politeCheckpoint(() => cancelled, (stage, share) => post({ kind: 'progress', stage, share }));
  try {
    const analysis: Analysis = await assess(folderOf(message.source), { generated: message.generated, product: message.product, createHash, checkpoint, journal: message.journal });
    const view = viewOf(analysis);
    answer = answerer(analysis);
    post({ kind: 'opened', view });
  } catch (error) {
    if (error instanceof Cancelled) post({ kind: 'cancelled' });
    else if (error instanceof UnusableInput) post({ kind: 'refused', problems: error.problems });
    else post({ kind: 'failed', message: messageOf(error) });
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'cancel') cancelled = true;
  else if (data.kind === 'open') void open(data);
  else ask({ id: data.id, name: data.name, question: data.question });
};
