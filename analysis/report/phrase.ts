/** Numbers and words as the report prints them. */
export function metres(value: number): string {
  return value.toFixed(2);
}

/** A length of rope, or a point where both ends print alike. */
export function span(from: number, to: number): string {
  const [first, last] = [metres(from), metres(to)];
  return first === last ? first : `${first} – ${last}`;
}

export function figure(value: number | null, digits = 2): string {
  return value === null || !Number.isFinite(value) ? '–' : value.toFixed(digits);
}

export function percent(share: number): string {
  return `${(share * 100).toFixed(0)} %`;
}

const PROVENANCE: Readonly<Record<string, string>> = {
  published: 'published',
  memory: 'FROM MEMORY – confirm',
  'common-practice': 'common practice',
  derived: 'derived',
  disputed: 'DISPUTED – confirm',
  user: 'changed by user',
};

/** Words for where a limit comes from; what needs confirming says so. */
export function provenanceWords(provenance: string): string {
  return PROVENANCE[provenance] ?? provenance;
}

const STATE: Readonly<Record<string, string>> = {
  continue: 'No criterion reached in the lengths inspected: normal interval',
  'continue-shorter-interval': 'No criterion reached in the lengths inspected: shorter interval',
  refer: 'Refer to the competent person before further use',
  'discard-criterion-reached': 'A DISCARD CRITERION IS REACHED: keep out of service until the competent person has decided',
};

/** Advice in words. Advice to a competent person, never a release. */
export function stateWords(state: string): string {
  return STATE[state] ?? state;
}

export function verdictWords(verdict: string): string {
  return verdict === 'reached' ? 'REACHED' : verdict === 'may-be-reached' ? 'may be reached' : 'not reached';
}

/** A handbook value is known to four figures at most. */
export function significant(value: number): string {
  return String(Number(value.toPrecision(4)));
}

const FIELDS: Readonly<Record<string, string>> = { grade_mpa: 'Rope grade', outer_strand_wires: 'Wires in the outer strands', metallic_area_mm2: 'Metallic area', mass_kg_per_m: 'Mass', minimum_breaking_force_kn: 'Minimum breaking force' };

/** A record field as a label: the unit stands beside the value. */
export function fieldWords(field: string): string {
  const words = FIELDS[field] ?? field.replace(/_(mm2?|kn|mpa|percent|m)$/, '').replace(/_/g, ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** How a cell may be broken over lines: a day never; a digest, which has no place to break, anywhere; other words between words. */
export function breaksOf(cell: string): 'day' | 'long' | null {
  if (/^\d{4}-\d{2}-\d{2}$/.test(cell)) return 'day';
  return /\S{40}/.test(cell) ? 'long' : null;
}

/** Whether a table has so many columns that it needs small type to stay on the page. */
export function isWide(table: { readonly columns: readonly unknown[] }): boolean {
  return table.columns.length > 6;
}
