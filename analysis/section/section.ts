import type { Assessment } from '../assessment/schema.ts';

export type SectionFinding = 'indicated' | 'not-indicated' | 'not-inspected' | 'no-data';

/** One inspection's answer about one section, in the names of the published output. Null: cannot be said. */
export interface SectionInspection {
  readonly id: string;
  readonly date: string;
  readonly finding: SectionFinding;
  readonly coverage_share: number;
  readonly mean_loss_percent: number | null;
  readonly loss_rank_percentile: number | null;
  readonly faults: Assessment['inspections'][number]['faults'];
  readonly zones: readonly { readonly id: string; readonly from_m: number; readonly to_m: number; readonly kind: string; readonly mean_loss_percent: number }[];
  readonly texture_ratio: number | null;
  readonly smallest_detectable_loss_percent: number | null;
  readonly position_uncertainty_m: number | null;
  readonly notes: readonly { readonly from_m: number; readonly to_m: number; readonly kind: string; readonly value: number | null; readonly unit: string; readonly severity: string; readonly photo: string | null; readonly remark: string }[];
  /** Photos that no note names, where they lie or may lie in the section. */
  readonly photos: readonly { readonly file: string; readonly position_m: number; readonly within_m: number | null; readonly reason: string }[];
}

export interface SectionHistory {
  readonly section: {
    readonly at_m: number;
    readonly half_width_m: number;
    readonly finding: SectionFinding;
    readonly reason: string;
    readonly inspections: readonly SectionInspection[];
    readonly growth: Assessment['growth'];
    readonly criteria: Assessment['criteria'];
    readonly cautions: readonly string[];
  };
}
