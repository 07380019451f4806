import type { RopeMap } from '../alignment/rope-map.ts';
import type { Condition, Profile } from '../condition/condition.ts';
import type { VisualNote } from '../intake/visual-note.ts';
import type { Run } from '../intake/run.ts';
import type { QualityFinding } from './finding.ts';
import type { Interval } from './interval.ts';
import type { Trace } from './trace.ts';

/** Standard uncertainty (one sigma) of LMA and LF between repeated runs of one inspection; null with one run. */
export interface Repeatability {
  readonly lossPercent: number | null;
  readonly fault: number | null;
}

/** One inspection brought to the rope axis. `rope` traces of all inspections share start, step and length. */
export interface Survey {
  readonly id: string;
  readonly date: string;
  readonly trips: number | null;
  readonly runs: readonly Run[];
  readonly map: RopeMap;
  /** The inspection's own frame: what the file shows. Several runs are already combined. */
  readonly measured: Trace<'measured'>;
  /** On the rope axis; `loss` counts from the rope's own baseline. */
  readonly rope: Trace<'rope'>;
  readonly covered: readonly Interval<'rope'>[];
  readonly condition: Condition<'rope'>;
  readonly quality: readonly QualityFinding<'rope'>[];
  readonly repeatability: Repeatability;
  /** Claimed 95 % bound of the rope map by rope position. */
  readonly mapUncertainty: Profile<'rope'>;
  readonly notes: readonly VisualNote[];
  /** Set where `rope.loss` was brought to the common scale and zero of all inspections, for comparing dates. */
  readonly comparison?: Comparison;
}

/** How well one inspection compares with the others, measured on the rope's own sound lengths. One sigma. */
export interface Comparison {
  /** Share of the value. */
  readonly scaleUncertainty: number;
  /** Percent of area, for means over lengths of rope in metres, rising. */
  readonly level: readonly { readonly length: number; readonly sigma: number }[];
}
