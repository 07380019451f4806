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
  /** Adds one decision and resolves to the whole journal. */
  append(entry: JournalEntry): Promise<readonly JournalEntry[]>;
  close(): Promise<void>;
}

/** A folder that the shell opened: its bytes stream from the shell's own address, decisions go to its journal. */
export function shellSource(host: Host, folder: OpenedFolder): RopeSource {
  const addresses = new Map(folder.files.map((each) => [each.name, bytesAddress(folder.token, each.name)]));
  return {
    label: folder.label, place: folder.place, writable: folder.writable, remark: folder.remark, files: folder.files, journal: folder.journal,
    forWorker: () => ({ kind: 'address', name: folder.label, files: folder.files.map((each) => ({ ...each, address: bytesAddress(folder.token, each.name) })) }),
    async readStart(name, limit) {
      const response = await fetch(addresses.get(name) ?? bytesAddress(folder.token, name), { credentials: 'same-origin' });
      if (!response.ok || response.body === null) throw new Error(`${name} cannot be read (${response.status})`);
      return firstBytes(response.body, limit);
    },
    append: (entry) => host.call('appendJournal', { token: folder.token, entry }),
    close: async () => { await host.call('closeFolder', { token: folder.token }); },
  };
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
