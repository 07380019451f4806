import type { Interval } from './interval.ts';
import type { Frame, Position } from './units.ts';

/**
 * One measured quantity on an even grid. `valid[i] === 1` says that `values[i]` was measured there.
 * Only the mask says so: a value under a 0 of the mask means nothing, whatever it is.
 */
export interface Channel {
  readonly values: Float64Array;
  readonly valid: Uint8Array;
}

/**
 * One inspection's signals on an even grid of positions: sample i stands at `start + i * step` (metres).
 * `loss` is loss of metallic area in percent, loss positive; `fault` is the LF signal in the file's own unit.
 */
export interface Trace<F extends Frame> {
  readonly start: Position<F>;
  readonly step: number;
  readonly length: number;
  readonly loss: Channel | null;
  readonly fault: Channel | null;
  readonly faultUnit: string;
  /** m/s at each sample where the file says or allows it. */
  readonly speed: Channel | null;
  /** Averaging length of the LMA channel in metres, from the record or the default of common practice. */
  readonly averagingLength: number;
}

export function positionAt<F extends Frame>(trace: Trace<F>, index: number): Position<F> {
  return (trace.start + index * trace.step) as Position<F>;
}

/** The lengths where the mask is 1; each sample stands for half a step to either side. */
export function validIntervals<F extends Frame>(trace: Trace<F>, valid: Uint8Array): Interval<F>[] {
  const found: Interval<F>[] = [];
  let first = -1;
  for (let i = 0; i <= trace.length; i += 1) {
    const good = i < trace.length && valid[i] === 1;
    if (good && first < 0) first = i;
    if (!good && first >= 0) {
      found.push({ from: (trace.start + (first - 0.5) * trace.step) as Position<F>, to: (trace.start + (i - 0.5) * trace.step) as Position<F> });
      first = -1;
    }
  }
  return found;
}
