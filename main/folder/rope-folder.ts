import { createReadStream } from 'node:fs';
import { access, constants, readdir, realpath, stat } from 'node:fs/promises';
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
      if (!files.some((file) => file.name === name)) throw unusable(name, 'the file is not in the rope folder', 'put it there or correct its name in record.json');
      const place = join(path, ...name.split('/'));
      await access(place, constants.R_OK).catch((error: NodeJS.ErrnoException) => {
        throw unusable(name, `the file cannot be opened (${error.code})`, 'check that it is there and that you may read it');
      });
      return createReadStream(place, { highWaterMark: 1 << 20 });
    },
  };
}

async function folderPath(given: string): Promise<string> {
  const found = await stat(given).catch(() => null);
  if (found === null) throw unusable(given, 'there is no such folder or file', 'name a rope folder or its record.json');
  if (!found.isDirectory() && basename(given) !== 'record.json') throw unusable(given, 'this is neither a folder nor a record.json', 'name a rope folder or its record.json');
  return realpath(found.isDirectory() ? given : dirname(given));
}

function unusable(file: string, what: string, remedy: string): UnusableInput {
  return new UnusableInput([{ file, line: null, column: null, what, remedy }]);
}

/** Files down to six folders deep. A part that may not be read is left out; a folder with far too many files is no rope folder. */
async function listFiles(root: string): Promise<{ name: string; size: number }[]> {
  const files: { name: string; size: number }[] = [];
  const visit = async (folder: string, depth: number): Promise<void> => {
    const entries = await readdir(folder, { withFileTypes: true }).catch((error: NodeJS.ErrnoException) => {
      if (folder === root) throw unusable(root, `the folder cannot be read (${error.code})`, 'check that you may read it');
      return [];
    });
    for (const entry of entries) {
      if (entry.name.startsWith('.')) continue;
      if (files.length >= MOST_FILES) throw unusable(root, `the folder holds more than ${MOST_FILES} files`, 'open the folder of one rope');
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
