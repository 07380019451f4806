import type { Interval } from '../rope/interval.ts';
import type { SeriesPoint } from '../growth/place.ts';

/** When a criterion would be reached at one place, or why that cannot be said. */
export interface Forecast {
  readonly ruleSet: string;
  readonly clause: string;
  readonly where: Interval<'rope'>;
  readonly model: string; // 'none' when refused
  readonly basis: 'calendar' | 'trips';
  readonly inspectionsUsed: number;
  /** ISO dates of the 10, 50 and 90 % points of the first passage; null where refused. */
  readonly date: { readonly low: string | null; readonly median: string | null; readonly high: string | null };
  readonly trips: { readonly low: number | null; readonly median: number | null; readonly high: number | null };
  readonly notBefore: string | null;
  readonly reason: string;
  readonly series: readonly SeriesPoint[];
  readonly limit: number;
  readonly unit: string;
  /** Probability that the limit is reached by a date, rising; between two dates it may be taken as straight; where dates are given, on the same footing as they. Empty where refused. */
  readonly chance: readonly { readonly date: string; readonly share: number }[];
  /** For the chart: the model's value by date with its 10-90 % band. Empty where refused. */
  readonly band: readonly { readonly date: string; readonly low: number; readonly median: number; readonly high: number }[];
}

export interface NextInspection {
  readonly by: string | null;
  readonly reasons: readonly string[];
  /** Share of the time to the earliest low bound that was used. */
  readonly intervalShare: number;
  /** Which further inspection would narrow the interval most. */
  readonly advice: string;
}

export interface LifeOutcome {
  readonly forecasts: readonly Forecast[];
  readonly nextInspection: NextInspection;
}
