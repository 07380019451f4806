import type { JournalEntry } from '../../analysis/rope/journal.ts';
import { analyse } from './analyse.ts';
import type { Omitted } from './app-state.ts';
import { troubleOf } from './open-rope.ts';
import { change, store } from './store.ts';

interface Decision {
  readonly label: string;
  readonly entries: readonly Omitted[];
  /** Entries that take the decision back; none where the journal knows no way back. */
  readonly inverse: readonly Omitted[];
  /** True where the decision changes what the analysis finds. */
  readonly rerun: boolean;
}

/** Adds a decision to the journal with who and when, and runs the analysis again where it changes what is found. */
export async function decide(decision: Decision): Promise<boolean> {
  const added = await appendAll(decision.entries);
  if (!added) return false;
  if (decision.inverse.length > 0) change({ undo: [...store.getState().undo, { label: decision.label, entries: decision.inverse, rerun: decision.rerun }] });
  change({ spoken: decision.label });
  if (decision.rerun) await analyse(decision.label);
  return true;
}

/** Takes the newest decision back by adding its counterpart: the journal keeps both. */
export async function takeBack(): Promise<void> {
  const { undo } = store.getState();
  const last = undo.at(-1);
  if (!last) return;
  if (!(await appendAll(last.entries))) return;
  change({ undo: undo.slice(0, -1), spoken: `Taken back: ${last.label}` });
  if (last.rerun) await analyse(`Taking back: ${last.label}`);
}

async function appendAll(entries: readonly Omitted[]): Promise<boolean> {
  const { rope, shell } = store.getState();
  if (rope === null) return false;
  const act = { at: new Date().toISOString(), who: shell?.user || 'not named' };
  try {
    for (const entry of entries) change({ journal: await rope.append({ ...act, ...entry } as JournalEntry) });
    return true;
  } catch (error) {
    change({ trouble: troubleOf(error, 'The decision could not be kept') });
    return false;
  }
}
