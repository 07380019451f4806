import type { Bridge, FolderEntry } from '../../main/contract.ts';
import { desktopHost } from './desktop-host.ts';
import type { Host } from './host.ts';
import { loopbackHost } from './loopback-host.ts';
import { pageHost } from './page-host.ts';

/** Finds the shell that this page runs in, and what it says of itself. */
export async function findHost(view: { strandbook?: Bridge }): Promise<{ host: Host; shell: ShellDescription }> {
  const candidate = view.strandbook ? desktopHost(view.strandbook) : loopbackHost();
  try {
    return { host: candidate, shell: await candidate.call('describeShell', {}) };
  } catch (error) {
    if (view.strandbook) throw error;
    return { host: pageHost(), shell: ALONE };
  }
}

export interface ShellDescription {
  readonly version: string;
  readonly nativeDialogs: boolean;
  readonly user: string;
  /** The folder to begin with. */
  readonly first: FolderEntry | null;
}

const ALONE: ShellDescription = { version: '', nativeDialogs: false, user: '', first: null };
