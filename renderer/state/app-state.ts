import type { FolderEntry } from '../../main/contract.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';
import type { Problem } from '../../analysis/rope/problem.ts';
import type { ShellDescription } from '../host/find-host.ts';
import type { DroppedFile } from '../host/dropped-source.ts';
import type { Host } from '../host/host.ts';
import type { RopeSource } from '../host/rope-source.ts';
import type { AnalysisSession } from '../workers/analysis-session.ts';
import type { AnalysisView } from '../workers/analysis-view.ts';

export const SCREENS = ['rope', 'places', 'criteria', 'life', 'compare', 'section', 'intake', 'report'] as const;
export type ScreenName = (typeof SCREENS)[number];

/** A length of the rope axis in view, metres. */
export interface RopeWindow {
  readonly from: number;
  readonly to: number;
}

/** Long work under way, for the progress display. */
export interface Working {
  readonly label: string;
  readonly stage: string;
  readonly share: number;
  readonly cancelling: boolean;
}

/** What went wrong: what happened, and what to do. */
export interface Trouble {
  readonly title: string;
  readonly remedy: string;
  readonly problems: readonly Problem[];
}

/** A decision that can be taken back by adding its counterpart to the journal. */
export interface UndoStep {
  readonly label: string;
  readonly entries: readonly Omitted[];
  readonly rerun: boolean;
}
/** A journal entry without who and when, which are set at the moment it is added. */
export type Omitted = JournalEntry extends infer E ? (E extends JournalEntry ? Omit<E, 'at' | 'who'> : never) : never;

export type DialogName = 'commands' | 'shortcuts' | 'cautions' | 'browse' | 'note' | 'go-to' | 'review' | 'rules' | 'parameters';

export interface CompareChoice {
  readonly earlier: string | null;
  readonly later: string | null;
  readonly average: number; // m
  readonly pinning: boolean;
}

export interface AppState {
  readonly host: Host | null;
  readonly shell: ShellDescription | null;
  readonly recent: readonly (FolderEntry & { openedAt: string })[];
  readonly samples: readonly FolderEntry[];
  readonly rope: RopeSource | null;
  /** Files that came without a record, for the form that makes one. */
  readonly unrecorded: readonly DroppedFile[] | null;
  readonly journal: readonly JournalEntry[];
  readonly session: AnalysisSession | null;
  readonly view: AnalysisView | null;
  readonly working: Working | null;
  readonly trouble: Trouble | null;
  /** Faults of the last folder that could not be assessed; kept after the notice is put away. */
  readonly refused: readonly Problem[];
  readonly screen: ScreenName;
  readonly beside: 'places' | 'criteria' | 'life';
  readonly window: RopeWindow;
  readonly windowHistory: readonly RopeWindow[];
  readonly cursor: number | null;
  readonly place: string | null;
  /** `rule set / clause` of the chosen criterion. */
  readonly clause: string | null;
  readonly hidden: readonly string[];
  readonly compare: CompareChoice;
  readonly review: 'accepted' | 'set-aside' | 'relabelled' | null;
  readonly dialog: DialogName | null;
  readonly theme: 'light' | 'dark';
  /** Read out by screen readers when it changes. */
  readonly spoken: string;
  readonly undo: readonly UndoStep[];
}

export const EMPTY: AppState = {
  host: null, shell: null, recent: [], samples: [], rope: null, unrecorded: null, journal: [], session: null, view: null, working: null, trouble: null, refused: [],
  screen: 'rope', beside: 'places', window: { from: 0, to: 1 }, windowHistory: [], cursor: null, place: null, clause: null, hidden: [],
  compare: { earlier: null, later: null, average: 0.5, pinning: false }, review: null, dialog: null, theme: 'light', spoken: '', undo: [],
};
