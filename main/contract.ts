import { z } from 'zod';
import { journalEntrySchema } from '../analysis/rope/journal.ts';

/**
 * The one contract between the page and both shells. A shell receives `call(name, argument)`; both sides check
 * argument and answer against these schemas. Folders are named by opaque tokens, never by path.
 * File bytes do not travel here: they stream from `bytesAddress` (the same path under the desktop's own protocol and on 127.0.0.1).
 */
const token = z.string().regex(/^[A-Za-z0-9_-]{16,64}$/);
const folderFile = z.object({ name: z.string(), size: z.number().nonnegative() });

const folder = z.object({
  token, label: z.string(), place: z.string(), files: z.array(folderFile), journal: z.array(journalEntrySchema),
  /** False where decisions cannot be kept, with the reason. */
  writable: z.boolean(), remark: z.string(),
});

const entry = z.object({ token, label: z.string(), place: z.string(), hasRecord: z.boolean() });

export const contract = {
  describeShell: { argument: z.object({}), answer: z.object({ shell: z.enum(['desktop', 'loopback']), version: z.string(), nativeDialogs: z.boolean(), user: z.string(), /** The folder to begin with; told once, so that a reload begins on the start screen. */ first: entry.nullable() }) },
  recentFolders: { argument: z.object({}), answer: z.array(entry.extend({ openedAt: z.string() })) },
  forgetRecent: { argument: z.object({ token }), answer: z.object({}) },
  sampleFolders: { argument: z.object({}), answer: z.array(entry) },
  /** Native dialog; null when the user thinks better of it. Only where `nativeDialogs`. */
  chooseFolder: { argument: z.object({}), answer: entry.nullable() },
  /** The app's own folder chooser, for shells without native dialogs. Null: the user's home. */
  browse: { argument: z.object({ token: token.nullable() }), answer: z.object({ here: entry, parent: token.nullable(), entries: z.array(entry) }) },
  /** A folder dropped on the desktop window; the preload turns the drop into paths, the page never sees them. */
  openFolder: { argument: z.object({ token }), answer: folder },
  closeFolder: { argument: z.object({ token }), answer: z.object({}) },
  appendJournal: { argument: z.object({ token, entry: journalEntrySchema }), answer: z.array(journalEntrySchema) },
  /** Adds a scan, photo or notes file to the rope folder's own `added` subfolder, whole or not at all. */
  addFile: { argument: z.object({ token, name: z.string().min(1).max(200), base64: z.string() }), answer: folderFile },
  /** PDF of the report by the desktop's own printing; loopback answers null and the page prints itself. */
  printReport: { argument: z.object({ html: z.string() }), answer: z.object({ saved: z.string().nullable() }) },
} as const;

export type Contract = typeof contract;
export type CallName = keyof Contract;
export type Argument<N extends CallName> = z.infer<Contract[N]['argument']>;
export type Answer<N extends CallName> = z.infer<Contract[N]['answer']>;
export type FolderEntry = z.infer<typeof entry>;
export type OpenedFolder = z.infer<typeof folder>;

/** Path, below the shell's own origin, under which the bytes of a file of an opened folder stream. */
export function bytesAddress(folderToken: string, fileName: string): string {
  return `/bytes/${folderToken}/${fileName.split('/').map(encodeURIComponent).join('/')}`;
}

/** What the preload (or its loopback twin) offers to the page, and nothing more. */
export interface Bridge {
  call<N extends CallName>(name: N, argument: Argument<N>): Promise<unknown>;
  /** Resolves to a folder entry for a dropped directory, or null where the shell cannot know its path. */
  folderOfDrop(files: readonly unknown[]): Promise<FolderEntry | null>;
}
