import type { AppState } from './app-state.ts';

/**
 * What can be taken back after a command: `nothing` changed that would need it; `view`: going back in the views;
 * `journal`: taking back adds a counterpart to the journal, which keeps both.
 */
export type UndoPolicy = 'nothing' | 'view' | 'journal';

/** One thing that a user can do, wherever it is offered: button, key or command list. */
export interface Command {
  readonly name: string;
  readonly title: string;
  readonly group: 'Rope folder' | 'Screens' | 'Strips' | 'Places' | 'Window';
  /** Keys such as `Ctrl+K`, `+`, `ArrowLeft`; the first is shown. */
  readonly keys: readonly string[];
  readonly enabled: (state: AppState) => boolean;
  readonly run: (state: AppState) => void | Promise<void>;
  readonly undo: UndoPolicy;
}

export const hasRope = (state: AppState): boolean => state.view !== null;
export const hasPlace = (state: AppState): boolean => state.view !== null && state.place !== null;
