import type { Checkpoint } from '../rope/checkpoint.ts';
import { goneLengths } from '../rope/cut-off.ts';
import { complementOf, totalLength } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import type { Survey } from '../rope/survey.ts';
import { isReached, shareOfLimit, worseIsMore } from './compare.ts';
import type { CriterionResult, Evidence, Measurement, NotEvaluated, UtilisationStrip } from './criterion.ts';
import { day } from './diameter-readings.ts';
import { governingWithin } from './governing-at.ts';
import type { Along, Governing } from './judged.ts';
import { appliesTo, loweredByWear, resolveLimit, windowInMetres } from './resolve-limit.ts';
import type { FoundLimit } from './resolve-limit.ts';
import type { Clause, RuleSet } from './rule-set.ts';
import { takerOf } from './take-measure.ts';

export { findClause } from './rule-set.ts';

export interface EvaluatedCriteria {
  readonly results: readonly CriterionResult[];
  readonly notEvaluated: readonly NotEvaluated[];
  readonly strips: readonly UtilisationStrip[];
}

/** Coverage factor 2, as the value is shown with (about 95 %; JCGM 100:2008 section 6.3.3, from memory): a range that touches the limit may have reached it. */
const COVERAGE_FACTOR = 2;

/**
 * Every clause of every set at its worst place, at the newest inspection that can judge it. A clause that none can judge, or that the
 * newest cannot, is listed with what it needs. With `within`, only those lengths are asked about, each at the newest inspection that
 * can judge there. Time is linear in samples times clauses; the checkpoint is called once per clause.
 */
export async function evaluateCriteria(evidence: Evidence, sets: readonly RuleSet[], checkpoint: Checkpoint, within: readonly Interval<'rope'>[] | null = null): Promise<EvaluatedCriteria> {
  const results: CriterionResult[] = [];
  const notEvaluated: NotEvaluated[] = [];
  const strips: UtilisationStrip[] = [];
  const clauses = sets.flatMap((set) => set.clauses.filter((clause) => appliesTo(clause.ropes, evidence.geometry)).map((clause) => ({ set, clause })));
  for (const set of sets) if (set.unknown) notEvaluated.push({ ruleSet: set.id, clause: '*', needs: set.scope.text });
  for (const [index, { set, clause }] of clauses.entries()) {
    await checkpoint(set.id, index / clauses.length);
    const judged = judgeClause(set, clause, evidence, within);
    if (judged.result) results.push(judged.result);
    if (judged.strip) strips.push(judged.strip);
    if (judged.needs !== null) notEvaluated.push({ ruleSet: set.id, clause: clause.id, needs: judged.needs });
  }
  return { results, notEvaluated, strips };
}

interface JudgedClause {
  readonly result: CriterionResult | null;
  readonly strip: UtilisationStrip | null;
  readonly needs: string | null;
}

function judgeClause(set: RuleSet, clause: Clause, evidence: Evidence, within: readonly Interval<'rope'>[] | null): JudgedClause {
  const none = (needs: string): JudgedClause => ({ result: null, strip: null, needs });
  if (evidence.surveys.length === 0) return none('an inspection');
  const stated = resolveLimit(clause, evidence.geometry);
  if ('needs' in stated) return none(stated.needs);
  const newest = evidence.surveys[evidence.surveys.length - 1];
  let needs: string | null = null;
  for (let i = evidence.surveys.length - 1; i >= 0; i -= 1) {
    const survey = evidence.surveys[i];
    const limit = clause.wearLowersLimit ? loweredByWear(stated, survey) : stated;
    const judged = takerOf(clause).along(clause, evidence, survey, limit.limit);
    if ('needs' in judged) {
      needs ??= judged.needs;
      continue;
    }
    const governing = within === null ? judged.governing : governingWithin(clause, evidence, survey, judged, within);
    if (governing === null) {
      needs ??= 'an inspection that saw this length';
      continue;
    }
    const result = resultOf(set, clause, evidence, survey, limit, governing);
    return { result, strip: judged.along && stripOf(set, clause, limit.limit, judged.along), needs: survey === newest ? null : staleness(needs ?? '', survey, newest) };
  }
  return none(needs ?? 'an inspection');
}

/** "not judged at 2026-03-31: a diameter ...; last known 2025-01-12 (14 months before)". */
function staleness(needs: string, last: Survey, newest: Survey): string {
  const months = Math.max(0, Math.floor((Date.parse(newest.date) - Date.parse(last.date)) / (86_400_000 * 30.4375)));
  return `${needs}; last judged from ${day(last.date)}, ${months} month${months === 1 ? '' : 's'} before the newest inspection`;
}

