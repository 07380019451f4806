import type { Analysis } from '../assess.ts';
import { meanOver, runningSums } from '../growth/window-means.ts';
import type { Place } from '../growth/place.ts';
import { intersectionOf, totalLength } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import { profileAt } from '../rope/profile-at.ts';
import type { Survey } from '../rope/survey.ts';
import { ropePosition } from '../rope/units.ts';
import type { SectionFinding, SectionHistory, SectionInspection } from './section.ts';

export interface SectionQuestion {
  readonly at: number; // rope position, m
  readonly halfWidth: number; // m
  /** Only inspections on or before this ISO date count; null: all. */
  readonly date: string | null;
}

/** A section is called seen where at least this share of it was: below, an answer would rest on the smaller part. */
const SEEN_SHARE = 0.5;

/**
 * What every inspection up to a date shows at one place of the rope. A length that no inspection saw answers
 * `not-inspected`, whatever lies beside it; never "no defect".
 */
export function sectionHistory(analysis: Analysis, question: SectionQuestion): SectionHistory {
  const limit = question.date === null ? Number.POSITIVE_INFINITY : Date.parse(question.date);
  const where = sectionOf(question);
  const inspections = analysis.assessment.inspections
    .filter((each) => Date.parse(each.date) <= limit)
    .map((each) => {
      const survey = analysis.surveys.find((candidate) => candidate.id === each.id);
      return survey ? inspectionHistory(survey, where, analysis) : unusedInspection(each.id, each.date);
    });
  const touching = analysis.places.filter((place) => touches(place.where, where));
  return {
    section: {
      at_m: question.at, half_width_m: question.halfWidth, finding: overallFinding(inspections), reason: reasonFor(inspections), inspections,
      growth: touching.map(placeHistory),
      criteria: analysis.assessment.criteria.filter((each) => each.from_m < where.to && each.to_m > where.from),
      cautions: analysis.assessment.cautions,
    },
  };
}

function sectionOf({ at, halfWidth }: SectionQuestion): Interval<'rope'> {
  const half = Math.max(halfWidth, 0.001);
  return { from: ropePosition(at - half), to: ropePosition(at + half) };
}

function touches(a: Interval<'rope'>, b: Interval<'rope'>): boolean {
  return a.from < b.to && a.to > b.from;
}

function inspectionHistory(survey: Survey, where: Interval<'rope'>, analysis: Analysis): SectionInspection {
  const share = totalLength(intersectionOf(survey.covered, [where])) / (where.to - where.from);
  const faults = survey.condition.faults.filter((fault) => fault.position >= where.from && fault.position < where.to);
  const zones = survey.condition.zones.filter((zone) => touches(zone.where, where));
  const notes = survey.notes.filter((note) => note.from < where.to && Math.max(note.to, note.from + 1e-9) > where.from);
  const loss = survey.rope.loss === null ? null : rankOfLoss(survey, where);
  return {
    id: survey.id, date: survey.date,
    finding: findingOf(share, faults.length + zones.length + notes.filter((note) => showsDamage(note.kind, note.value)).length > 0),
    coverage_share: Math.min(1, share),
    mean_loss_percent: share > 0 ? (loss?.mean ?? null) : null,
    loss_rank_percentile: share > 0 ? (loss?.percentile ?? null) : null,
    faults: analysis.assessment.inspections.find((each) => each.id === survey.id)!.faults.filter((fault) => faults.some((own) => own.id === fault.id)),
    zones: zones.map((zone) => ({ id: zone.id, from_m: zone.where.from, to_m: zone.where.to, kind: zone.kind, mean_loss_percent: zone.meanLossPercent })),
    texture_ratio: share > 0 ? profileAt(survey.condition.texture, (where.from + where.to) / 2) : null,
    smallest_detectable_loss_percent: share > 0 ? profileAt(survey.condition.smallestZoneLoss, (where.from + where.to) / 2) : null,
    position_uncertainty_m: profileAt(survey.mapUncertainty, (where.from + where.to) / 2),
    notes: notes.map((note) => ({ from_m: note.from, to_m: note.to, kind: note.kind === 'other' ? note.kindAsWritten : note.kind, value: note.value, unit: note.unit, severity: note.severity, photo: note.photo, remark: note.remark })),
  };
}

