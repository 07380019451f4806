import { onCalendar } from './on-calendar.ts';
import type { z } from 'zod';
import { decodeText } from '../intake/decode-text.ts';
import { leavesFolder } from './inside-folder.ts';
import type { JsonLines } from './json-lines.ts';
import { jsonLines, nearestLine } from './json-lines.ts';
import type { Problem } from './problem.ts';
import { UnusableInput } from './problem.ts';
import { recordSchema } from './record.ts';
import type { RopeRecord } from './record.ts';

/**
 * Reads record.json (UTF-8 or UTF-16, with or without a byte order mark).
 * Throws UnusableInput with one problem per fault: line in the text, path of the field, what is wrong, what to do.
 * Inspections come back sorted by date, those of one date in the order of the record.
 */
export function readRecord(bytes: Uint8Array, file: string): RopeRecord {
  const refuse = (line: number | null, what: string, remedy: string): never => {
    throw new UnusableInput([{ file, line, column: null, what, remedy }]);
  };
  if (bytes.length === 0) refuse(null, 'the file is empty', 'write the record of the rope into it');
  const decoded = decodeText(bytes);
  if (decoded === null) refuse(null, 'the file is binary, not text', 'save the record as UTF-8 text');
  const { text } = decoded!;
  const lines = jsonLines(text);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    refuse(lines.brokenAt, 'the text is not valid JSON here', 'look for a missing comma, quote or bracket on this line or just before it');
  }
  const checked = recordSchema.safeParse(value);
  if (!checked.success) throw new UnusableInput([...schemaProblems(checked.error, value, lines, file), ...repeatedKeys(lines, file)]);
  const problems = [...repeatedKeys(lines, file), ...contradictions(checked.data, lines, file)];
  if (problems.length > 0) throw new UnusableInput(problems);
  const inspections = [...checked.data.inspections].sort((a, b) => Date.parse(a.date) - Date.parse(b.date));
  return { ...checked.data, inspections };
}

function repeatedKeys(lines: JsonLines, file: string): Problem[] {
  return lines.repeatedKeys.map(({ path, line }) => ({ file, line, column: path, what: 'the field is given twice', remedy: 'keep the one that is right' }));
}

function schemaProblems(error: z.ZodError, value: unknown, lines: JsonLines, file: string): Problem[] {
  return error.issues.map((issue) => {
    const path = pathText(issue.path);
    const found = issue.path.reduce<unknown>((inside, key) => (inside !== null && typeof inside === 'object' ? (inside as Record<PropertyKey, unknown>)[key] : undefined), value);
    const missing = found === undefined && issue.path.length > 0;
    return {
      file, line: nearestLine(lines, path), column: path === '' ? null : path,
      what: missing ? 'the field is missing' : `${describe(found)} does not fit: ${issue.message}`,
      remedy: missing ? `add ${String(issue.path.at(-1))}` : 'correct the field',
    };
  });
}

function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`), '');
}

function describe(value: unknown): string {
  if (value === undefined) return 'what is there';
  if (Array.isArray(value)) return 'a list';
  if (value !== null && typeof value === 'object') return 'an object';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

/** What a schema of single fields cannot see: fields that contradict each other, and names that leave the folder. */
function contradictions(record: RopeRecord, lines: JsonLines, file: string): Problem[] {
  const problems: Problem[] = [];
  const add = (column: string, what: string, remedy: string) => problems.push({ file, line: nearestLine(lines, column), column, what, remedy });
  if (record.rope.loop === true && record.rope.length_m === undefined) add('rope.loop', 'an endless rope needs its length: positions wrap there', 'add rope.length_m');
  const { wires, outer_wires: outer } = record.rope;
  if (wires !== undefined && outer !== undefined && outer > wires) add('rope.outer_wires', `${outer} outer wires of ${wires} wires in all`, 'correct one of the two');

  record.landmarks.forEach((mark, index) => {
    const at = `landmarks[${index}]`;
    if (mark.from_m !== undefined && mark.to_m !== undefined && mark.from_m > mark.to_m) add(`${at}.from_m`, `from_m ${mark.from_m} lies beyond to_m ${mark.to_m}`, 'swap them');
    if (mark.position_m === undefined && (mark.from_m === undefined) !== (mark.to_m === undefined)) add(at, 'only one end of the length is given', 'give from_m and to_m, or position_m');
  });
  record.events.forEach((event, index) => {
    if (event.length_m !== undefined && event.length_m < 0) add(`events[${index}].length_m`, `${event.length_m} m is negative`, 'give the length as a positive number');
  });
  const dates: [string, string | undefined][] = [['rope.installed', record.rope.installed], ...record.events.map((each, n): [string, string] => [`events[${n}].date`, each.date]), ...record.inspections.map((each, n): [string, string] => [`inspections[${n}].date`, each.date])];
  for (const [column, date] of dates) if (date !== undefined && !onCalendar(date)) add(column, `${date} is not a day of the calendar`, 'correct the date');
  const ids = new Map<string, number>();
  record.inspections.forEach((inspection, index) => {
    const at = `inspections[${index}]`;
    const first = ids.get(inspection.id);
    if (first !== undefined) add(`${at}.id`, `${describe(inspection.id)} is already the id of inspections[${first}]`, 'give every inspection its own id');
    else ids.set(inspection.id, index);
    inspection.runs.forEach((run, n) => checkName(`${at}.runs[${n}].file`, run.file));
    if (inspection.notes !== undefined) checkName(`${at}.notes`, inspection.notes);
    if (inspection.photos !== undefined) checkName(`${at}.photos`, inspection.photos);
    inspection.runs.forEach((run, n) => {
      if (run.columns?.position?.unit === 'counts' && run.columns.position.pulses_per_metre === undefined) add(`${at}.runs[${n}].columns.position`, 'positions in counts need the pulses of a metre', 'add pulses_per_metre');
      const same = inspection.runs.findIndex((other) => other.file === run.file);
      if (same < n) add(`${at}.runs[${n}].file`, `${describe(run.file)} is already run ${same + 1} of this inspection`, 'name each file once');
    });
  });
  return problems;

  function checkName(column: string, name: string) {
    const reason = leavesFolder(name);
    if (reason !== null) add(column, `${describe(name)}: ${reason}`, 'put the file into the rope folder and name it from there');
  }
}
