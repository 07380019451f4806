import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ensureBundle } from '../../build/bundle.mjs';
import { folderWith, shortRecord, shortScan } from '../support/rope-folder-on-disk.ts';

const LOCK = '.strandbook-lock';

/** Starts the real program and speaks to it as the page would. */
async function started(folder: string) {
  const child = spawn(process.execPath, [join(await ensureBundle(process.cwd()), 'loopback.mjs'), '--open', folder], { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, XDG_CONFIG_HOME: folderWith({}) } });
  const ended = new Promise<number | null>((resolve) => child.on('exit', (code, signal) => resolve(signal === null ? code : -1)));
  const address = await new Promise<string>((resolve) => child.stdout.once('data', (part: Buffer) => resolve(String(part).trim())));
  const { origin } = new URL(address);
  const entered = await fetch(address, { redirect: 'manual' });
  const cookie = String(entered.headers.get('set-cookie')).split(';')[0];
  const call = async (name: string, argument: unknown) => (await fetch(`${origin}/call/${name}`, { method: 'POST', headers: { cookie, origin, 'content-type': 'application/json' }, body: JSON.stringify(argument) })).json() as Promise<Record<string, unknown>>;
  return { child, ended, call };
}

test('the folder to begin with is told once, and Ctrl-C, even sent twice, ends the program with its lock given back', async () => {
  const folder = folderWith({ 'record.json': shortRecord(), 'one.csv': shortScan() });
  const { child, ended, call } = await started(folder);
  const { first } = await call('describeShell', {}) as { first: { token: string; hasRecord: boolean } };
  expect(first).toMatchObject({ hasRecord: true });
  expect(await call('describeShell', {})).toMatchObject({ first: null });
  await call('openFolder', { token: first.token });
  expect(existsSync(join(folder, LOCK))).toBe(true);
  child.kill('SIGINT');
  child.kill('SIGINT');
  expect(await ended).toBe(0);
  expect(existsSync(join(folder, LOCK))).toBe(false);
});
