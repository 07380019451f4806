import type { FolderEntry } from '../contract.ts';
import type { DiskFolder } from '../folder/rope-folder.ts';
import type { Lock } from '../folder/lock.ts';

/** What a shell lends to the operations: who it is, its dialogs, and where its own small files live. */
export interface Shell {
  readonly kind: 'desktop' | 'loopback';
  readonly version: string;
  readonly user: string;
  readonly nativeDialogs: boolean;
  /** Folder for the list of recent folders. */
  readonly settingsFolder: string;
  readonly samplesFolder: string;
  readonly home: string;
  chooseFolder(): Promise<string | null>;
  printReport(html: string): Promise<string | null>;
}

export interface Opened {
  readonly folder: DiskFolder;
  readonly lock: Lock | null;
}

/** State of one running shell. Paths stay here; the page holds tokens. */
export interface Session {
  readonly shell: Shell;
  readonly paths: Map<string, string>; // token -> path
  readonly opened: Map<string, Opened>; // token -> folder
  now(): string;
  /** Path of the folder to begin with, the first time it is asked for. */
  takeFirst(): string | null;
}

export type { FolderEntry };
