import type { Interval } from './interval.ts';
import type { Frame } from './units.ts';

/** A remark on the quality of a run, placed on the rope: what is wrong and what to do about it. */
export interface QualityFinding<F extends Frame> {
  readonly code: string;
  readonly level: 'info' | 'warning' | 'reject';
  readonly message: string;
  readonly where: Interval<F>;
}
