import type { FolderEntry } from '../../main/contract.ts';
import { droppedSource, withinRopeFolder } from '../host/dropped-source.ts';
import type { DroppedFile } from '../host/dropped-source.ts';
import { HostFailure } from '../host/host.ts';
import { shellSource } from '../host/rope-source.ts';
import type { RopeSource } from '../host/rope-source.ts';
import { analyse } from './analyse.ts';
import type { Trouble } from './app-state.ts';
import { tablesAmong } from './new-record.ts';
import { choicesByRecipe } from './recipes.ts';
import { change, store } from './store.ts';

/** Every way to open a rope ends here: dialog, recent list, sample, browse, drop. */
async function openSource(source: RopeSource): Promise<void> {
  const former = store.getState();
  former.session?.close();
  await former.rope?.close().catch(() => undefined);
  change({ rope: source, journal: source.journal, session: null, view: null, trouble: null, undo: [], dialog: null, unrecorded: null });
  await applyRecipes(source);
  const ending = await analyse(`Reading ${source.label}`);
  if (ending === 'cancelled' && store.getState().rope === source && store.getState().view === null) await closeRope();
  else await refreshLists();
}

/** A recipe that cannot be used is no reason not to open the rope. */
async function applyRecipes(source: RopeSource): Promise<void> {
  const act = { at: new Date().toISOString(), who: store.getState().shell?.user || 'not named' };
  try {
    for (const entry of await choicesByRecipe(source, act)) change({ journal: await source.append(entry) });
  } catch (error) {
    change({ trouble: troubleOf(error, 'A remembered recipe could not be used') });
  }
}

export async function openEntry(entry: FolderEntry): Promise<void> {
  const { host } = store.getState();
  if (host === null) return;
  try {
    const folder = await host.call('openFolder', { token: entry.token });
    await openSource(shellSource(host, folder));
  } catch (error) {
    change({ trouble: troubleOf(error, `${entry.label} cannot be opened`) });
  }
}

export async function openDropped(files: readonly DroppedFile[]): Promise<void> {
  const inside = withinRopeFolder(files);
  if (inside === null && tablesAmong(files.map(({ name, file }) => ({ name, modified: file.lastModified }))).length > 0) {
    await closeRope();
    change({ unrecorded: files });
    return;
  }
  if (inside === null) {
    change({ trouble: { title: 'There is neither a record.json nor a scan in what was dropped', remedy: 'Drop the rope folder itself, the one that holds record.json, or scan files as text tables.', problems: [] } });
    return;
  }
  await openSource(droppedSource(inside.label, inside.files));
}

/** Shuts the open rope and returns to the start screen. */
export async function closeRope(): Promise<void> {
  const { session, rope } = store.getState();
  session?.close();
  await rope?.close().catch(() => undefined);
  change({ rope: null, session: null, view: null, journal: [], trouble: null, undo: [] });
  await refreshLists();
}

/** Reads the lists of the start screen anew; without a shell there are none. */
export async function refreshLists(): Promise<void> {
  const { host } = store.getState();
  if (host === null || !host.hasShell) return;
  try {
    const [recent, samples] = await Promise.all([host.call('recentFolders', {}), host.call('sampleFolders', {})]);
    change({ recent, samples });
  } catch (error) {
    change({ trouble: troubleOf(error, 'The lists of folders cannot be read') });
  }
}

export function troubleOf(error: unknown, title: string): Trouble {
  const what = error instanceof Error ? error.message : String(error);
  const remedy = error instanceof HostFailure ? error.remedy : 'Try again.';
  return { title, remedy: `${what} ${remedy}`, problems: [] };
}
