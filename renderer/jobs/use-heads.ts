import { useEffect, useState } from 'react';
import { HEAD_BYTES } from '../../analysis/intake/read-run.ts';
import { previewRun } from '../../analysis/intake/preview.ts';
import type { RunPreview } from '../../analysis/intake/preview.ts';
import { formatProblem } from '../../analysis/rope/problem.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';
import { columnsSchema } from '../../analysis/rope/record.ts';
import type { RopeRecord, RunColumns } from '../../analysis/rope/record.ts';
import { useApp } from '../state/store.ts';

/** The beginning of a file as intake reads it, or why it cannot be read. */
export type FileHead = { readonly preview: RunPreview } | { readonly refusal: string };

/** The columns stated for a file: the newest choice in the journal, else the record's. */
export function statedColumns(file: string, record: Pick<RopeRecord, 'inspections'> | null, journal: readonly JournalEntry[]): RunColumns | undefined {
  const choice = journal.findLast((entry) => entry.kind === 'column-choice' && entry.file === file);
  const checked = choice?.kind === 'column-choice' ? columnsSchema.safeParse(choice.columns) : null;
  if (checked?.success) return checked.data;
  return record?.inspections.flatMap((each) => each.runs).find((run) => run.file === file)?.columns;
}

/** Beginnings of the given files, read as they come in. */
export function useHeads(files: readonly string[], record: Pick<RopeRecord, 'inspections'> | null): ReadonlyMap<string, FileHead> {
  const rope = useApp((state) => state.rope);
  const journal = useApp((state) => state.journal);
  const [heads, setHeads] = useState<ReadonlyMap<string, FileHead>>(new Map());
  const key = files.join('\n');
  useEffect(() => {
    if (rope === null) return;
    let gone = false;
    void (async () => {
      const read = new Map<string, FileHead>();
      for (const file of key.split('\n').filter((each) => each !== '')) {
        const head = await rope.readStart(file, HEAD_BYTES).then(
          (bytes) => headOf(bytes, file, statedColumns(file, record, journal)),
          (error: unknown): FileHead => ({ refusal: error instanceof Error ? error.message : String(error) }),
        );
        if (gone) return;
        read.set(file, head);
        setHeads(new Map(read));
      }
    })();
    return () => { gone = true; };
  }, [rope, key, record, journal]);
  return heads;
}

function headOf(bytes: Uint8Array, file: string, stated: RunColumns | undefined): FileHead {
  if (bytes.length === 0) return { refusal: 'the file is empty' };
  const preview = previewRun(bytes, file, stated);
  return 'fingerprint' in preview ? { preview } : { refusal: preview.problems.map(formatProblem).join(' ') };
}

/** Files whose header says that they come from the same instrument and export. */
export function alikeFiles(heads: ReadonlyMap<string, FileHead>, file: string): string[] {
  const head = heads.get(file);
  if (head === undefined || !('preview' in head) || head.preview.understanding.headerLine === null) return [];
  return [...heads].filter(([name, other]) => name !== file && 'preview' in other && other.preview.fingerprint === head.preview.fingerprint).map(([name]) => name);
}
