import { basename, dirname } from 'node:path';
import type { Answer, Argument } from '../contract.ts';
import { readJournal } from '../folder/journal-file.ts';
import { lockFolder } from '../folder/lock.ts';
import { readRecent, writeRecent } from '../folder/recent.ts';
import { openRopeFolder } from '../folder/rope-folder.ts';
import type { Session } from './shell.ts';
import { pathOf } from './tokens.ts';

export async function openFolder(session: Session, { token }: Argument<'openFolder'>): Promise<Answer<'openFolder'>> {
  const path = pathOf(session, token);
  const before = session.opened.get(token);
  const folder = await openRopeFolder(path);
  const locked = before?.lock ? { lock: before.lock } : await lockFolder(path);
  session.opened.set(token, { folder, lock: 'lock' in locked ? locked.lock : null });
  const { entries, remarks } = await readJournal(path);
  const recent = await readRecent(session.shell.settingsFolder);
  await writeRecent(session.shell.settingsFolder, [{ path, openedAt: session.now() }, ...recent.filter((each) => each.path !== path)]).catch(() => undefined);
  return {
    token, label: basename(path), place: dirname(path), files: [...folder.files], journal: entries,
    writable: 'lock' in locked, remark: [...remarks, ...('held' in locked ? [heldRemark(locked.held)] : [])].join(' '),
  };
}

function heldRemark(held: string): string {
  return held === 'read-only'
    ? 'The folder cannot be written to: decisions made now are not kept. Copy it to a place where you may write.'
    : `The folder is open in another window (${held}): decisions made here are not kept. Close it there first.`;
}

export async function closeFolder(session: Session, { token }: Argument<'closeFolder'>): Promise<Answer<'closeFolder'>> {
  const opened = session.opened.get(token);
  session.opened.delete(token);
  await opened?.lock?.release();
  return {};
}

/** Gives every lock back; for the end of the shell. */
export async function closeAllFolders(session: Session): Promise<void> {
  for (const token of [...session.opened.keys()]) await closeFolder(session, { token });
}
