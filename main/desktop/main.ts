import * as electron from 'electron';
import { join } from 'node:path';
import { loopbackSession } from '../loopback/session.ts';
import { productName, projectRoot } from '../product.ts';
import { chooseFolder, printReport } from './dialogs.ts';
import { declareScheme, startDesktop } from './start.ts';

declareScheme(electron);
electron.app.enableSandbox();
void electron.app.whenReady().then(() => {
  const root = projectRoot();
  const shared = loopbackSession(root, electron.app.getPath('userData'));
  const session = {
    ...shared,
    shell: { ...shared.shell, kind: 'desktop' as const, version: productName(), nativeDialogs: true, chooseFolder: () => chooseFolder(electron), printReport: (html: string) => printReport(electron, html) },
  };
  return startDesktop({ electron, session, pageRoot: join(root, 'dist', 'renderer'), preload: join(root, 'dist', 'node', 'preload.cjs') });
});
