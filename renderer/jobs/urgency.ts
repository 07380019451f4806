import type { CriterionResult } from '../../analysis/criteria/criterion.ts';
import type { GrowthState, Place } from '../../analysis/growth/place.ts';
import type { AnalysisView } from '../workers/analysis-view.ts';

export interface UrgentPlace {
  readonly place: Place;
  /** The criterion with the greatest share of its limit whose worst place touches this one. */
  readonly criterion: CriterionResult | null;
}

const STATE_RANK: Record<GrowthState, number> = { growing: 0, new: 1, 'not-inspected': 2, stable: 3, 'not-found': 4, receding: 5 };
const VERDICT_RANK = { reached: 0, 'may-be-reached': 1, 'not-reached': 2 } as const;

/**
 * Places in the order in which a competent person should look at them: a criterion reached there, one that may be reached,
 * then what grows (fastest first), what is new, what could not be seen this time, then the rest by share of limit and position.
 */
export function byUrgency(view: Pick<AnalysisView, 'places' | 'criteria'>): UrgentPlace[] {
  return view.places.map((place) => ({ place, criterion: governing(place, view.criteria.results) })).sort(compare);
}

function governing(place: Place, results: readonly CriterionResult[]): CriterionResult | null {
  let worst: CriterionResult | null = null;
  for (const each of results) {
    if (each.where.from > place.where.to || each.where.to < place.where.from) continue;
    // A clause over half the rope touches every place and says nothing about one of them.
    if (each.where.to - each.where.from > 25) continue;
    if (worst === null || rank(each) < rank(worst) || (rank(each) === rank(worst) && each.utilisation > worst.utilisation)) worst = each;
  }
  return worst;
}

function rank(criterion: CriterionResult | null): number {
  return criterion === null ? VERDICT_RANK['not-reached'] : VERDICT_RANK[criterion.verdict];
}

function compare(a: UrgentPlace, b: UrgentPlace): number {
  return rank(a.criterion) - rank(b.criterion)
    || STATE_RANK[a.place.state] - STATE_RANK[b.place.state]
    || (b.place.ratePerYear ?? -Infinity) - (a.place.ratePerYear ?? -Infinity) || 0
    || (b.criterion?.utilisation ?? 0) - (a.criterion?.utilisation ?? 0)
    || a.place.where.from - b.place.where.from;
}
