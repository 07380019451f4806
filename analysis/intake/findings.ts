import type { QualityFinding } from '../rope/finding.ts';
import { measuredPosition } from '../rope/units.ts';

export type Finding = QualityFinding<'measured'>;

/** A finding over a length of the file's own positions; a point becomes the shortest length that a list can hold. */
export function finding(code: string, level: Finding['level'], from: number, to: number, message: string): Finding {
  return { code, level, message, where: { from: measuredPosition(from), to: measuredPosition(to > from ? to : from + 0.001) } };
}

/** The first few places as findings, and one more over all of them where there are many: a list a person can read. */
export function listed<T>(code: string, level: Finding['level'], places: readonly T[], most: number, where: (place: T) => readonly [number, number], message: (place: T) => string): Finding[] {
  const shown = places.slice(0, most).map((place) => finding(code, level, ...where(place), message(place)));
  const rest = places.slice(most);
  if (rest.length === 0) return shown;
  const spans = rest.map(where);
  return [...shown, finding(code, level, Math.min(...spans.map((s) => s[0])), Math.max(...spans.map((s) => s[1])), `${rest.length} more places of this kind between here and there`)];
}

export function metres(value: number): string {
  const size = Math.abs(value);
  return `${value.toFixed(size >= 10 ? 1 : size >= 1 ? 2 : 3)} m`;
}
