import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bytesAddress } from '../../main/contract.ts';
import { loopbackSession } from '../../main/loopback/session.ts';
import { startLoopback } from '../../main/loopback/server.ts';
import type { Loopback } from '../../main/loopback/server.ts';
import { closeAllFolders } from '../../main/operations/open-folder.ts';
import { entryFor } from '../../main/operations/tokens.ts';
import type { Session } from '../../main/operations/shell.ts';
import { folderWith, shortRecord } from '../support/rope-folder-on-disk.ts';

interface Reply { readonly status: number; readonly headers: Record<string, string | string[] | undefined>; readonly body: string }

let loopback: Loopback;
let session: Session;
let cookie: string;
let rope: string;

/** A request with full control over its headers, Host included. */
function ask(path: string, options: { method?: string; headers?: Record<string, string>; body?: string } = {}): Promise<Reply> {
  const { port } = new URL(loopback.origin);
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, method: options.method ?? 'GET', headers: options.headers }, (reply) => {
      let body = '';
      reply.on('data', (part) => { body += part; });
      reply.on('end', () => resolve({ status: reply.statusCode!, headers: reply.headers, body }));
    });
    sent.on('error', reject);
    sent.end(options.body);
  });
}

const call = (name: string, argument: unknown, headers: Record<string, string> = {}) =>
  ask(`/call/${name}`, { method: 'POST', headers: { cookie, origin: loopback.origin, 'content-type': 'application/json', ...headers }, body: JSON.stringify(argument) });

beforeAll(async () => {
  const page = folderWith({ 'index.html': '<!doctype html><title>page</title>', 'assets/app.js': 'let a = 1;' });
  rope = folderWith({ 'record.json': shortRecord(), 'one.csv': 'position_m,lma\n0,1\n', 'photos/sömmer 1.png': 'x' });
  session = loopbackSession(folderWith({}), folderWith({}));
  loopback = await startLoopback(session, page, 0);
  const entered = await ask(new URL(loopback.address).pathname + new URL(loopback.address).search);
  cookie = String(entered.headers['set-cookie']).split(';')[0];
});
afterAll(async () => {
  await closeAllFolders(session);
  await loopback.close();
});

describe('the loopback shell', () => {
  it('listens on 127.0.0.1 only', () => {
    expect(loopback.server.address()).toMatchObject({ address: '127.0.0.1' });
  });

  it('serves the page to who has its key and nobody else, with a cookie no script can read', async () => {
    expect((await ask('/')).status).toBe(401);
    expect((await ask('/?key=wrong')).status).toBe(401);
    expect((await ask('/', { headers: { cookie: 'strandbook=wrong' } })).status).toBe(401);
    const entered = await ask(`/${new URL(loopback.address).search}`);
    expect(entered.status).toBe(303);
    expect(String(entered.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Strict/);
    expect(await ask('/', { headers: { cookie } })).toMatchObject({ status: 200, body: '<!doctype html><title>page</title>' });
  });

  it('sends the strict policy with everything', async () => {
    for (const path of ['/', '/assets/app.js', '/no-such-file.js']) {
      const { headers } = await ask(path, { headers: { cookie } });
      expect(headers['content-security-policy']).toMatch(/^default-src 'none'; script-src 'self';/);
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
  });

  it('refuses another host name, as a page that rebinds its name would send', async () => {
    expect((await ask('/', { headers: { cookie, host: 'evil.example:80' } })).status).toBe(403);
  });

  it('refuses calls of another origin, without JSON, or not by POST', async () => {
    expect((await call('describeShell', {}, { origin: 'http://evil.example' })).status).toBe(403);
    expect((await ask('/call/describeShell', { method: 'POST', headers: { cookie, 'content-type': 'application/json' }, body: '{}' })).status).toBe(403);
    expect((await call('describeShell', {}, { 'content-type': 'text/plain' })).status).toBe(415);
    expect((await ask('/call/describeShell', { headers: { cookie } })).status).toBe(405);
    expect((await call('describeShell', {}, { cookie: '' })).status).toBe(401);
  });

  it('serves no file outside the page folder, however it is written', async () => {
    for (const path of ['/../package.json', '/%2e%2e/%2e%2e/etc/passwd', '/..%2f..%2fetc%2fpasswd', '/assets/%00.js', '/%E0%A4%A']) {
      expect((await ask(path, { headers: { cookie } })).status).toBe(404);
    }
  });

  it('answers a call with the agreed answer, and refuses what is not in the contract', async () => {
    expect(JSON.parse((await call('describeShell', {})).body)).toMatchObject({ shell: 'loopback', nativeDialogs: false });
    expect(await call('readAnyFile', {})).toMatchObject({ status: 422 });
    expect(await call('toString', {})).toMatchObject({ status: 422 });
    expect(await call('openFolder', { token: '../../etc' })).toMatchObject({ status: 422 });
    expect((await ask('/call/describeShell', { method: 'POST', headers: { cookie, origin: loopback.origin, 'content-type': 'application/json' }, body: '{' })).status).toBe(400);
  });

  it('opens a folder by token, streams its files by name, and nothing beside them', async () => {
    const { token } = entryFor(session, rope);
    expect((await ask(bytesAddress(token, 'one.csv'), { headers: { cookie } })).status).toBe(404);
    const opened = JSON.parse((await call('openFolder', { token })).body);
    expect(opened).toMatchObject({ writable: true, journal: [] });
    expect(await ask(bytesAddress(token, 'one.csv'), { headers: { cookie } })).toMatchObject({ status: 200, body: 'position_m,lma\n0,1\n' });
    expect(await ask(bytesAddress(token, 'photos/sömmer 1.png'), { headers: { cookie } })).toMatchObject({ status: 200, headers: { 'content-type': 'image/png' } });
    expect((await ask(`/bytes/${token}/..%2f..%2fetc%2fpasswd`, { headers: { cookie } })).status).toBe(404);
    expect((await ask(bytesAddress('a'.repeat(24), 'one.csv'), { headers: { cookie } })).status).toBe(404);
  });

  it('keeps a decision in the journal and never overwrites an added file', async () => {
    const { token } = entryFor(session, rope);
    await call('openFolder', { token });
    const entry = { kind: 'remark', at: '2026-01-01T10:00:00Z', who: 'tester', text: 'seen' };
    expect(JSON.parse((await call('appendJournal', { token, entry })).body)).toEqual([entry]);
    const added = { token, name: 'new scan.csv', base64: Buffer.from('1,2').toString('base64') };
    expect(JSON.parse((await call('addFile', added)).body)).toEqual({ name: 'added/new scan.csv', size: 3 });
    expect(await call('addFile', added)).toMatchObject({ status: 422 });
    for (const name of ['../x.csv', '.hidden', 'a/b.csv', 'a\\b.csv']) expect((await call('addFile', { ...added, name })).status).toBe(422);
  });
});