function resultOf(set: RuleSet, clause: Clause, evidence: Evidence, survey: Survey, limit: FoundLimit, governing: Governing): CriterionResult {
  const { value, uncertainty, where } = governing;
  const reached = isReached(value, clause.comparator, limit.limit, governing.exact);
  const verdict = reached ? 'reached' : mayBeReached(clause, limit.limit, governing) ? 'may-be-reached' : 'not-reached';
  const notes = [governing.note, limit.note, unseenNote(evidence, survey), ageNote(evidence, survey)].filter((text) => text !== '');
  return {
    ruleSet: set.id, clause: clause.id, provenance: limit.provenance !== null && clause.provenance === 'published' ? limit.provenance : clause.provenance,
    measure: clause.measure, window: clause.window && windowInMetres(clause.window, evidence.geometry), inspection: survey.id, where,
    value, valueUncertainty: uncertainty, limit: limit.limit, comparator: clause.comparator, unit: clause.unit,
    utilisation: shareOfLimit(value, clause.comparator, limit.limit), reached, verdict, sentence: sentenceOf(clause, limit.limit, governing, verdict),
    note: notes.join('. '), consequence: clause.consequence ?? 'discard',
  };
}

function mayBeReached(clause: Clause, limit: number, governing: Governing): boolean {
  if (governing.lowerBound) return true;
  if (governing.uncertainty === null || governing.uncertainty === 0) return false;
  const worse = worseIsMore(clause.comparator) ? 1 : -1;
  return isReached(governing.value + worse * COVERAGE_FACTOR * governing.uncertainty, clause.comparator, limit);
}

const WORDS = { '>=': 'or more', '>': 'more than', '<=': 'or less', '<': 'less than' } as const;

function sentenceOf(clause: Clause, limit: number, governing: Governing, verdict: CriterionResult['verdict']): string {
  const shown = (value: number) => (Number.isInteger(value) ? String(value) : value.toFixed(2));
  const bound = clause.comparator === '>' || clause.comparator === '<' ? `${WORDS[clause.comparator]} ${shown(limit)} ${clause.unit}` : `${shown(limit)} ${clause.unit} ${WORDS[clause.comparator]}`;
  const { from, to } = governing.where;
  const at = to - from < 0.005 ? `at ${from.toFixed(2)} m` : `from ${from.toFixed(2)} to ${to.toFixed(2)} m`;
  return `${clause.sentence} Found: ${shown(governing.value)} ${governing.value === 1 ? clause.unit.replace(/^wires$/, 'wire') : clause.unit} ${at}; criterion: ${bound}; ${verdict.replaceAll('-', ' ')}.`;
}

/** Lengths not inspected are not judged, and every result says how much that is. */
function unseenNote(evidence: Evidence, survey: Survey): string {
  const whole = wholeRope(evidence, survey);
  if (whole === null) return '';
  const gone = goneLengths((evidence.cutOffs ?? []).filter((each) => Date.parse(each.date) <= Date.parse(survey.date)), survey.covered);
  const unseen = totalLength(complementOf([...survey.covered, ...gone], whole));
  return unseen < 0.005 ? '' : `${unseen.toFixed(2)} m of ${(whole.to - whole.from - totalLength(gone)).toFixed(2)} m were NOT INSPECTED and are not judged`;
}

function wholeRope(evidence: Evidence, survey: Survey): Interval<'rope'> | null {
  if (evidence.ropeLength !== null) return { from: ropePosition(0), to: ropePosition(evidence.ropeLength) };
  const { start, step, length } = survey.rope;
  return length === 0 ? null : { from: ropePosition(start - step / 2), to: ropePosition(start + (length - 0.5) * step) };
}

function ageNote(evidence: Evidence, survey: Survey): string {
  const newest = evidence.surveys[evidence.surveys.length - 1];
  return survey === newest ? '' : `judged at the inspection of ${day(survey.date)}: the newest, ${day(newest.date)}, cannot judge it`;
}

function stripOf(set: RuleSet, clause: Clause, limit: number, along: Along): UtilisationStrip {
  return { ruleSet: set.id, clause: clause.id, positions: along.positions, values: along.values.map((value) => (value === null ? null : shareOfLimit(value, clause.comparator, limit))) };
}

/**
 * The measure of one clause over one fixed length at any inspection: the points of a series over the years.
 * Null where that inspection cannot say: the length was mostly not inspected, or the evidence was not taken.
 */
export function measureOver(clause: Clause, evidence: Evidence, survey: Survey, where: Interval<'rope'>): Measurement | null {
  return takerOf(clause).over(clause, evidence, survey, where);
}
