import type { CriteriaOutcome, CriterionResult, Evidence } from '../criteria/criterion.ts';
import type { Interval } from '../rope/interval.ts';
import { totalLength } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';
import { yearOfDate } from './dates.ts';
import type { LifeOutcome } from './forecast.ts';

export type AdviceState = 'continue' | 'continue-shorter-interval' | 'refer' | 'discard-criterion-reached';

export interface Summary {
  readonly state: AdviceState;
  readonly reasons: string[];
  readonly next_inspection_by: string | null;
  /** Which further inspection would change the answer most: where and when. */
  readonly advice: string;
  readonly not_inspected_m: number;
}

/** Common practice: above this share of the rope unseen at the newest inspection, a competent person has to decide. */
const UNSEEN_SHARE = 0.05;
/** Alignment less sure than this leaves places of different inspections in doubt. */
const ALIGNMENT_NEEDED = 0.5;
/** A value past this share of its limit shortens the interval. */
const NEAR_LIMIT = 0.8;
/** A low bound within this time shortens the interval: years. */
const SOON = 3;

interface Point {
  readonly state: AdviceState;
  readonly reason: string;
}

const ORDER: readonly AdviceState[] = ['continue', 'continue-shorter-interval', 'refer', 'discard-criterion-reached'];

/**
 * Advice to a competent person, never a release to service. The gravest point decides, all are listed, gravest first. A criterion
 * reached only under a disputed clause, or whose own consequence is not discard, is for the competent person to decide.
 */
export function summarise(evidence: Evidence, criteria: Pick<CriteriaOutcome, 'results' | 'notEvaluated'>, life: LifeOutcome, notInspected: readonly { readonly where: Interval<'rope'> }[]): Summary {
  const unseen = totalLength(notInspected.map((each) => each.where));
  const points = [
    ...criteria.results.flatMap(pointOfResult), ...pointsOfEvidence(evidence, criteria), ...pointsOfCoverage(evidence, unseen), ...pointsOfQuality(evidence.surveys[evidence.surveys.length - 1]), ...pointsOfLife(evidence, life),
  ];
  const state = points.reduce<AdviceState>((worst, each) => (ORDER.indexOf(each.state) > ORDER.indexOf(worst) ? each.state : worst), 'continue');
  const reasons = [...points].sort((a, b) => ORDER.indexOf(b.state) - ORDER.indexOf(a.state)).map((each) => each.reason);
  if (state === 'continue') reasons.push('no criterion that could be judged is reached or near, on the lengths that were inspected');
  // The first reason sets the date; whatever else asks for an inspection at once is said too.
  const asked = life.nextInspection.reasons.filter((each, i) => i === 0 || each.startsWith('at once'));
  reasons.push(...asked.map((each) => `next inspection: ${each}`));
  return { state, reasons, next_inspection_by: life.nextInspection.by, advice: life.nextInspection.advice, not_inspected_m: unseen };
}

function pointOfResult(result: CriterionResult): Point[] {
  const named = `${result.ruleSet} ${result.clause}`;
  if (result.verdict === 'reached' || result.reached) {
    const consequence = result.consequence ?? 'discard';
    if (consequence !== 'discard') return [{ state: 'refer', reason: `${named} is reached (${consequence}): ${result.sentence}` }];
    if (result.provenance === 'disputed') return [{ state: 'refer', reason: `${named} is reached; its limit is disputed between sources: ${result.sentence}` }];
    return [{ state: 'discard-criterion-reached', reason: `${named} is reached: ${result.sentence}` }];
  }
  if (result.verdict === 'may-be-reached') return [{ state: 'refer', reason: `${named} may be reached within the uncertainty of the value: ${result.sentence}` }];
  if (result.utilisation >= NEAR_LIMIT) return [{ state: 'continue-shorter-interval', reason: `${named} stands at ${Math.round(100 * result.utilisation)} % of its limit` }];
  return [];
}

