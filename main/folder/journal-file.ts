import { constants } from 'node:fs';
import { open, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { journalEntrySchema } from '../../analysis/rope/journal.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';

export const JOURNAL_FILE = 'strandbook-journal.jsonl';

/** The entries that can be read, and one remark per line that cannot: a cut-off last line costs that line only. */
export async function readJournal(folder: string): Promise<{ entries: JournalEntry[]; remarks: string[] }> {
  const text = await readFile(join(folder, JOURNAL_FILE), 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return '';
    throw error;
  });
  const entries: JournalEntry[] = [];
  const remarks: string[] = [];
  text.split('\n').forEach((line, index) => {
    if (line.trim() === '') return;
    const entry = parseEntry(line);
    if (entry) entries.push(entry);
    else remarks.push(`${JOURNAL_FILE}, line ${index + 1}: not a journal entry, left as it is; if it is the last line, the last decision was not saved whole: enter it again`);
  });
  return { entries, remarks };
}

function parseEntry(line: string): JournalEntry | null {
  try {
    return journalEntrySchema.parse(JSON.parse(line));
  } catch {
    return null;
  }
}

/** Appends, creates, and never follows a link: a folder from elsewhere must not make us write outside it. */
const APPEND = constants.O_RDWR | constants.O_APPEND | constants.O_CREAT | (constants.O_NOFOLLOW ?? 0);

/** Adds one line and returns only when the disk has it. A cut-off last line is closed first, so that the new one stands alone. */
export async function appendToJournal(folder: string, entry: JournalEntry): Promise<void> {
  const file = await open(join(folder, JOURNAL_FILE), APPEND);
  try {
    const { size } = await file.stat();
    const last = Buffer.alloc(1);
    if (size > 0) await file.read(last, 0, 1, size - 1);
    const lead = size > 0 && last.toString() !== '\n' ? '\n' : '';
    await file.appendFile(`${lead}${JSON.stringify(journalEntrySchema.parse(entry))}\n`, 'utf8');
    await file.sync();
  } finally {
    await file.close();
  }
}
