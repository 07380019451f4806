import type { BreakEvent } from './break-events.ts';

export interface WeightedWindow {
  /** While the window holds no event: the position that its far end must reach before it holds one; otherwise null. */
  quietUpTo(): number | null;
  between(from: number, to: number): number;
}

/** Positions this close are the same: a break on the edge of a window belongs to it, whatever rounding did to the edge. Metres. */
const SAME = 1e-9;

/**
 * Sum of event areas in a window that only moves forward. Both ends belong to the window. On a loop the events stand again one
 * round later, so that a window may run past the seam. Amortised constant time a step.
 */
export function weightedWindow(events: readonly BreakEvent[], loopLength: number | null, loop: boolean): WeightedWindow {
  const usable = events.filter((event) => event.area !== null);
  const all = loop && loopLength !== null ? [...usable, ...usable.map((event) => ({ ...event, position: event.position + loopLength }))] : usable;
  all.sort((a, b) => a.position - b.position);
  const held = new Map<string, number>();
  let first = 0;
  let end = 0;
  let sum = 0;
  const add = (event: BreakEvent, sign: 1 | -1) => {
    if (event.wire === null) {
      sum += sign * event.area!;
      return;
    }
    const before = held.get(event.wire) ?? 0;
    held.set(event.wire, before + sign);
    if (sign === 1 ? before === 0 : before === 1) sum += sign * event.area!;
  };
  return {
    quietUpTo: () => (first !== end ? null : end < all.length ? all[end].position - SAME : Infinity),
    between(from, to) {
      while (end < all.length && all[end].position <= to + SAME) add(all[end++], 1);
      while (first < end && all[first].position < from - SAME) add(all[first++], -1);
      // Nothing held is exactly nothing, whatever rounding the running sum has picked up.
      if (first === end) sum = 0;
      return sum;
    },
  };
}
