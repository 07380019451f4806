import { describe, expect, it } from 'vitest';
import { contract } from '../../main/contract.ts';
import { CALL_CHANNEL, DROP_CHANNEL } from '../../main/desktop/channels.ts';
import { answerPage } from '../../main/desktop/page-protocol.ts';
import { declareScheme, startDesktop } from '../../main/desktop/start.ts';
import type { ElectronParts } from '../../main/desktop/start.ts';
import { isOurAddress, mayOpenExternally, PAGE_ADDRESS, windowOptions } from '../../main/desktop/window-policy.ts';
import { loopbackSession } from '../../main/loopback/session.ts';
import { CONTENT_SECURITY_POLICY } from '../../main/security-policy.ts';
import { folderWith, shortRecord } from '../support/rope-folder-on-disk.ts';

type Handler = (...words: never[]) => unknown;

/** Records what the shell asks of Electron, and lets a test play Electron's part. */
function standIn() {
  const record = { schemes: [] as unknown[], served: [] as string[], windows: [] as unknown[], loaded: [] as string[], external: [] as string[], calls: new Map<string, Handler>(), events: new Map<string, Handler>(), contents: new Map<string, Handler>(), open: null as Handler | null, request: null as Handler | null, check: null as Handler | null, menus: 0 };
  class BrowserWindow {
    constructor(options: unknown) { record.windows.push(options); }
    once(): void { /* shown by Electron itself */ }
    loadURL(address: string): Promise<void> { record.loaded.push(address); return Promise.resolve(); }
  }
  const electron = {
    app: { on: (name: string, handler: Handler) => record.events.set(name, handler), quit: () => undefined },
    BrowserWindow,
    ipcMain: { handle: (name: string, handler: Handler) => record.calls.set(name, handler) },
    protocol: { registerSchemesAsPrivileged: (schemes: unknown[]) => record.schemes.push(...schemes), handle: (scheme: string) => record.served.push(scheme) },
    session: { defaultSession: { setPermissionRequestHandler: (handler: Handler) => { record.request = handler; }, setPermissionCheckHandler: (handler: Handler) => { record.check = handler; } } },
    shell: { openExternal: (address: string) => { record.external.push(address); return Promise.resolve(); } },
    Menu: { setApplicationMenu: () => { record.menus += 1; }, buildFromTemplate: (template: unknown) => template },
  } as unknown as ElectronParts;
  return { record, electron };
}

async function started() {
  const { record, electron } = standIn();
  const session = loopbackSession(folderWith({}), folderWith({}));
  declareScheme(electron);
  await startDesktop({ electron, session, pageRoot: folderWith({ 'index.html': 'page' }), preload: '/preload.cjs' });
  const contents = { on: (name: string, handler: Handler) => record.contents.set(name, handler), setWindowOpenHandler: (handler: Handler) => { record.open = handler; } };
  record.events.get('web-contents-created')!({} as never, contents as never);
  return { record, session };
}

const ourFrame = { senderFrame: { url: PAGE_ADDRESS, parent: null } };

