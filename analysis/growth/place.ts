import type { Interval } from '../rope/interval.ts';

export type GrowthState = 'new' | 'growing' | 'stable' | 'receding' | 'not-found' | 'not-inspected';

/** One place on the rope with what each inspection showed there. Judged at the newest inspection. */
export interface Place {
  readonly id: string;
  readonly subject: 'fault' | 'zone';
  readonly where: Interval<'rope'>;
  readonly state: GrowthState;
  /** Why the state is what it is, in words. */
  readonly reason: string;
  /** Zone: percent of metallic area a year. Fault: indications (equivalent breaks) a year. Null: cannot be said. */
  readonly ratePerYear: number | null;
  readonly rateLow: number | null;
  readonly rateHigh: number | null;
  readonly pValue: number | null;
  /** The same rate by a thousand trips, with its 95 % interval; null without trips on record. */
  readonly tripRate: { readonly perThousand: number; readonly low: number; readonly high: number } | null;
  readonly members: readonly { readonly inspection: string; readonly ref: string }[];
  /** The measured series over the same fixed length of rope, one point per inspection that saw it. */
  readonly series: readonly SeriesPoint[];
}

/** A measurement of one place at one date. `value` is percent loss (zone) or count of breaks (fault). */
export interface SeriesPoint {
  readonly inspection: string;
  readonly date: string;
  readonly trips: number | null;
  readonly value: number;
  /** Standard uncertainty (one sigma) of `value`, in its unit. */
  readonly uncertainty: number;
}
