import type { Trace } from '../rope/trace.ts';
import type { Frame } from '../rope/units.ts';

/** The samples nearest to one position, for the cursor; null where nothing valid was measured there. */
export interface Reading {
  readonly loss: number | null;
  readonly fault: number | null;
}

/** Reads the sample nearest to `position` (metres). Beyond the ends of the trace nothing was measured. */
export function readingAt<F extends Frame>(trace: Trace<F>, position: number): Reading {
  const index = Math.round((position - trace.start) / trace.step);
  const inside = index >= 0 && index < trace.length;
  const of = (channel: Trace<F>['loss']) => (inside && channel !== null && channel.valid[index] === 1 ? channel.values[index] : null);
  return { loss: of(trace.loss), fault: of(trace.fault) };
}
