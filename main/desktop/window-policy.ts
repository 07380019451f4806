/** What the window may do, as pure functions: tested without Electron. */
export const SCHEME = 'strandbook';
export const PAGE_ADDRESS = `${SCHEME}://app/`;

/** Addresses that may be handed to the system's browser. Empty on purpose: the app needs none. */
const EXTERNAL: readonly string[] = [];

export interface WindowOptions {
  readonly width: number;
  readonly height: number;
  readonly minWidth: number;
  readonly minHeight: number;
  readonly show: boolean;
  readonly title: string;
  readonly webPreferences: {
    readonly preload: string; readonly contextIsolation: true; readonly sandbox: true; readonly nodeIntegration: false; readonly nodeIntegrationInWorker: false;
    readonly nodeIntegrationInSubFrames: false; readonly webviewTag: false; readonly webSecurity: true; readonly allowRunningInsecureContent: false; readonly experimentalFeatures: false; readonly spellcheck: false;
  };
}

export function windowOptions(preload: string): WindowOptions {
  return {
    width: 1440, height: 900, minWidth: 960, minHeight: 600, show: false, title: 'Strandbook',
    webPreferences: {
      preload, contextIsolation: true, sandbox: true, nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false,
      webviewTag: false, webSecurity: true, allowRunningInsecureContent: false, experimentalFeatures: false, spellcheck: false,
    },
  };
}

/** Compared by parts: a text that merely begins like our address is not ours. */
export function isOurAddress(address: string): boolean {
  try {
    const { protocol, host, username, password, port } = new URL(address);
    return protocol === `${SCHEME}:` && host === 'app' && username === '' && password === '' && port === '';
  } catch {
    return false;
  }
}

export function mayOpenExternally(address: string): boolean {
  return EXTERNAL.includes(address);
}

/** No permission is ever needed: no camera, place, notification or device. */
export function grantsPermission(): false {
  return false;
}
