import { recordSchema } from '../../analysis/rope/record.ts';
import type { RopeRecord } from '../../analysis/rope/record.ts';

/** What a user states about a rope whose scans came without a record; texts as typed. */
export interface RecordDraft {
  readonly name: string;
  readonly application: string;
  readonly construction: string;
  readonly diameter: string; // mm
  readonly length: string; // m
  readonly scans: readonly { readonly file: string; readonly date: string; readonly used: boolean }[];
}

const SCAN_ENDINGS = /\.(csv|txt|tsv|dat|asc|prn)$/i;

/** Files that may be scans, each with the date that its name or its age suggests. Notes are told by their name and left out. */
export function scansAmong(files: readonly { readonly name: string; readonly modified: number }[]): { file: string; date: string; used: boolean }[] {
  return files.filter(({ name }) => SCAN_ENDINGS.test(name) && !/(^|\/)\./.test(name))
    .map(({ name, modified }) => ({ file: name, date: dateInName(name) ?? new Date(modified).toISOString().slice(0, 10), used: !/note|remark|readme/i.test(name) }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.file < b.file ? -1 : 1));
}

function dateInName(name: string): string | null {
  const found = /(?<!\d)((?:19|20)\d{2})[-_.]?(0[1-9]|1[0-2])[-_.]?(0[1-9]|[12]\d|3[01])(?!\d)/.exec(name);
  return found === null ? null : `${found[1]}-${found[2]}-${found[3]}`;
}

/** The record of a draft, one inspection for each date; or what is still missing. */
export function recordOf(draft: RecordDraft): { readonly record: RopeRecord } | { readonly missing: string } {
  const used = draft.scans.filter((each) => each.used);
  if (draft.name.trim() === '') return { missing: 'Give the rope a name.' };
  if (used.length === 0) return { missing: 'Mark at least one file as a scan.' };
  const undated = used.find((each) => !Number.isFinite(Date.parse(each.date)));
  if (undated) return { missing: `Give the date of ${undated.file}.` };
  const numbers = { diameter_mm: numberOf(draft.diameter), length_m: numberOf(draft.length) };
  if (Number.isNaN(numbers.diameter_mm)) return { missing: 'The diameter must be a number of millimetres above 0, or left empty.' };
  if (Number.isNaN(numbers.length_m)) return { missing: 'The length must be a number of metres above 0, or left empty.' };
  const dates = [...new Set(used.map((each) => each.date))];
  const words = { application: draft.application.trim(), construction: draft.construction.trim() };
  return {
    record: recordSchema.parse({
      schema: 1,
      rope: { id: draft.name.trim(), name: draft.name.trim(), ...stated(words), ...stated(numbers) },
      inspections: dates.map((date) => ({ id: date, date, runs: used.filter((each) => each.date === date).map(({ file }) => ({ file })) })),
    }),
  };
}

/** Undefined where nothing is written, NaN where it is no number above 0. */
function numberOf(text: string): number | undefined {
  if (text.trim() === '') return undefined;
  const value = Number(text.trim().replace(',', '.'));
  return value > 0 ? value : NaN;
}

function stated<T>(fields: Readonly<Record<string, T | undefined>>): Record<string, T> {
  return Object.fromEntries(Object.entries(fields).filter((entry): entry is [string, T] => entry[1] !== undefined && (entry[1] as unknown) !== ''));
}
