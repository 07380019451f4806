import type { CriterionResult, Evidence } from '../../analysis/criteria/criterion.ts';
import { evaluateCriteria } from '../../analysis/criteria/evaluate-criteria.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import type { RuleSet } from '../../analysis/criteria/rule-set.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { evidenceOf, surveyOf } from './rope-for-tests.ts';
import type { SurveyParts } from './rope-for-tests.ts';

export function shippedSet(id: string): RuleSet {
  const set = RULE_SETS.find((each) => each.id === id);
  if (!set) throw new Error(`no set ${id}`);
  return set;
}

/** Judges one rope with one inspection by one set. */
export async function judge(setId: string, rope: Parameters<typeof evidenceOf>[0], parts: SurveyParts, geometry: Partial<Evidence['geometry']> = {}) {
  const evidence = evidenceOf(rope, [surveyOf({ length: 30, ...parts })]);
  return judgeEvidence(setId, { ...evidence, geometry: { ...evidence.geometry, ...geometry } });
}

export async function judgeEvidence(setId: string, evidence: Evidence) {
  const outcome = await evaluateCriteria(evidence, [shippedSet(setId)], noCheckpoint);
  const find = (clause: string): CriterionResult => {
    const found = outcome.results.find((each) => each.clause === clause);
    if (!found) throw new Error(`${clause} not evaluated: ${outcome.notEvaluated.find((each) => each.clause === clause)?.needs ?? 'no such clause'}`);
    return found;
  };
  return { ...outcome, find };
}
