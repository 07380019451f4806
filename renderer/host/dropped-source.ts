import type { JournalEntry } from '../../analysis/rope/journal.ts';
import { firstBytes } from './rope-source.ts';
import type { RopeSource } from './rope-source.ts';

export interface DroppedFile {
  /** Path inside the rope folder, with '/'. */
  readonly name: string;
  readonly file: File;
}

/** Files read in the page itself. Decisions hold until the page closes, and the user is told so. */
export function droppedSource(label: string, dropped: readonly DroppedFile[]): RopeSource {
  const journal: JournalEntry[] = [];
  const held = [...dropped];
  const files = dropped.map(({ name, file }) => ({ name, size: file.size }));
  return {
    label, place: 'dropped on this page', writable: false,
    remark: 'These files were dropped on the page, which cannot write beside them: decisions hold until the window closes and are not kept.',
    files, journal,
    forWorker: () => ({ kind: 'files', name: label, files: held.map(({ name, file }) => ({ name, size: file.size, file })) }),
    async readStart(name, limit) {
      const found = held.find((each) => each.name === name);
      if (!found) throw new Error(`${name} is not among the dropped files`);
      return firstBytes(found.file.stream(), limit);
    },
    addFile(file) {
      const name = `added/${file.name}`;
      if (files.some((each) => each.name === name)) return Promise.reject(new Error(`${name} is there already`));
      files.push({ name, size: file.size });
      held.push({ name, file });
      return Promise.resolve(name);
    },
    append(entry) {
      journal.push(entry);
      return Promise.resolve([...journal]);
    },
    close: () => Promise.resolve(),
  };
}

/**
 * Names of files below the one folder that holds record.json, so that a dropped parent folder works like the folder itself.
 * Null where there is no record.json among them.
 */
export function withinRopeFolder(files: readonly DroppedFile[]): { label: string; files: DroppedFile[] } | null {
  const records = files.map((each) => each.name).filter((name) => /(^|\/)record\.json$/.test(name)).sort((a, b) => a.split('/').length - b.split('/').length);
  if (records.length === 0) return null;
  const root = records[0].slice(0, -'record.json'.length);
  const inside = files.filter((each) => each.name.startsWith(root)).map((each) => ({ ...each, name: each.name.slice(root.length) }));
  return { label: root.split('/').filter(Boolean).pop() ?? 'dropped files', files: inside };
}
