import { createHash as nodeHash } from 'node:crypto';
import { readRun } from '../../analysis/intake/read-run.ts';
import type { Run, RunRequest } from '../../analysis/intake/run.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import type { Problem } from '../../analysis/rope/problem.ts';

export const createHash = () => {
  const hash = nodeHash('sha256');
  return { update: (bytes: Uint8Array) => { hash.update(bytes); }, digest: () => hash.digest('hex') };
};

export function runRequest(bytes: RunRequest['bytes'] | string, more: Partial<RunRequest> = {}): RunRequest {
  return { file: 'scan.csv', bytes: typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes, size: null, columns: undefined, direction: undefined, ropeLength: null, metallicArea: null, ropeDiameter: null, ...more };
}

/** The run of a scan; throws with its problems where there is none. */
export async function runOf(bytes: RunRequest['bytes'] | string, more: Partial<RunRequest> = {}): Promise<Run> {
  const result = await readRun(runRequest(bytes, more), { checkpoint: noCheckpoint, createHash });
  if ('problems' in result) throw new Error(result.problems.map((each) => `${each.line} ${each.column}: ${each.what}`).join('\n'));
  return result.run;
}

export async function problemsOf(bytes: RunRequest['bytes'] | string, more: Partial<RunRequest> = {}): Promise<readonly Problem[]> {
  const result = await readRun(runRequest(bytes, more), { checkpoint: noCheckpoint, createHash });
  return 'problems' in result ? result.problems : [];
}
