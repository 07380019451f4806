import type { Fault, Zone } from './condition.ts';

/** A finding of one run round a loop, with where it stands when positions are not wrapped. */
export interface Unwrapped<T> {
  readonly found: T;
  readonly at: number;
}

/** Two passes over one place agree within this distance or within their bounds, whichever is more. Metres. */
const SAME_PLACE = 0.1;

/**
 * Faults of one run, each once: a run that goes past its own start on a loop shows the overlap twice. Two faults are one where
 * they come from different rounds and their places on the rope agree; the clearer one is kept. Each fault has one partner at most.
 */
export function faultsOnce(faults: readonly Unwrapped<Fault<'rope'>>[], loopLength: number): Fault<'rope'>[] {
  const clearest = [...faults].sort((a, b) => b.found.snr - a.found.snr);
  const dropped = new Set<Unwrapped<Fault<'rope'>>>();
  const kept: Fault<'rope'>[] = [];
  for (const each of clearest) {
    if (dropped.has(each)) continue;
    kept.push(each.found);
    const partners = clearest.filter((other) => other !== each && !dropped.has(other) && !kept.includes(other.found) && Math.abs(other.at - each.at) > loopLength / 2
      && apart(other.found.position, each.found.position, loopLength) <= Math.max(SAME_PLACE, Math.hypot(other.found.positionUncertainty, each.found.positionUncertainty)));
    const nearest = partners.sort((a, b) => apart(a.found.position, each.found.position, loopLength) - apart(b.found.position, each.found.position, loopLength))[0];
    if (nearest) dropped.add(nearest);
  }
  return kept;
}

/** Zones of one run, each once: of two from different rounds that share most of the shorter one, the longer is kept. */
export function zonesOnce(zones: readonly Unwrapped<Zone<'rope'>>[], loopLength: number): Zone<'rope'>[] {
  const longest = [...zones].sort((a, b) => lengthOf(b.found) - lengthOf(a.found));
  const kept: Unwrapped<Zone<'rope'>>[] = [];
  for (const each of longest) {
    const twice = kept.some((other) => Math.abs(other.at - each.at) > loopLength / 2 && shared(other.found, each.found) > 0.5 * lengthOf(each.found));
    if (!twice) kept.push(each);
  }
  return kept.map((each) => each.found);
}

function apart(a: number, b: number, loopLength: number): number {
  const straight = Math.abs(a - b);
  return Math.min(straight, loopLength - straight);
}

const lengthOf = ({ where }: Zone<'rope'>): number => where.to - where.from;
const shared = (a: Zone<'rope'>, b: Zone<'rope'>): number => Math.min(a.where.to, b.where.to) - Math.max(a.where.from, b.where.from);
