import { z } from 'zod';
import { HEAD_BYTES } from '../../analysis/intake/read-run.ts';
import { previewRun, recipeFor } from '../../analysis/intake/preview.ts';
import type { Recipe } from '../../analysis/intake/preview.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';
import { columnsSchema, recordSchema } from '../../analysis/rope/record.ts';
import type { RopeSource } from '../host/rope-source.ts';

const KEY = 'strandbook recipes';
const MOST = 200;
const stored = z.array(z.object({ name: z.string(), fingerprint: z.string(), columns: columnsSchema }));

/**
 * Recipes of this window, newest last. Every use of one also stands in the rope's journal, columns and all:
 * losing this list loses no decision, only the convenience.
 */
export function recipes(): Recipe[] {
  try {
    const read = stored.safeParse(JSON.parse(localStorage.getItem(KEY) ?? '[]'));
    return read.success ? read.data : [];
  } catch {
    return [];
  }
}

export function rememberRecipe(recipe: Recipe): void {
  try {
    localStorage.setItem(KEY, JSON.stringify([...recipes().filter((each) => each.name !== recipe.name && each.fingerprint !== recipe.fingerprint), recipe].slice(-MOST)));
  } catch {
    // Storage may be shut off; the journal holds the choice all the same.
  }
}

/** Column choices for files of a newly opened folder that a remembered recipe fits and for which nothing is stated yet. */
export async function choicesByRecipe(rope: RopeSource, act: { at: string; who: string }): Promise<JournalEntry[]> {
  const known = recipes();
  if (known.length === 0) return [];
  const record = await readRecord(rope);
  const open = record?.inspections.flatMap((each) => each.runs).filter((run) => run.columns === undefined && !rope.journal.some((entry) => entry.kind === 'column-choice' && entry.file === run.file)) ?? [];
  const choices: JournalEntry[] = [];
  for (const { file } of open) {
    if (!rope.files.some((each) => each.name === file)) continue;
    const preview = previewRun(await rope.readStart(file, HEAD_BYTES), file);
    const fits = 'fingerprint' in preview ? recipeFor(known, preview) : null;
    if (fits !== null) choices.push({ ...act, kind: 'column-choice', file, columns: fits.columns as Record<string, unknown>, recipe: fits.name });
  }
  return choices;
}

async function readRecord(rope: RopeSource) {
  try {
    const bytes = await rope.readStart('record.json', 4_000_000);
    const read = recordSchema.safeParse(JSON.parse(new TextDecoder().decode(bytes)));
    return read.success ? read.data : null;
  } catch {
    // The analysis says what is wrong with the record, with its line; here there is just nothing to choose for.
    return null;
  }
}
