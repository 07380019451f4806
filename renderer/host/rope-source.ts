import { bytesAddress } from '../../main/contract.ts';
import type { OpenedFolder } from '../../main/contract.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';
import type { Host } from './host.ts';

/** How a worker reaches the bytes of an opened folder; can be posted to it as it is. */
export type WorkerSource =
  | { readonly kind: 'address'; readonly name: string; readonly files: readonly { readonly name: string; readonly size: number; readonly address: string }[] }
  | { readonly kind: 'files'; readonly name: string; readonly files: readonly { readonly name: string; readonly size: number; readonly file: File }[] };

/** One opened rope folder, whoever holds it. */
export interface RopeSource {
  readonly label: string;
  readonly place: string;
  readonly writable: boolean;
  /** Why decisions cannot be kept, or ''. */
  readonly remark: string;
  readonly files: readonly { readonly name: string; readonly size: number }[];
  readonly journal: readonly JournalEntry[];
  forWorker(): WorkerSource;
  /** Bytes of one file from its beginning, at most `limit`. */
  readStart(name: string, limit: number): Promise<Uint8Array>;
  /** Puts a new file, such as a photo, into the folder and resolves to its name there; never overwrites. */
  addFile(file: File): Promise<string>;
  /** Adds one decision and resolves to the whole journal. */
  append(entry: JournalEntry): Promise<readonly JournalEntry[]>;
  close(): Promise<void>;
}

/** A folder that the shell opened: its bytes stream from the shell's own address, decisions go to its journal. */
export function shellSource(host: Host, folder: OpenedFolder): RopeSource {
  const files = [...folder.files];
  return {
    label: folder.label, place: folder.place, writable: folder.writable, remark: folder.remark, files, journal: folder.journal,
    forWorker: () => ({ kind: 'address', name: folder.label, files: files.map((each) => ({ ...each, address: bytesAddress(folder.token, each.name) })) }),
    async readStart(name, limit) {
      const response = await fetch(bytesAddress(folder.token, name), { credentials: 'same-origin' });
      if (!response.ok || response.body === null) throw new Error(`${name} cannot be read (${response.status})`);
      return firstBytes(response.body, limit);
    },
    async addFile(file) {
      const added = await host.call('addFile', { token: folder.token, name: file.name, base64: base64Of(new Uint8Array(await file.arrayBuffer())) });
      files.push(added);
      return added.name;
    },
    append: (entry) => host.call('appendJournal', { token: folder.token, entry }),
    close: async () => { await host.call('closeFolder', { token: folder.token }); },
  };
}

/** In parts: a call takes only so many arguments. */
function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
}

/** Reads a stream up to `limit` bytes and lets the rest go. */
export async function firstBytes(stream: ReadableStream<Uint8Array>, limit: number): Promise<Uint8Array> {
  const reader = stream.getReader();
  const whole = new Uint8Array(limit);
  let filled = 0;
  while (filled < limit) {
    const { done, value } = await reader.read();
    if (done) break;
    const part = value.subarray(0, limit - filled);
    whole.set(part, filled);
    filled += part.length;
  }
  await reader.cancel().catch(() => undefined);
  return whole.subarray(0, filled);
}
