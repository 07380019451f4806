import { createStore, useStore } from 'zustand';
import { EMPTY } from './app-state.ts';
import type { AppState } from './app-state.ts';

/** The one store of the page. Commands and flows change it; components read it. */
export const store = createStore<AppState>(() => EMPTY);

export function useApp<T>(select: (state: AppState) => T): T {
  return useStore(store, select);
}

export const change = (part: Partial<AppState>): void => store.setState(part);
