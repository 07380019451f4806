import { z } from 'zod';

/**
 * What people decided about one rope. Entries are only ever added; the newest on one subject holds.
 * The journal stands beside the record, which the program never writes.
 */
const act = { at: z.string(), who: z.string() };

export const journalEntrySchema = z.discriminatedUnion('kind', [
  z.object({ ...act, kind: z.literal('tie-point'), inspection: z.string(), measured_m: z.number(), rope_m: z.number() }),
  z.object({ ...act, kind: z.literal('tie-point-removed'), inspection: z.string(), measured_m: z.number() }),
  z.object({ ...act, kind: z.literal('place-review'), from_m: z.number(), to_m: z.number(), verdict: z.enum(['accepted', 'set-aside', 'relabelled', 'withdrawn']), label: z.string().optional(), reason: z.string() }),
  z.object({ ...act, kind: z.literal('rule-choice'), rules: z.array(z.string()), reason: z.string() }),
  /** A rule set that a user made, as rule-set.ts describes it. */
  z.object({ ...act, kind: z.literal('rule-set'), set: z.record(z.string(), z.unknown()) }),
  z.object({ ...act, kind: z.literal('visual-note'), inspection: z.string(), note: z.record(z.string(), z.unknown()) }),
  /** Where a photo of the folder was taken, in metres of rope position; null: on no known place, whatever its name or time says. */
  z.object({ ...act, kind: z.literal('photo-place'), file: z.string(), inspection: z.string(), at_m: z.number().nullable() }),
  z.object({ ...act, kind: z.literal('photo-place-removed'), file: z.string() }),
  /** How far the camera's clock ran ahead of the clock of an inspection's scans, in seconds; negative: behind. */
  z.object({ ...act, kind: z.literal('camera-clock'), inspection: z.string(), ahead_s: z.number() }),
  z.object({ ...act, kind: z.literal('column-choice'), file: z.string(), columns: z.record(z.string(), z.unknown()), recipe: z.string().optional() }),
  z.object({ ...act, kind: z.literal('parameters'), values: z.record(z.string(), z.number()) }),
  z.object({ ...act, kind: z.literal('remark'), text: z.string(), at_m: z.number().optional() }),
]);

export type JournalEntry = z.infer<typeof journalEntrySchema>;
export type TiePoint = Extract<JournalEntry, { kind: 'tie-point' }>;

/** The tie points that still hold, oldest first: a later one at the same measured place replaces, a removal removes. */
export function tiePointsOf(journal: readonly JournalEntry[], inspection: string): TiePoint[] {
  const held: TiePoint[] = [];
  for (const entry of journal) {
    if ((entry.kind !== 'tie-point' && entry.kind !== 'tie-point-removed') || entry.inspection !== inspection) continue;
    const same = held.findIndex((point) => Math.abs(point.measured_m - entry.measured_m) < 1e-6);
    if (same >= 0) held.splice(same, 1);
    if (entry.kind === 'tie-point') held.push(entry);
  }
  return held;
}

/** Where people put a photo, or undefined where its place is left to its name and time. */
export function photoPlaceOf(journal: readonly JournalEntry[], file: string): Extract<JournalEntry, { kind: 'photo-place' }> | undefined {
  const newest = journal.findLast((entry) => (entry.kind === 'photo-place' || entry.kind === 'photo-place-removed') && entry.file === file);
  return newest?.kind === 'photo-place' ? newest : undefined;
}

/** Seconds that the camera's clock was ahead of the scans of an inspection, as last stated; 0 where nothing was. */
export function cameraAheadOf(journal: readonly JournalEntry[], inspection: string): number {
  const newest = journal.findLast((entry) => entry.kind === 'camera-clock' && entry.inspection === inspection);
  return newest?.kind === 'camera-clock' ? newest.ahead_s : 0;
}

/** The newest entry of one kind, or undefined. */
export function newestOf<K extends JournalEntry['kind']>(journal: readonly JournalEntry[], kind: K): Extract<JournalEntry, { kind: K }> | undefined {
  return journal.findLast((entry): entry is Extract<JournalEntry, { kind: K }> => entry.kind === kind);
}