function pointsOfEvidence(evidence: Evidence, criteria: Pick<CriteriaOutcome, 'results' | 'notEvaluated'>): Point[] {
  const points: Point[] = [];
  if (evidence.surveys.length === 0) points.push({ state: 'refer', reason: 'no inspection could be used: nothing is known of the condition of this rope, to be inspected at once' });
  if (criteria.results.length === 0) points.push({ state: 'refer', reason: 'no criterion could be evaluated' });
  for (const event of evidence.events) {
    if (event.kind === 'parted') points.push({ state: 'refer', reason: `the record says that the rope parted on ${event.date.slice(0, 10)}` });
  }
  return points;
}

function pointsOfCoverage(evidence: Evidence, unseen: number): Point[] {
  if (!(unseen > 0)) return [];
  const newest = evidence.surveys[evidence.surveys.length - 1];
  const length = evidence.ropeLength ?? (newest ? newest.rope.length * newest.rope.step : 0);
  const share = length > 0 ? unseen / length : 1;
  const said = `${unseen < 0.05 ? 'less than 0.1' : unseen.toFixed(1)} m were NOT INSPECTED at the newest inspection${length > 0 ? ` (${(100 * share).toFixed(1)} % of the rope)` : ''} and are not judged`;
  return [{ state: share > UNSEEN_SHARE ? 'refer' : 'continue', reason: said }];
}

function pointsOfQuality(newest: Survey | undefined): Point[] {
  if (newest === undefined) return [];
  const points: Point[] = [];
  const rejected = newest.quality.filter((finding) => finding.level === 'reject');
  if (rejected.length > 0) points.push({ state: 'refer', reason: `data of the newest inspection were rejected: ${rejected[0].message}${rejected.length > 1 ? ` (and ${rejected.length - 1} more)` : ''}` });
  if (newest.map.confidence < ALIGNMENT_NEEDED) points.push({ state: 'refer', reason: `the newest inspection is placed on the rope with confidence ${newest.map.confidence.toFixed(2)} only: places may be mistaken` });
  return points;
}

function pointsOfLife(evidence: Evidence, life: LifeOutcome): Point[] {
  const newest = evidence.surveys[evidence.surveys.length - 1];
  if (newest === undefined) return [];
  const points: Point[] = [];
  const now = yearOfDate(newest.date);
  const dated = life.forecasts.filter((each) => each.model !== 'reached' && each.date.low !== null).sort((a, b) => (a.date.low! < b.date.low! ? -1 : 1));
  const first = dated[0];
  if (first && yearOfDate(first.date.low!) - now < SOON) {
    points.push({ state: 'continue-shorter-interval', reason: `${first.ruleSet} ${first.clause} could be reached from ${first.date.low} on (10 %) at ${first.where.from.toFixed(1)} to ${first.where.to.toFixed(1)} m` });
  }
  if (life.forecasts.length > 0 && evidence.surveys.length < 2) points.push({ state: 'continue', reason: 'one inspection only: growth and remaining life cannot be judged' });
  return [...points, ...pointsOfGrowth(evidence)];
}

/** Places named one by one; the others are counted. */
const NAMED_PLACES = 4;

/** What is new or grows, the fastest first. */
function pointsOfGrowth({ places }: Evidence): Point[] {
  const moving = places.filter((place) => place.state === 'growing' || place.state === 'new').sort((a, b) => (b.ratePerYear ?? 0) - (a.ratePerYear ?? 0));
  const reasons = moving.slice(0, NAMED_PLACES).map((place) => `${place.subject} at ${place.where.from.toFixed(1)} to ${place.where.to.toFixed(1)} m is ${place.state}`);
  if (moving.length > NAMED_PLACES) reasons.push(moving.length === NAMED_PLACES + 1 ? 'one more place is new or growing' : `${moving.length - NAMED_PLACES} more places are new or growing`);
  return reasons.map((reason) => ({ state: 'continue-shorter-interval', reason }));
}
