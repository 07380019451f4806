import { mkdir, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import type { Answer, Argument } from '../contract.ts';
import { appendToJournal, readJournal } from '../folder/journal-file.ts';
import { openRopeFolder } from '../folder/rope-folder.ts';
import { writeNewFile } from '../folder/write-new-file.ts';
import type { Opened, Session } from './shell.ts';

export async function appendJournal(session: Session, { token, entry }: Argument<'appendJournal'>): Promise<Answer<'appendJournal'>> {
  const { folder } = writableFolder(session, token);
  await appendToJournal(folder.path, entry);
  return (await readJournal(folder.path)).entries;
}

/** Letters, digits, space and a few marks; so that no name leaves the folder or hides. */
const SAFE_NAME = /^[\p{L}\p{N}][\p{L}\p{N} ._()+-]*$/u;

export async function addFile(session: Session, { token, name, base64 }: Argument<'addFile'>): Promise<Answer<'addFile'>> {
  const opened = writableFolder(session, token);
  if (!SAFE_NAME.test(name)) throw new Error(`"${name}" cannot be the name of a file here: use letters, digits, spaces and . _ - ( ) +`);
  const relative = `added/${name}`;
  const bytes = Buffer.from(base64, 'base64');
  if (bytes.toString('base64') !== base64) throw new Error(`the content of ${name} did not arrive whole: add it again`);
  const added = join(opened.folder.path, 'added');
  await mkdir(added, { recursive: true });
  if ((await realpath(added)) !== added) throw new Error('the subfolder "added" is a link that leads elsewhere: nothing is written through it');
  if (!(await writeNewFile(join(added, name), bytes))) throw new Error(`${relative} is there already and is never overwritten: choose another name`);
  session.opened.set(token, { ...opened, folder: await openRopeFolder(opened.folder.path) });
  return { name: relative, size: bytes.length };
}

function writableFolder(session: Session, token: string): Opened {
  const opened = session.opened.get(token);
  if (!opened) throw new Error('this folder is not open any more: open it again');
  if (opened.lock === null) throw new Error('nothing can be kept in this folder now: it is read-only or open in another window');
  return opened;
}
