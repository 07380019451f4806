import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { FolderEntry } from '../contract.ts';
import type { Session } from './shell.ts';

/** The token by which the page may name a path; one path keeps one token while the shell runs. */
export function tokenFor(session: Session, path: string): string {
  for (const [token, known] of session.paths) if (known === path) return token;
  const token = randomBytes(18).toString('base64url');
  session.paths.set(token, path);
  return token;
}

/** Throws with words for the user where the token is not one that this shell gave out. */
export function pathOf(session: Session, token: string): string {
  const path = session.paths.get(token);
  if (path === undefined) throw new Error('this folder is not open any more: open it again');
  return path;
}

export function entryFor(session: Session, path: string): FolderEntry {
  return { token: tokenFor(session, path), label: basename(path) || path, place: dirname(path), hasRecord: existsSync(join(path, 'record.json')) };
}
