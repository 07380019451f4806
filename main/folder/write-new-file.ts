import { constants, copyFile, link, open, unlink } from 'node:fs/promises';
import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';

/**
 * Writes a file that must not be there yet, whole or not at all: it gets its name only when the disk has all of it.
 * False where the name is taken, by whomever and since whenever; what is there stays as it is.
 */
export async function writeNewFile(path: string, bytes: Uint8Array): Promise<boolean> {
  const draft = join(dirname(path), `.${basename(path).slice(0, 100)}-${randomBytes(6).toString('hex')}`);
  try {
    const file = await open(draft, 'wx');
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await giveName(draft, path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  } finally {
    await unlink(draft).catch(() => undefined);
  }
}

/** A second name for the same content fails where the name exists; file systems without second names get an exclusive copy. */
async function giveName(draft: string, path: string): Promise<void> {
  await link(draft, path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'EEXIST') throw error;
    return copyFile(draft, path, constants.COPYFILE_EXCL);
  });
}
