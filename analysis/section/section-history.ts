import type { Analysis } from '../assess.ts';
import { writeCriterion, writePlace } from '../assessment/write-assessment.ts';
import type { CriterionResult, Evidence } from '../criteria/criterion.ts';
import { evaluateCriteria } from '../criteria/evaluate-criteria.ts';
import { judgeGrowth } from '../growth/judge-growth.ts';
import type { Place } from '../growth/place.ts';
import { noCheckpoint } from '../rope/checkpoint.ts';
import { profileAt } from '../rope/profile-at.ts';
import type { Survey } from '../rope/survey.ts';
import { findingOf, overallFinding, reasonFor } from './find-answer.ts';
import { largestOfProfile, meanOfProfile, rankOfLoss } from './measure-section.ts';
import type { SectionHistory, SectionInspection } from './section.ts';
import { coveredShareOf, meets, sectionLength, seenPart } from './section-length.ts';
import type { SectionLength, SectionQuestion } from './section-length.ts';

export type { SectionQuestion } from './section-length.ts';

/**
 * What every inspection up to a date shows at one place of the rope. A length that no inspection saw answers
 * `not-inspected`, whatever lies beside it; never "no defect". Growth and criteria are judged from those inspections alone,
 * as they could have been judged then; only the rope map may know more.
 */
export async function sectionHistory(analysis: Analysis, question: SectionQuestion): Promise<SectionHistory> {
  const section = sectionLength(question, analysis.evidence.loopLength);
  const counts = (date: string): boolean => question.date === null || Date.parse(date) <= Date.parse(question.date);
  const inspections = analysis.assessment.inspections.filter((each) => counts(each.date)).map((each) => {
    const survey = analysis.surveys.find((candidate) => candidate.id === each.id);
    const photos = photosOf(analysis.assessment.photos, each.id, section);
    return survey ? inspectionHistory(survey, section, { faults: each.faults, photos }) : visualHistory(each.id, each.date, section, analysis, photos);
  });
  const known = await knownThen(analysis, counts);
  const seen = seenPart(section, known.surveys.flatMap((each) => each.covered));
  return {
    section: {
      at_m: question.at, half_width_m: question.halfWidth, finding: overallFinding(inspections), reason: reasonFor(inspections), inspections,
      growth: known.places.filter((place) => meets(seen, place.where.from, place.where.to)).map(writePlace),
      criteria: (await criteriaHere(known, section, analysis)).map(writeCriterion),
      cautions: analysis.assessment.cautions,
    },
  };
}

/** The evidence as it stood: without the inspections that came later, and with the places judged anew where some are left out. */
async function knownThen(analysis: Analysis, counts: (date: string) => boolean): Promise<Evidence> {
  const { evidence, geometry } = analysis;
  if (evidence.surveys.every((each) => counts(each.date))) return evidence;
  const scanned = analysis.surveys.filter((each) => counts(each.date));
  const places: readonly Place[] = await judgeGrowth(scanned, { diameterMm: geometry.diameterMm, loopLength: evidence.loopLength, cutOffs: evidence.cutOffs?.filter((each) => counts(each.date)) }, noCheckpoint);
  return { ...evidence, places, surveys: evidence.surveys.filter((each) => counts(each.date)), events: evidence.events.filter((each) => counts(each.date)), cutOffs: evidence.cutOffs?.filter((each) => counts(each.date)) };
}

/** Every criterion at its worst place in the section, at the newest inspection that can judge it there. */
async function criteriaHere(evidence: Evidence, section: SectionLength, analysis: Analysis): Promise<readonly CriterionResult[]> {
  return (await evaluateCriteria(evidence, analysis.sets, noCheckpoint, section.pieces)).results;
}

function inspectionHistory(survey: Survey, section: SectionLength, { faults, photos }: Pick<SectionInspection, 'faults' | 'photos'>): SectionInspection {
  const { condition, covered } = survey;
  const share = coveredShareOf(section, covered);
  const centreSeen = covered.some((each) => section.centre >= each.from && section.centre < each.to);
  const seen = seenPart(section, covered);
  const found = faults.filter((fault) => meets(seen, fault.position_m, fault.position_m));
  const zones = condition.zones.filter((zone) => meets(seen, zone.where.from, zone.where.to));
  const notes = notesOf(survey.notes, section);
  const loss = share > 0 ? rankOfLoss(survey, section) : null;
  return {
    id: survey.id, date: survey.date, finding: findingOf(share, centreSeen, found.length + zones.length > 0 || notes.some(showsDamage)), coverage_share: share,
    mean_loss_percent: loss?.mean ?? null, loss_rank_percentile: loss?.percentile ?? null, faults: found,
    zones: zones.map((zone) => ({ id: zone.id, from_m: zone.where.from, to_m: zone.where.to, kind: zone.kind, mean_loss_percent: zone.meanLossPercent })),
    texture_ratio: meanOfProfile(condition.texture, section, covered),
    smallest_detectable_loss_percent: largestOfProfile(condition.smallestZoneLoss, section, covered),
    position_uncertainty_m: share > 0 ? profileAt(survey.mapUncertainty, section.centre) : null, notes, photos,
  };
}

/** An inspection without a usable scan: what was noted by eye is all that it can say. */
function visualHistory(id: string, date: string, section: SectionLength, analysis: Analysis, photos: SectionInspection['photos']): SectionInspection {
  const notes = notesOf(analysis.evidence.surveys.find((each) => each.id === id)?.notes ?? [], section);
  return {
    id, date, finding: notes.some(showsDamage) ? 'indicated' : 'no-data', coverage_share: 0, mean_loss_percent: null, loss_rank_percentile: null, faults: [], zones: [],
    texture_ratio: null, smallest_detectable_loss_percent: null, position_uncertainty_m: null, notes, photos,
  };
}

function notesOf(notes: Survey['notes'], section: SectionLength): SectionInspection['notes'] {
  return notes.filter((note) => meets(section, note.from, note.to)).map((note) => ({
    from_m: note.from, to_m: note.to, kind: note.kind === 'other' ? note.kindAsWritten : note.kind, value: note.value, unit: note.unit, severity: note.severity, photo: note.photo, remark: note.remark,
  }));
}

function photosOf(photos: Analysis['assessment']['photos'], inspection: string, section: SectionLength): SectionInspection['photos'] {
  return photos.flatMap(({ file, inspection: owner, position_m: at, within_m: within, reason }) =>
    owner === inspection && at !== null && meets(section, at - (within ?? 0), at + (within ?? 0)) ? [{ file, position_m: at, within_m: within, reason }] : []);
}

const DAMAGE: ReadonlySet<string> = new Set(['corrosion-external', 'corrosion-internal', 'outer-wire-wear', 'waviness', 'distortion', 'heat', 'loose-wire']);

/** A note that says "none" is no damage. */
function showsDamage({ kind, value, severity }: SectionInspection['notes'][number]): boolean {
  if (/^(none|no|nil|absent|good|sound|ok)\b/i.test(severity.trim())) return false;
  if (kind.startsWith('broken-wires')) return value === null || value > 0;
  return DAMAGE.has(kind) && (value === null || value > 0 || severity.trim() !== '');
}
