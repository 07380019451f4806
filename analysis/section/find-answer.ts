import type { SectionFinding, SectionInspection } from './section.ts';

/** "Not indicated" may be said of a section only where an inspection saw at least this share of it, and its middle [common practice]. */
const SEEN_SHARE = 0.9;

/** Damage seen in part of a length is an indication, however little of it was seen; silence counts only where nearly all of it was. */
export function findingOf(share: number, centreSeen: boolean, indicated: boolean): SectionFinding {
  if (indicated) return 'indicated';
  return share >= SEEN_SHARE && centreSeen ? 'not-indicated' : 'not-inspected';
}

/** What all inspections together say: damage by any, else silence of any that saw it, else that nobody did. */
export function overallFinding(inspections: readonly SectionInspection[]): SectionFinding {
  return (['indicated', 'not-indicated', 'not-inspected'] as const).find((finding) => inspections.some((each) => each.finding === finding)) ?? 'no-data';
}

/** The answer in words: who shows what, how much was seen, when it was last seen, and that the rest is not inspected. */
export function reasonFor(inspections: readonly SectionInspection[]): string {
  if (inspections.length === 0) return 'no inspection is on record up to that date';
  if (inspections.every((each) => each.finding === 'no-data')) return 'no inspection up to that date has usable data of this length';
  return [damageWords(inspections), ...seenWords(inspections)].filter((text) => text !== '').join('; ');
}

function damageWords(inspections: readonly SectionInspection[]): string {
  const indicated = inspections.filter((each) => each.finding === 'indicated');
  if (indicated.length === 0) return inspections.some((each) => each.finding === 'not-indicated') ? 'nothing shows above what could be detected' : '';
  return `${indicated.length} of ${inspections.length} inspection${inspections.length === 1 ? '' : 's'} show${indicated.length === 1 && inspections.length === 1 ? 's' : ''} damage here, first that of ${indicated[0].date.slice(0, 10)}`;
}

function seenWords(inspections: readonly SectionInspection[]): string[] {
  const best = Math.max(...inspections.map((each) => each.coverage_share));
  if (best === 0) return ['no magnetic scan reached this length: it is NOT INSPECTED and may hold any damage'];
  const words = [`the best inspection saw ${percentSeen(best)} % of this length`];
  if (best < 1 - 1e-3) words.push('the rest is NOT INSPECTED and may hold any damage');
  const newest = inspections[inspections.length - 1];
  const last = inspections.findLast((each) => each.finding === 'indicated' || each.finding === 'not-indicated');
  if (last && last !== newest && newest.coverage_share < SEEN_SHARE) words.push(`last seen ${last.date.slice(0, 10)}, not by the inspection of ${newest.date.slice(0, 10)}`);
  return words;
}

/** Rounded down: 99.97 % seen is not "100 %". */
function percentSeen(share: number): string {
  return share >= 1 - 1e-3 ? '100' : String(Math.floor(100 * share));
}
