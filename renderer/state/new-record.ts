import { dayInName } from '../../analysis/intake/photos/moment-in-name.ts';
import { recordSchema } from '../../analysis/rope/record.ts';
import type { RopeRecord } from '../../analysis/rope/record.ts';

export const FILE_ROLES = ['scan', 'notes', 'neither'] as const;

/** What a table is: a scan, visual notes (one file for an inspection), or neither. */
export interface StatedFile {
  readonly file: string;
  readonly date: string;
  readonly role: (typeof FILE_ROLES)[number];
}

/** What a user states about a rope whose scans came without a record; texts as typed. */
export interface RecordDraft {
  readonly name: string;
  readonly application: string;
  readonly construction: string;
  readonly diameter: string; // mm
  readonly length: string; // m
  /** Tables among the files. */
  readonly files: readonly StatedFile[];
}

const TABLE_ENDINGS = /\.(csv|txt|tsv|dat|asc|prn)$/i;

/** Tables that may be scans or notes, each with the date that its name or its age suggests. Notes are told by their name. */
export function tablesAmong(files: readonly { readonly name: string; readonly modified: number }[]): StatedFile[] {
  return files.filter(({ name }) => TABLE_ENDINGS.test(name) && !/(^|\/)\./.test(name))
    .map(({ name, modified }): StatedFile => ({ file: name, date: dayInName(name) ?? new Date(modified).toISOString().slice(0, 10), role: /note|remark|visual/i.test(name) ? 'notes' : /readme/i.test(name) ? 'neither' : 'scan' }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.file < b.file ? -1 : 1));
}

/** The record of a draft, one inspection for each date; or what is still missing. */
export function recordOf(draft: RecordDraft): { readonly record: RopeRecord } | { readonly missing: string } {
  const used = draft.files.filter((each) => each.role !== 'neither');
  const scans = used.filter((each) => each.role === 'scan');
  if (draft.name.trim() === '') return { missing: 'Give the rope a name.' };
  if (scans.length === 0) return { missing: 'Mark at least one file as a scan.' };
  const undated = used.find((each) => !Number.isFinite(Date.parse(each.date)));
  if (undated) return { missing: `Give the date of ${undated.file}.` };
  const numbers = { diameter_mm: numberOf(draft.diameter), length_m: numberOf(draft.length) };
  if (Number.isNaN(numbers.diameter_mm)) return { missing: 'The diameter must be a number of millimetres above 0, or left empty.' };
  if (Number.isNaN(numbers.length_m)) return { missing: 'The length must be a number of metres above 0, or left empty.' };
  const dates = [...new Set(used.map((each) => each.date))];
  const notes = used.filter((each) => each.role === 'notes');
  const second = notes.find((each, index) => notes.findIndex((other) => other.date === each.date) < index);
  if (second) return { missing: `${second.file} is a second file of notes on ${second.date}: an inspection has one.` };
  const words = { application: draft.application.trim(), construction: draft.construction.trim() };
  return {
    record: recordSchema.parse({
      schema: 1,
      rope: { id: draft.name.trim(), name: draft.name.trim(), ...stated(words), ...stated(numbers) },
      inspections: dates.map((date) => ({ id: date, date, runs: scans.filter((each) => each.date === date).map(({ file }) => ({ file })), ...stated({ notes: notes.find((each) => each.date === date)?.file }) })),
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
