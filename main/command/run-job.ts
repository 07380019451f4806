import { Worker } from 'node:worker_threads';
import { EXIT } from './job.ts';
import type { FromWorker, Job } from './job.ts';
import { whyNotWritable, writeOutputs } from './outputs.ts';
import { showProgress } from './progress.ts';

/**
 * Runs a job in a worker thread and writes its outputs, all or none, each replaced as a whole. Resolves to the exit code.
 * Progress goes to standard error when that is a terminal.
 */
export async function runJob(job: Job): Promise<number> {
  const refusal = await whyNotWritable([job.json, job.report].filter((file) => file !== null));
  if (refusal !== null) {
    process.stderr.write(`${refusal}\n`);
    return EXIT.failed;
  }
  const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: job });
  const progress = showProgress(process.stderr);
  const stop = (): void => void worker.terminate().then(() => process.exit(130));
  process.once('SIGINT', stop).once('SIGTERM', stop);
  try {
    const answer = await answerOf(worker, progress.update);
    progress.clear();
    return await finish(answer);
  } finally {
    process.off('SIGINT', stop).off('SIGTERM', stop);
    await worker.terminate();
  }
}

type Answer = Exclude<FromWorker, { kind: 'progress' | 'remark' }>;

function answerOf(worker: Worker, update: (stage: string, share: number) => void): Promise<Answer> {
  return new Promise((resolve) => {
    worker.on('message', (message: FromWorker) => {
      if (message.kind === 'progress') update(message.stage, message.share);
      else if (message.kind === 'remark') process.stderr.write(`${message.text}\n`);
      else resolve(message);
    });
    worker.on('error', (error) => resolve({ kind: 'failed', text: error.stack ?? String(error) }));
    worker.on('exit', () => resolve({ kind: 'failed', text: 'the worker ended without an answer' }));
  });
}

async function finish(answer: Answer): Promise<number> {
  if (answer.kind === 'unusable') {
    process.stderr.write(`${answer.lines.join('\n')}\n`);
    return EXIT.unusable;
  }
  if (answer.kind === 'failed') {
    process.stderr.write(`Strandbook itself failed; please report this with the input that caused it.\n${answer.text}\n`);
    return EXIT.failed;
  }
  await writeOutputs(answer.outputs);
  return EXIT.made;
}
