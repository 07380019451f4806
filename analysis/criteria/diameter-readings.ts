import type { VisualNote } from '../intake/visual-note.ts';
import type { Survey } from '../rope/survey.ts';
import type { Evidence } from './criterion.ts';

export interface DiameterReading {
  readonly from: number;
  readonly to: number;
  /** Mean of the readings at one place (two at right angles), mm. */
  readonly diameter: number;
  readonly readings: number;
}

/** Standard uncertainty of one reading with a calliper on a rope, mm [common practice]. */
export const CALLIPER_UNCERTAINTY = 0.05;
const SAME_PLACE = 0.005;

/** Diameters of one inspection, those at one place averaged. Notes marked as the reference or baseline are left out. */
export function diameterReadings(survey: Survey): DiameterReading[] {
  return grouped(survey.notes.filter((note) => note.kind === 'diameter' && !isReference(note)));
}

function grouped(notes: readonly VisualNote[]): DiameterReading[] {
  const places: { from: number; to: number; sum: number; readings: number }[] = [];
  for (const note of [...notes].sort((a, b) => a.from - b.from)) {
    const value = inMillimetres(note);
    if (value === null) continue;
    const last = places[places.length - 1];
    if (last && Math.abs(last.from - note.from) <= SAME_PLACE && Math.abs(last.to - note.to) <= SAME_PLACE) {
      last.sum += value;
      last.readings += 1;
    } else places.push({ from: note.from, to: note.to, sum: value, readings: 1 });
  }
  return places.map(({ from, to, sum, readings }) => ({ from, to, diameter: sum / readings, readings }));
}

function isReference(note: VisualNote): boolean {
  return /\b(reference|baseline|run(ning)?[ -]?in|when new)\b/i.test(`${note.remark} ${note.kindAsWritten} ${note.severity}`);
}

/** A length written in mm, in or m; null where the unit is not understood. */
export function inMillimetres(note: VisualNote): number | null {
  if (note.value === null || note.value <= 0) return null;
  const unit = note.unit.trim().toLowerCase();
  if (unit === '' || unit === 'mm') return note.value;
  if (unit === 'in' || unit === 'inch' || unit === '"') return note.value * 25.4;
  if (unit === 'cm') return note.value * 10;
  return unit === 'm' ? note.value * 1000 : null;
}

export interface ReferenceDiameter {
  readonly diameter: number;
  readonly source: string;
}

/**
 * The diameter that a reduction is counted from where the rule asks for the rope's own: readings marked as reference or baseline,
 * else the mean of the first inspection that measured diameters, where that is older than the one judged.
 */
export function referenceDiameter(evidence: Evidence, judged: Survey): ReferenceDiameter | null {
  for (const survey of evidence.surveys) {
    const marked = grouped(survey.notes.filter((note) => note.kind === 'diameter' && isReference(note)));
    if (marked.length > 0) return { diameter: mean(marked), source: `reference diameter noted on ${day(survey.date)}` };
  }
  const first = evidence.surveys.find((survey) => diameterReadings(survey).length > 0);
  if (first === undefined || first.date >= judged.date) return null;
  return { diameter: mean(diameterReadings(first)), source: `mean of the first diameters on record, ${day(first.date)}, taken as the reference` };
}

const mean = (readings: readonly DiameterReading[]): number => readings.reduce((sum, each) => sum + each.diameter, 0) / readings.length;
export const day = (date: string): string => date.slice(0, 10);