function unusedInspection(id: string, date: string): SectionInspection {
  return {
    id, date, finding: 'no-data', coverage_share: 0, mean_loss_percent: null, loss_rank_percentile: null, faults: [], zones: [], texture_ratio: null,
    smallest_detectable_loss_percent: null, position_uncertainty_m: null, notes: [],
  };
}

/** Damage seen in part of a length is an indication, however little of it was seen; silence counts only where most of it was. */
function findingOf(share: number, indicated: boolean): SectionFinding {
  if (indicated) return 'indicated';
  return share >= SEEN_SHARE ? 'not-indicated' : 'not-inspected';
}

function showsDamage(kind: string, value: number | null): boolean {
  if (kind.startsWith('broken-wires')) return value === null || value > 0;
  return ['corrosion-external', 'corrosion-internal', 'outer-wire-wear', 'waviness', 'distortion', 'heat', 'loose-wire'].includes(kind);
}

function overallFinding(inspections: readonly SectionInspection[]): SectionFinding {
  if (inspections.length === 0) return 'no-data';
  for (const finding of ['indicated', 'not-indicated', 'not-inspected'] as const) {
    if (inspections.some((each) => each.finding === finding)) return finding === 'not-indicated' && partlyUnseen(inspections) ? 'not-inspected' : finding;
  }
  return 'no-data';
}

/** The newest inspection decides whether "not indicated" may be said of the whole section. */
function partlyUnseen(inspections: readonly SectionInspection[]): boolean {
  const used = inspections.filter((each) => each.finding !== 'no-data');
  return Math.max(...used.map((each) => each.coverage_share)) < 1 - 1e-3 && used[used.length - 1].finding !== 'not-indicated';
}

function reasonFor(inspections: readonly SectionInspection[]): string {
  if (inspections.length === 0) return 'no inspection is on record up to that date';
  const best = Math.max(...inspections.map((each) => each.coverage_share));
  const seen = `the best inspection saw ${(best * 100).toFixed(0)} % of this length`;
  const indicated = inspections.filter((each) => each.finding === 'indicated');
  if (indicated.length > 0) return `${indicated.length} of ${inspections.length} inspections show damage here, first ${indicated[0].id} of ${indicated[0].date}; ${seen}`;
  if (best < 1 - 1e-3) return `${seen}; the rest is NOT INSPECTED and may hold any damage`;
  return `${seen} and shows nothing above what it could detect`;
}

function placeHistory(place: Place): SectionHistory['section']['growth'][number] {
  return { id: place.id, subject: place.subject, from_m: place.where.from, to_m: place.where.to, state: place.state, rate_per_year: place.ratePerYear, rate_low: place.rateLow, rate_high: place.rateHigh, p_value: place.pValue, reason: place.reason };
}

/** Mean loss of the section and the share of equally long lengths of this rope, all of this inspection, that show less. */
function rankOfLoss(survey: Survey, where: Interval<'rope'>): { mean: number; percentile: number } | null {
  const { loss, start, step, length } = survey.rope;
  const running = runningSums(loss!, start, step);
  const own = meanOver(running, where.from, where.to);
  if (!(own.share > 0)) return null;
  const width = where.to - where.from;
  let below = 0;
  let all = 0;
  for (let from: number = start; from + width <= start + step * length; from += width) {
    const other = meanOver(running, from, from + width);
    if (other.share < SEEN_SHARE) continue;
    all += 1;
    if (other.mean < own.mean) below += 1;
  }
  return { mean: own.mean, percentile: all > 0 ? (100 * below) / all : 50 };
}
