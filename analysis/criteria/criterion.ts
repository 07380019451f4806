import type { Interval } from '../rope/interval.ts';
import type { CutOff } from '../rope/cut-off.ts';
import type { RopeGeometry } from '../rope/geometry.ts';
import type { Landmark, RopeEvent } from '../rope/record.ts';
import type { Survey } from '../rope/survey.ts';
import type { Place } from '../growth/place.ts';

export type Provenance = 'published' | 'memory' | 'common-practice' | 'derived' | 'disputed' | 'user';

/** Everything known of one rope that a criterion may ask about. */
export interface Evidence {
  readonly geometry: RopeGeometry;
  readonly application: string;
  readonly ropeLength: number | null;
  readonly loopLength: number | null;
  readonly installed: string | null;
  readonly surveys: readonly Survey[]; // oldest first
  readonly places: readonly Place[];
  readonly landmarks: readonly Landmark[];
  readonly events: readonly RopeEvent[];
  /** Lengths that recorded events cut off the rope up to the newest inspection. */
  readonly cutOffs?: readonly CutOff[];
}

export interface Measurement {
  readonly value: number;
  /** One sigma, in the unit of the value; null where it is an exact count. */
  readonly uncertainty: number | null;
}

/** One clause judged at its governing place for one inspection. */
export interface CriterionResult {
  readonly ruleSet: string;
  readonly clause: string;
  readonly provenance: Provenance;
  readonly measure: string;
  readonly window: number | null; // m
  readonly inspection: string;
  readonly where: Interval<'rope'>;
  readonly value: number;
  readonly valueUncertainty: number | null;
  readonly limit: number;
  readonly comparator: '>' | '>=' | '<' | '<=';
  readonly unit: string;
  /** Value as a share of the limit, 1 at the limit. */
  readonly utilisation: number;
  readonly reached: boolean;
  readonly verdict: 'reached' | 'may-be-reached' | 'not-reached';
  readonly sentence: string;
  readonly note: string;
  /** What the rule asks for when it is reached; left out: discard. Only `discard` ends the service of the rope. */
  readonly consequence?: 'discard' | 're-terminate' | 'inform' | 'watch';
}

export interface NotEvaluated {
  readonly ruleSet: string;
  readonly clause: string;
  readonly needs: string;
}

/** Share of limit along the rope for one clause; null where it was not inspected. */
export interface UtilisationStrip {
  readonly ruleSet: string;
  readonly clause: string;
  readonly positions: readonly number[];
  readonly values: readonly (number | null)[];
}

export interface ChosenRuleSet {
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly reason: string;
}

export interface CriteriaOutcome {
  readonly ruleSets: readonly ChosenRuleSet[];
  /** Every evaluable clause at its worst place, at the newest inspection that can judge it. */
  readonly results: readonly CriterionResult[];
  readonly notEvaluated: readonly NotEvaluated[];
  readonly strips: readonly UtilisationStrip[];
}
