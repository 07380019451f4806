import type { Interval } from '../rope/interval.ts';
import type { Clause } from './rule-set.ts';
import type { Evidence, Measurement } from './criterion.ts';
import type { Survey } from '../rope/survey.ts';

/** The worst place that one inspection shows for one clause. */
export interface Governing {
  readonly where: Interval<'rope'>;
  readonly value: number;
  /** One sigma; null for an exact count. */
  readonly uncertainty: number | null;
  /** Only part of what counts was seen: the true value is no smaller. */
  readonly lowerBound: boolean;
  /** A whole number compared exactly. */
  readonly exact: boolean;
  readonly note: string;
}

/** Values along the rope; null where nothing was inspected. */
export interface Along {
  readonly positions: readonly number[];
  readonly values: readonly (number | null)[];
}

export type Judged = { readonly governing: Governing; readonly along: Along | null } | { readonly needs: string };

/** How one kind of measure is taken: along a whole inspection, and over one fixed length. */
export interface MeasureTaker {
  along(clause: Clause, evidence: Evidence, survey: Survey, limit: number): Judged;
  over(clause: Clause, evidence: Evidence, survey: Survey, where: Interval<'rope'>): Measurement | null;
}
