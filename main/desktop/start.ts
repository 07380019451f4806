import type * as Electron from 'electron';
import { statSync } from 'node:fs';
import { dirname, isAbsolute } from 'node:path';
import { z } from 'zod';
import { dispatch } from '../dispatch.ts';
import { closeAllFolders } from '../operations/open-folder.ts';
import type { Session } from '../operations/shell.ts';
import { entryFor } from '../operations/tokens.ts';
import { CALL_CHANNEL, DROP_CHANNEL } from './channels.ts';
import { buildMenu } from './menu.ts';
import { answerPage } from './page-protocol.ts';
import { grantsPermission, isOurAddress, mayOpenExternally, PAGE_ADDRESS, SCHEME, windowOptions } from './window-policy.ts';

/** The part of Electron that the shell uses; tests hand in a recording stand-in. */
export type ElectronParts = Pick<typeof Electron, 'app' | 'BrowserWindow' | 'ipcMain' | 'protocol' | 'session' | 'shell' | 'Menu'>;

export interface DesktopParts {
  readonly electron: ElectronParts;
  readonly session: Session;
  readonly pageRoot: string;
  readonly preload: string;
}

/** To be called before the app is ready: a scheme can be declared only then. */
export function declareScheme({ protocol }: ElectronParts): void {
  protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true, corsEnabled: false, bypassCSP: false, allowServiceWorkers: false } }]);
}

/** Opens the window with every door but ours closed. Resolves when the page is loading. */
export async function startDesktop(parts: DesktopParts): Promise<void> {
  const { electron, session, pageRoot } = parts;
  electron.protocol.handle(SCHEME, (request) => answerPage(request, session, pageRoot));
  closePermissions(electron);
  guardContents(electron);
  answerCalls(parts);
  electron.Menu.setApplicationMenu(buildMenu(electron.Menu));
  electron.app.on('window-all-closed', () => void closeAllFolders(session).then(() => electron.app.quit()));
  const window = new electron.BrowserWindow(windowOptions(parts.preload));
  window.once('ready-to-show', () => window.show());
  await window.loadURL(PAGE_ADDRESS);
}

function closePermissions({ session }: ElectronParts): void {
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, decide) => decide(grantsPermission()));
  session.defaultSession.setPermissionCheckHandler(grantsPermission);
}

function guardContents({ app, shell }: ElectronParts): void {
  app.on('web-contents-created', (_event, contents) => {
    const stay = (event: { readonly url: string; preventDefault(): void }): void => {
      if (!isOurAddress(event.url)) event.preventDefault();
    };
    contents.on('will-navigate', stay);
    contents.on('will-frame-navigate', stay);
    contents.on('will-redirect', stay);
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(({ url }) => {
      if (mayOpenExternally(url)) void shell.openExternal(url);
      return { action: 'deny' };
    });
  });
}

/** Only the top frame of our own page is answered; every argument is checked against the contract. */
function answerCalls({ electron, session }: DesktopParts): void {
  electron.ipcMain.handle(CALL_CHANNEL, async (event, name: unknown, argument: unknown) => {
    requireOurPage(event);
    const outcome = await dispatch(session, z.string().max(64).parse(name), argument);
    if ('problem' in outcome) throw new Error(outcome.problem);
    return outcome.answer;
  });
  electron.ipcMain.handle(DROP_CHANNEL, (event, path: unknown) => {
    requireOurPage(event);
    const checked = z.string().min(1).max(4096).refine(isAbsolute).safeParse(path);
    if (!checked.success) return null;
    const found = statSync(checked.data, { throwIfNoEntry: false });
    return found ? entryFor(session, found.isDirectory() ? checked.data : dirname(checked.data)) : null;
  });
}

function requireOurPage(event: Electron.IpcMainInvokeEvent): void {
  const frame = event.senderFrame;
  if (frame === null || frame.parent !== null || !isOurAddress(frame.url)) throw new Error('this message does not come from the Strandbook page');
}
