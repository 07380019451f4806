import * as electron from 'electron';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loopbackSession } from '../loopback/session.ts';
import { productName, projectRoot } from '../product.ts';
import { chooseFolder, printReport } from './dialogs.ts';
import { declareScheme, startDesktop } from './start.ts';

// Before any path is asked for: it names the folder of our own settings.
electron.app.setName('Strandbook');
declareScheme(electron);
electron.app.enableSandbox();
void electron.app.whenReady().then(() => {
  const root = projectRoot();
  const shared = loopbackSession(root, electron.app.getPath('userData'), firstFolder(process.argv));
  const session = {
    ...shared,
    shell: { ...shared.shell, kind: 'desktop' as const, version: productName(), nativeDialogs: true, chooseFolder: () => chooseFolder(electron), printReport: (html: string) => printReport(electron, html) },
  };
  return startDesktop({ electron, session, pageRoot: join(root, 'dist', 'renderer'), preload: join(dirname(fileURLToPath(import.meta.url)), 'preload.cjs') });
});

/** The folder named after `--open`, or null. */
function firstFolder(words: readonly string[]): string | null {
  const at = words.indexOf('--open');
  return at < 0 || words[at + 1] === undefined ? null : resolve(words[at + 1]);
}
