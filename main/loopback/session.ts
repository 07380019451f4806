import { homedir, userInfo } from 'node:os';
import { join } from 'node:path';
import type { Session } from '../operations/shell.ts';
import { productName } from '../product.ts';

/** State for a shell without native dialogs: the page brings its own folder chooser and prints itself. */
export function loopbackSession(root: string, settingsFolder = defaultSettings(), first: string | null = null): Session {
  let waiting = first;
  return {
    shell: {
      kind: 'loopback', version: productName(), user: userName(), nativeDialogs: false, settingsFolder, samplesFolder: join(root, 'sample-signals'), home: homedir(),
      chooseFolder: () => Promise.resolve(null), printReport: () => Promise.resolve(null),
    },
    paths: new Map(), opened: new Map(), now: () => new Date().toISOString(),
    takeFirst: () => {
      const path = waiting;
      waiting = null;
      return path;
    },
  };
}

function defaultSettings(): string {
  return join(process.env.XDG_CONFIG_HOME ?? process.env.APPDATA ?? join(homedir(), '.config'), 'strandbook');
}

function userName(): string {
  try {
    return userInfo().username;
  } catch {
    return '';
  }
}
