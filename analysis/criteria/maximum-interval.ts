import type { Evidence, Provenance } from './criterion.ts';
import type { IntervalRule, RuleSet } from './rule-set.ts';

export interface MaximumInterval {
  readonly months: number;
  readonly sentence: string;
  readonly provenance: Provenance;
}

const YEAR = 365.25 * 86_400_000;

/**
 * The longest time that a set allows from the newest inspection to the next: the shortest of its intervals whose conditions hold.
 * `worstLossPercent` is the largest loss of section found, or null where none could be measured: bands by loss then count as their
 * most demanding. Without a date of installation, intervals by age count as their most demanding too. Null: the set asks for none.
 */
export function maximumInterval(ruleSet: RuleSet, evidence: Evidence, worstLossPercent: number | null): MaximumInterval | null {
  const holding = ruleSet.intervals.filter((rule) => holds(rule, evidence, worstLossPercent));
  if (holding.length === 0) return null;
  const shortest = holding.reduce((a, b) => (b.months < a.months ? b : a));
  return { months: shortest.months, sentence: shortest.sentence, provenance: shortest.provenance };
}

function holds(rule: IntervalRule, evidence: Evidence, loss: number | null): boolean {
  const { lossAbovePercent, lossUpToPercent, ageFromYears, ageBelowYears, firstInspection } = rule.when;
  const inspected = evidence.surveys.length > 0;
  if (firstInspection !== undefined && firstInspection === inspected) return false;
  if (loss !== null && lossAbovePercent !== undefined && !(loss > lossAbovePercent)) return false;
  if (loss !== null && lossUpToPercent !== undefined && !(loss <= lossUpToPercent)) return false;
  const age = ageAtNewest(evidence);
  if (age === null) return true;
  if (ageFromYears !== undefined && age < ageFromYears) return false;
  return ageBelowYears === undefined || age < ageBelowYears;
}

function ageAtNewest(evidence: Evidence): number | null {
  if (evidence.installed === null || evidence.surveys.length === 0) return null;
  return (Date.parse(evidence.surveys[evidence.surveys.length - 1].date) - Date.parse(evidence.installed)) / YEAR;
}
