import type { RopeWindow } from './app-state.ts';

/** The shortest length worth drawing: one broken wire is a few centimetres wide. */
const SHORTEST = 0.1;

/** Keeps a window on the rope, no longer than the rope and no shorter than SHORTEST. Metres throughout. */
export function kept(window: RopeWindow, extent: RopeWindow): RopeWindow {
  const whole = extent.to - extent.from;
  const length = Math.min(whole, Math.max(SHORTEST, window.to - window.from));
  const middle = (window.from + window.to) / 2;
  const from = Math.min(Math.max(middle - length / 2, extent.from), extent.to - length);
  return { from, to: from + length };
}

/** Zooms by `factor` (below 1: closer) so that the position `about` stays where it is on the screen. */
export function zoomed(window: RopeWindow, factor: number, about: number, extent: RopeWindow): RopeWindow {
  const length = Math.min(extent.to - extent.from, Math.max(SHORTEST, (window.to - window.from) * factor));
  const share = (about - window.from) / (window.to - window.from);
  return kept({ from: about - share * length, to: about + (1 - share) * length }, extent);
}

/** Moves by a share of what is in view. */
export function moved(window: RopeWindow, share: number, extent: RopeWindow): RopeWindow {
  const by = share * (window.to - window.from);
  return kept({ from: window.from + by, to: window.to + by }, extent);
}

/** A window that shows a length of rope with some of its surroundings. */
export function around(from: number, to: number, extent: RopeWindow): RopeWindow {
  const margin = Math.max(1.5, 0.6 * (to - from));
  return kept({ from: from - margin, to: to + margin }, extent);
}
