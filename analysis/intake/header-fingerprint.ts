/** The same for every file of one instrument setting: names with units in their order, without case and blanks. */
export function headerFingerprint(names: readonly string[], delimiter: string): string {
  return `${delimiter === '\t' ? 'tab' : delimiter}:${names.map((name) => name.toLowerCase().replace(/[\s"]+/g, '')).join('|')}`;
}
