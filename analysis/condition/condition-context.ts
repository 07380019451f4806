import type { Checkpoint } from '../rope/checkpoint.ts';
import type { Interval } from '../rope/interval.ts';

/** What is known beside the trace. Lengths in metres of the file's own position. */
export interface ConditionContext {
  /** Splices, sockets, tucks, markers: features of the record, never findings. */
  readonly known: readonly Interval<'measured'>[];
  /** Lengths that the head cannot read. */
  readonly blind: readonly Interval<'measured'>[];
  /** Lay length over strands, m. */
  readonly nominalStrandSpacing: number | null;
  /** Share of one outer wire in the metallic area, percent, and its diameter. */
  readonly outerWireSharePercent: number | null;
  readonly outerWireDiameterMm: number | null;
  /** Percent of metallic area per LF unit, from a known wire. */
  readonly knownWireCalibration: number | null;
  /** Breaks seen: where (measured) and how many. */
  readonly visualBreaks: readonly { readonly position: number; readonly count: number }[];
  readonly parameters?: Readonly<Partial<Record<string, number>>>;
  readonly seed: number;
  readonly checkpoint: Checkpoint;
}
