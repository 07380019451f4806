import type { Understanding } from './run.ts';

/** The same for every file of one instrument setting: names with units in their order, without case and blanks. */
export function headerFingerprint(names: readonly string[], delimiter: string): string {
  return `${delimiter === '\t' ? 'tab' : delimiter}:${names.map((name) => name.toLowerCase().replace(/[\s"]+/g, '')).join('|')}`;
}

/** The same for runs of one instrument as far as their columns tell; files without names are told apart by their count of columns only. */
export function instrumentKey({ columns, delimiter, headerLine }: Understanding): string {
  return headerLine === null ? `without names ${columns.length}` : headerFingerprint(columns.map((each) => each.name), delimiter);
}
