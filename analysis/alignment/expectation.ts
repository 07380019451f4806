import { positionAt } from '../rope/trace.ts';
import type { AlignmentContext, AlignmentInput } from './align-inspections.ts';
import type { Direction } from './align-scan.ts';
import type { RopeMap } from './rope-map.ts';

/** What record and file say before any signal is looked at. `shift` is rope position minus scan position (mirrored for reverse). */
export interface Expectation {
  readonly direction: Direction;
  readonly stated: boolean;
  readonly shift: { readonly forward: number; readonly reverse: number };
  /** Log prior, nats, of a direction and a shift. */
  prior(direction: Direction, shift: number): number;
  readonly recordedCutA: number;
  readonly recordedCutB: number;
}

/** A stated direction outweighs a chance match, not a clear one. */
const STATED_WEIGHT = 10;
/** Shifts spread about this far from the recorded one. Metres. */
const SHIFT_SPREAD = 15;

export function expectationFor(input: AlignmentInput, first: AlignmentInput, firstMap: RopeMap, context: AlignmentContext): Expectation {
  const since = context.events.filter((event) => Date.parse(event.date) > Date.parse(first.date) && Date.parse(event.date) <= Date.parse(input.date));
  const cut = (end: 'A' | 'B'): number => since.filter((event) => event.kind === 'shortened' && event.end === end).reduce((sum, event) => sum + (event.length_m ?? 0), 0);
  const turned = since.filter((event) => event.kind === 'turned').length % 2 === 1;
  const reversed = (input.statedDirection === 'reverse' && !input.positionsFell) !== turned;
  const ropeEnd = Math.max(firstMap.knots[0].rope, firstMap.knots[firstMap.knots.length - 1].rope);
  const end = positionAt(input.trace, input.trace.length - 1);
  const [recordedCutA, recordedCutB] = [cut('A'), cut('B')];
  // Forward: the file's zero stands at the rope's present end A. Reverse: the file's last position does.
  const shift = { forward: recordedCutA, reverse: Math.min(ropeEnd - recordedCutB, recordedCutA + end) };
  const direction: Direction = reversed ? 'reverse' : 'forward';
  const stated = input.statedDirection !== null || turned;
  return {
    direction, stated, shift, recordedCutA, recordedCutB,
    prior: (candidate, value) => (stated && candidate === direction ? STATED_WEIGHT : 0) - (context.loopLength === null ? Math.min(12, 0.5 * ((value - shift[candidate]) / SHIFT_SPREAD) ** 2) : 0),
  };
}
