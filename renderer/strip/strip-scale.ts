import type { RopeWindow } from '../state/app-state.ts';

/** Pixels left and right of every strip, so that rulers, plots and lanes stand exactly above each other. */
export const GUTTER_LEFT = 78;
export const GUTTER_RIGHT = 14;

/** Where a position stands in a strip, as percent of its width; may lie outside 0..100. */
export function percentOf(position: number, window: RopeWindow): number {
  return ((position - window.from) / (window.to - window.from)) * 100;
}

/** Left and width in percent of a length, cut to the strip; null where it is out of view. `least` keeps a short one visible. */
export function barOf(from: number, to: number, window: RopeWindow, least = 0.25): { left: string; width: string } | null {
  const left = Math.max(0, percentOf(from, window));
  const right = Math.min(100, percentOf(to, window));
  if (right < 0 || left > 100 || right < left) return null;
  return { left: `${left}%`, width: `${Math.min(Math.max(right - left, least), 100 - left)}%` };
}

/** Position under a pointer at `x` pixels from the left of a strip that is `width` pixels wide, gutters included. */
export function positionAtPixel(x: number, width: number, window: RopeWindow): number {
  return window.from + ((x - GUTTER_LEFT) / Math.max(1, width - GUTTER_LEFT - GUTTER_RIGHT)) * (window.to - window.from);
}
