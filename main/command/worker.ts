import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { assess } from '../../analysis/assess.ts';
import type { Analysis } from '../../analysis/assess.ts';
import { buildReport } from '../../analysis/report/build-report.ts';
import { formatProblem, UnusableInput } from '../../analysis/rope/problem.ts';
import { sectionHistory } from '../../analysis/section/section-history.ts';
import { JOURNAL_FILE, readJournal } from '../folder/journal-file.ts';
import { openRopeFolder } from '../folder/rope-folder.ts';
import { nodeHasher } from '../hasher.ts';
import { productName } from '../product.ts';
import { renderReport } from '../report/html.ts';
import type { FromWorker, Job } from './job.ts';

/** Runs one job off the command's own thread, so that it can report and be stopped at any time. */
const job = workerData as Job;
const send = (message: FromWorker): void => parentPort!.postMessage(message);

try {
  const folder = await openRopeFolder(job.folder);
  const { entries, remarks } = await readJournal(folder.path);
  for (const remark of remarks) send({ kind: 'remark', text: remark });
  const analysis = await assess(folder, {
    generated: new Date().toISOString(), product: productName(), createHash: nodeHasher, journal: entries,
    checkpoint: async (stage, share) => send({ kind: 'progress', stage, share }),
  });
  const outputs = await outputsOf(analysis);
  const inputs = ['record.json', JOURNAL_FILE, ...analysis.assessment.files.map((each) => each.file)].map((name) => join(folder.path, name));
  const clash = outputs.find((each) => inputs.includes(realPath(each.file)));
  if (clash) send({ kind: 'unusable', lines: [`${clash.file}: this is an input of the assessment and is never overwritten; name another file for the output`] });
  else send({ kind: 'done', outputs });
} catch (error) {
  if (error instanceof UnusableInput) send({ kind: 'unusable', lines: error.problems.map(formatProblem) });
  else send({ kind: 'failed', text: error instanceof Error ? (error.stack ?? error.message) : String(error) });
}

/** The file itself where a link or another spelling names it. */
function realPath(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return file;
  }
}

async function outputsOf(analysis: Analysis): Promise<{ file: string; text: string }[]> {
  const answer = job.section === null ? analysis.assessment : await sectionHistory(analysis, job.section);
  const outputs = job.json === null ? [] : [{ file: job.json, text: `${JSON.stringify(answer, null, 1)}\n` }];
  return job.report === null ? outputs : [...outputs, { file: job.report, text: renderReport(buildReport(analysis)) }];
}
