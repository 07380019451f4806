import { createReadStream } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { basename, dirname, join, relative, sep } from 'node:path';
import type { RopeFolder } from '../../analysis/assessment/read-folder.ts';
import { UnusableInput } from '../../analysis/rope/problem.ts';

const MOST_FILES = 20_000;
const DEEPEST = 6;

/** A rope folder on disk. Files are named relative to it, with '/'; nothing outside it is ever read, links that lead out included. */
export interface DiskFolder extends RopeFolder {
  readonly path: string;
}

/** `given` is the folder or its record.json. Throws UnusableInput where it is neither. */
export async function openRopeFolder(given: string): Promise<DiskFolder> {
  const path = await folderPath(given);
  const files = await listFiles(path);
  return {
    path, name: basename(path), files,
    read: async (name) => {
      if (!files.some((file) => file.name === name)) throw new UnusableInput([{ file: name, line: null, column: null, what: 'the file is not in the rope folder', remedy: 'put it there or correct its name in record.json' }]);
      return createReadStream(join(path, ...name.split('/')), { highWaterMark: 1 << 20 });
    },
  };
}

async function folderPath(given: string): Promise<string> {
  const found = await stat(given).catch(() => null);
  if (found === null) throw new UnusableInput([{ file: given, line: null, column: null, what: 'there is no such folder or file', remedy: 'name a rope folder or its record.json' }]);
  if (!found.isDirectory() && basename(given) !== 'record.json') {
    throw new UnusableInput([{ file: given, line: null, column: null, what: 'this is neither a folder nor a record.json', remedy: 'name a rope folder or its record.json' }]);
  }
  return realpath(found.isDirectory() ? given : dirname(given));
}

async function listFiles(root: string): Promise<{ name: string; size: number }[]> {
  const files: { name: string; size: number }[] = [];
  const visit = async (folder: string, depth: number): Promise<void> => {
    for (const entry of await readdir(folder, { withFileTypes: true })) {
      if (entry.name.startsWith('.') || files.length >= MOST_FILES) continue;
      const path = join(folder, entry.name);
      const target = entry.isSymbolicLink() ? await realpath(path).catch(() => '') : path;
      if (target !== path && !target.startsWith(root + sep)) continue;
      const found = await stat(path).catch(() => null);
      if (found?.isDirectory() && depth < DEEPEST && !entry.isSymbolicLink()) await visit(path, depth + 1);
      else if (found?.isFile()) files.push({ name: relative(root, path).split(sep).join('/'), size: found.size });
    }
  };
  await visit(root, 0);
  return files;
}
