import type { DroppedFile } from './dropped-source.ts';

/** All files of a drop, those in dropped folders included, with their paths. */
export async function readDrop(transfer: DataTransfer): Promise<DroppedFile[]> {
  // Entries must be taken before the first await: the list empties when the event ends.
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry?.() ?? null).filter((entry): entry is FileSystemEntry => entry !== null);
  if (entries.length === 0) return [...transfer.files].map(named);
  return (await Promise.all(entries.map((entry) => filesBelow(entry)))).flat();
}

/** Files of a folder picker (`webkitdirectory`) or of a plain drop. */
export function named(file: File): DroppedFile {
  return { name: file.webkitRelativePath || file.name, file };
}

async function filesBelow(entry: FileSystemEntry): Promise<DroppedFile[]> {
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject));
    return [{ name: entry.fullPath.replace(/^\//, ''), file }];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const children: FileSystemEntry[] = [];
  // readEntries gives at most a hundred at a time; an empty answer ends the list.
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (some.length === 0) break;
    children.push(...some);
  }
  return (await Promise.all(children.map((child) => filesBelow(child)))).flat();
}
