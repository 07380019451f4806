import { parseArgs } from 'node:util';
import type { Job } from './job.ts';

/** The words of a command made a job, or what is wrong with them in one line. */
export type Parsed = { readonly job: Job } | { readonly wrong: string };

export const ASSESS_USAGE = 'usage: npm run --silent assess -- <folder or record.json> [--json <file>] [--report <file.html>]';
export const SECTION_USAGE = 'usage: npm run --silent section -- <folder> --at <rope position m> [--half-width <m>] [--date <ISO date>] --json <file>';

export function parseAssess(words: readonly string[]): Parsed {
  return guarded(ASSESS_USAGE, () => {
    const { values, positionals } = parseArgs({ args: [...words], allowPositionals: true, options: { json: { type: 'string' }, report: { type: 'string' } } });
    if (positionals.length !== 1) return { wrong: ASSESS_USAGE };
    if (values.json === undefined && values.report === undefined) return { wrong: `nothing to write: give --json or --report; ${ASSESS_USAGE}` };
    if (values.json !== undefined && values.json === values.report) return { wrong: `--json and --report name the same file; ${ASSESS_USAGE}` };
    return { job: { folder: positionals[0], json: values.json ?? null, report: values.report ?? null, section: null } };
  });
}

/** Half a section's width where none is given: three metres to either side. */
const DEFAULT_HALF_WIDTH = 3;

export function parseSection(words: readonly string[]): Parsed {
  return guarded(SECTION_USAGE, () => {
    const { values, positionals } = parseArgs({
      args: joinNegatives(words), allowPositionals: true, options: { json: { type: 'string' }, report: { type: 'string' }, at: { type: 'string' }, 'half-width': { type: 'string' }, date: { type: 'string' } },
    });
    const at = numberOf(values.at);
    const halfWidth = values['half-width'] === undefined ? DEFAULT_HALF_WIDTH : numberOf(values['half-width']);
    if (positionals.length !== 1 || values.json === undefined) return { wrong: SECTION_USAGE };
    if (at === null) return { wrong: `--at must be a rope position in metres; ${SECTION_USAGE}` };
    if (halfWidth === null || halfWidth <= 0) return { wrong: `--half-width must be a length in metres above 0; ${SECTION_USAGE}` };
    if (values.date !== undefined && !Number.isFinite(Date.parse(values.date))) return { wrong: `--date must be an ISO date such as 2026-03-31; ${SECTION_USAGE}` };
    return { job: { folder: positionals[0], json: values.json, report: values.report ?? null, section: { at, halfWidth, date: values.date ?? null } } };
  });
}

/** `--at -5` reads as an option to the parser; `--at=-5` does not. */
function joinNegatives(words: readonly string[]): string[] {
  const joined: string[] = [];
  for (const word of words) {
    if (/^-\d/.test(word) && joined.length > 0 && joined[joined.length - 1].startsWith('--')) joined.push(`${joined.pop()}=${word}`);
    else joined.push(word);
  }
  return joined;
}

function numberOf(text: string | undefined): number | null {
  const value = Number(text);
  return text === undefined || text.trim() === '' || !Number.isFinite(value) ? null : value;
}

function guarded(usage: string, parse: () => Parsed): Parsed {
  try {
    return parse();
  } catch (error) {
    return { wrong: `${error instanceof Error ? error.message.split('\n')[0] : error}; ${usage}` };
  }
}
