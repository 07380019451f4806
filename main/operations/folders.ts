import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Answer, Argument } from '../contract.ts';
import { readRecent, writeRecent } from '../folder/recent.ts';
import type { Session } from './shell.ts';
import { entryFor, pathOf } from './tokens.ts';

export async function recentFolders(session: Session): Promise<Answer<'recentFolders'>> {
  const recent = await readRecent(session.shell.settingsFolder);
  return recent.filter((each) => existsSync(each.path)).map((each) => ({ ...entryFor(session, each.path), openedAt: each.openedAt }));
}

export async function forgetRecent(session: Session, { token }: Argument<'forgetRecent'>): Promise<Answer<'forgetRecent'>> {
  const path = pathOf(session, token);
  const recent = await readRecent(session.shell.settingsFolder);
  await writeRecent(session.shell.settingsFolder, recent.filter((each) => each.path !== path));
  return {};
}

export async function sampleFolders(session: Session): Promise<Answer<'sampleFolders'>> {
  return (await subfolders(session.shell.samplesFolder)).map((path) => entryFor(session, path)).filter((entry) => entry.hasRecord);
}

export async function chooseFolder(session: Session): Promise<Answer<'chooseFolder'>> {
  const path = await session.shell.chooseFolder();
  return path === null ? null : entryFor(session, path);
}

export async function browse(session: Session, { token }: Argument<'browse'>): Promise<Answer<'browse'>> {
  const here = token === null ? session.shell.home : pathOf(session, token);
  const parent = dirname(here);
  const entries = (await subfolders(here)).map((path) => entryFor(session, path));
  return { here: entryFor(session, here), parent: parent === here ? null : entryFor(session, parent).token, entries };
}

async function subfolders(path: string): Promise<string[]> {
  const entries = await readdir(path, { withFileTypes: true }).catch(() => []);
  return entries.filter((entry) => entry.isDirectory() && !entry.name.startsWith('.')).map((entry) => join(path, entry.name)).sort();
}
