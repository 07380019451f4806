import { positionAt } from '../rope/trace.ts';
import { measuredPosition, ropePosition } from '../rope/units.ts';
import type { AlignmentContext, AlignmentInput } from './align-inspections.ts';
import type { RopeMap } from './rope-map.ts';

/**
 * The first inspection's own positions are the rope's, after its stated direction: a reverse run whose positions rise
 * starts at end B, so its positions count back from the rope's length (from its own end where no length is on record).
 */
export function firstMap(input: AlignmentInput, context: AlignmentContext): RopeMap {
  const half = input.trace.step / 2;
  const start = measuredPosition(input.trace.start - half);
  const end = measuredPosition(positionAt(input.trace, input.trace.length - 1) + half);
  const reversed = input.statedDirection === 'reverse' && !input.positionsFell;
  const whole = context.ropeLength ?? end - half;
  const rope = (measured: number) => ropePosition(reversed ? whole - measured : measured);
  return {
    knots: [{ measured: start, rope: rope(start) }, { measured: end, rope: rope(end) }],
    reversed, uncertainty: [{ measured: start, value: 0 }, { measured: end, value: 0 }],
    confidence: 1, basis: reversed ? 'first inspection: its own positions, counted back from the other end as the record states' : 'first inspection: its own positions are the rope positions',
    loopLength: context.loopLength, slips: [], remarks: [],
  };
}