describe('the desktop window', () => {
  it('is isolated, sandboxed and without Node, webview or experiments', () => {
    expect(windowOptions('/p').webPreferences).toEqual({
      preload: '/p', contextIsolation: true, sandbox: true, nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false, webviewTag: false, webSecurity: true,
      allowRunningInsecureContent: false, experimentalFeatures: false, spellcheck: false,
    });
  });

  it('loads our page by our own secure scheme that cannot bypass the policy', async () => {
    const { record } = await started();
    expect(record.loaded).toEqual([PAGE_ADDRESS]);
    expect(record.schemes).toMatchObject([{ scheme: 'strandbook', privileges: { standard: true, secure: true, bypassCSP: false, allowServiceWorkers: false } }]);
    expect(record.windows).toEqual([windowOptions('/preload.cjs')]);
  });

  it('compares addresses by their parts', () => {
    expect(isOurAddress('strandbook://app/index.html')).toBe(true);
    for (const other of ['strandbook://app.evil.example/', 'strandbook://evil/app/', 'https://app/', 'strandbook://user@app/', 'file:///etc/passwd', 'strandbook:app', '']) expect(isOurAddress(other)).toBe(false);
  });

  it('denies navigation elsewhere, new windows, webviews and every permission', async () => {
    const { record } = await started();
    const stopped = (name: string, url: string): boolean => {
      let prevented = false;
      record.contents.get(name)!({ url, preventDefault: () => { prevented = true; } } as never);
      return prevented;
    };
    expect(stopped('will-navigate', 'https://evil.example/')).toBe(true);
    expect(stopped('will-navigate', PAGE_ADDRESS)).toBe(false);
    expect(stopped('will-attach-webview', '')).toBe(true);
    expect(record.open!({ url: 'https://evil.example/' } as never)).toEqual({ action: 'deny' });
    expect(record.external).toEqual([]);
    expect(mayOpenExternally('https://evil.example/')).toBe(false);
    let granted: unknown = null;
    record.request!({} as never, 'media' as never, ((answer: unknown) => { granted = answer; }) as never);
    expect(granted).toBe(false);
    expect(record.check!()).toBe(false);
  });

  it('answers two channels only, for the top frame of our page only, with checked arguments', async () => {
    const { record } = await started();
    expect([...record.calls.keys()].sort()).toEqual([CALL_CHANNEL, DROP_CHANNEL].sort());
    const ask = (event: unknown, ...words: unknown[]) => record.calls.get(CALL_CHANNEL)!(event as never, ...(words as never[]));
    expect(contract.describeShell.answer.parse(await ask(ourFrame, 'describeShell', {}))).toMatchObject({ user: expect.any(String) });
    await expect(ask(ourFrame, 'openFolder', { token: '/etc' })).rejects.toThrow(/agreed form/);
    await expect(ask(ourFrame, 'noSuchCall', {})).rejects.toThrow(/no call/);
    await expect(ask({ senderFrame: { url: 'https://evil.example/', parent: null } }, 'describeShell', {})).rejects.toThrow(/does not come/);
    await expect(ask({ senderFrame: { url: PAGE_ADDRESS, parent: {} } }, 'describeShell', {})).rejects.toThrow(/does not come/);
    await expect(ask({ senderFrame: null }, 'describeShell', {})).rejects.toThrow(/does not come/);
  });

  it('takes a dropped folder by path from the preload and hands the page a token', async () => {
    const { record } = await started();
    const rope = folderWith({ 'record.json': shortRecord() });
    const drop = (path: unknown) => record.calls.get(DROP_CHANNEL)!(ourFrame as never, path as never);
    expect(await drop(rope)).toMatchObject({ hasRecord: true });
    expect(JSON.stringify(await drop(rope))).toMatch(/"token":"[\w-]{20,}"/);
    expect(await drop('relative/path')).toBeNull();
    expect(await drop(`${rope}/no-such`)).toBeNull();
  });

  it('serves the page with the strict policy and nothing outside it', async () => {
    const { session } = await started();
    const root = folderWith({ 'index.html': 'page' });
    const page = await answerPage({ url: PAGE_ADDRESS, method: 'GET' }, session, root);
    expect(page.headers.get('content-security-policy')).toBe(CONTENT_SECURITY_POLICY);
    expect(await page.text()).toBe('page');
    expect((await answerPage({ url: 'strandbook://app/..%2f..%2fetc%2fpasswd', method: 'GET' }, session, root)).status).toBe(404);
    expect((await answerPage({ url: 'strandbook://other/', method: 'GET' }, session, root)).status).toBe(403);
    expect((await answerPage({ url: PAGE_ADDRESS, method: 'POST' }, session, root)).status).toBe(403);
    expect(CONTENT_SECURITY_POLICY).toMatch(/default-src 'none'/);
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe-eval|script-src[^;]*unsafe-inline|\*/);
  });
});
