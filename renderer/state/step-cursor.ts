import type { AppState } from './app-state.ts';
import { showWindow } from './show.ts';
import { change } from './store.ts';

/** Moves the cursor by a hundredth of what is in view, and the view with it at the edge. */
export function stepCursor({ cursor, window, view }: AppState, direction: 1 | -1): void {
  if (view === null) return;
  const length = window.to - window.from;
  const former = cursor === null || cursor < window.from || cursor > window.to ? (window.from + window.to) / 2 : cursor;
  const at = Math.min(view.extent.to, Math.max(view.extent.from, former + (direction * length) / 100));
  change({ cursor: at });
  if (at < window.from || at > window.to) showWindow({ from: window.from + (direction * length) / 2, to: window.to + (direction * length) / 2 }, false);
}
