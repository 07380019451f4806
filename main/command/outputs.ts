import { access, constants, open, rename, stat, unlink } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';

/** Why an output cannot be written, in one line, found before the work starts; or null. */
export async function whyNotWritable(files: readonly string[]): Promise<string | null> {
  for (const file of files) {
    const folder = dirname(resolve(file));
    const found = await stat(folder).catch(() => null);
    if (!found?.isDirectory()) return `${file}: there is no folder ${folder}; make it or name another file`;
    if (!(await access(folder, constants.W_OK).then(() => true, () => false))) return `${file}: the folder ${folder} cannot be written to; name another file`;
    if ((await stat(file).catch(() => null))?.isDirectory()) return `${file}: this is a folder; name a file`;
  }
  return null;
}

/** Writes all outputs beside their places and gives them their names only when the disk has every one whole. */
export async function writeOutputs(outputs: readonly { readonly file: string; readonly text: string }[]): Promise<void> {
  const drafts = outputs.map(({ file, text }) => ({ file, text, draft: `${file}.${process.pid}.part` }));
  try {
    for (const { draft, text } of drafts) await writeSynced(draft, text);
    for (const { draft, file } of drafts) await rename(draft, file);
  } finally {
    for (const { draft } of drafts) await unlink(draft).catch(() => undefined);
  }
}

async function writeSynced(path: string, text: string): Promise<void> {
  const file = await open(path, 'w');
  try {
    await file.writeFile(text, 'utf8');
    await file.sync();
  } finally {
    await file.close();
  }
}
