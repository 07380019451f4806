import type { RopeWindow } from './app-state.ts';
import { around, kept } from './rope-window.ts';
import { change, store } from './store.ts';

const REMEMBERED = 50;

/** Changes the length in view. `remember` keeps the former one for going back; a drag or a turn of the wheel does not. */
export function showWindow(window: RopeWindow, remember: boolean): void {
  const { view, window: former, windowHistory } = store.getState();
  if (view === null) return;
  const next = kept(window, view.extent);
  if (next.from === former.from && next.to === former.to) return;
  change({ window: next, windowHistory: remember ? [...windowHistory, former].slice(-REMEMBERED) : windowHistory });
}

/** Brings a length of rope into view and puts the cursor on its middle. */
export function showLength(from: number, to: number): void {
  const { view } = store.getState();
  if (view === null) return;
  showWindow(around(from, to, view.extent), true);
  change({ cursor: (from + to) / 2 });
}

/** Chooses a place of the list and moves every strip to it. */
export function showPlace(id: string): void {
  const place = store.getState().view?.places.find((each) => each.id === id);
  if (!place) return;
  change({ place: id, spoken: `Place ${id}` });
  showLength(place.where.from, place.where.to);
}

/** Chooses a criterion and moves every strip to its worst place. */
export function showCriterion(key: string, from: number, to: number): void {
  change({ clause: key });
  showLength(from, to);
}
