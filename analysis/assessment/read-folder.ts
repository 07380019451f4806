import { agreeOnSign } from '../intake/agree-on-sign.ts';
import { takeHead } from '../intake/byte-source.ts';
import { compareNoise } from '../intake/compare-noise.ts';
import { readPhotos } from '../intake/photos/read-photos.ts';
import type { LoosePhoto } from '../intake/photos/read-photos.ts';
import { readNotes } from '../intake/read-notes.ts';
import { readRun } from '../intake/read-run.ts';
import type { Bytes, Run } from '../intake/run.ts';
import type { VisualNote } from '../intake/visual-note.ts';
import { completeGeometry } from '../rope/complete-geometry.ts';
import { presentLength } from '../rope/cut-off.ts';
import { stageOf } from '../rope/checkpoint.ts';
import type { Checkpoint } from '../rope/checkpoint.ts';
import { columnsSchema } from '../rope/record.ts';
import type { InspectionRecord, RopeRecord, RunColumns } from '../rope/record.ts';
import type { CreateHasher } from '../rope/hasher.ts';
import type { JournalEntry } from '../rope/journal.ts';
import type { Problem } from '../rope/problem.ts';
import { UnusableInput } from '../rope/problem.ts';
import { readRecord } from '../rope/read-record.ts';
import { ropeExtent } from '../rope/rope-extent.ts';

/** A rope folder as the analysis sees it: names relative to the folder, with '/'. */
export interface RopeFolder {
  readonly name: string;
  readonly files: readonly { readonly name: string; readonly size: number }[];
  read(name: string): Promise<Bytes>;
}

export interface InspectionIntake {
  readonly record: InspectionRecord;
  readonly runs: readonly Run[];
  readonly notes: readonly VisualNote[];
}

export interface FolderIntake {
  readonly record: RopeRecord;
  readonly recordSha256: string;
  readonly inspections: readonly InspectionIntake[]; // oldest first
  /** Photos and other images of the folder that no note names. */
  readonly photos: readonly LoosePhoto[];
  readonly otherFiles: readonly { readonly file: string; readonly sha256: string; readonly rows: number; readonly rowsRejected: number }[];
}

interface Options {
  readonly createHash: CreateHasher;
  readonly journal: readonly JournalEntry[];
}

/** Share of the reading that goes to photos, of which only the first bytes are read. */
const PHOTO_SHARE = 0.02;

/** Reads record, notes, photos and scans. Every fault of every file is collected before UnusableInput is thrown. */
export async function readFolder(folder: RopeFolder, options: Options, checkpoint: Checkpoint): Promise<FolderIntake> {
  const recordBytes = await wholeFile(folder, 'record.json', 'put a record.json in the folder');
  const record = readRecord(recordBytes, 'record.json');
  const hasher = options.createHash();
  hasher.update(recordBytes);
  const ordered = [...record.inspections].sort((a, b) => Date.parse(a.date) - Date.parse(b.date));
  const problems: Problem[] = [];
  const inspections: InspectionIntake[] = [];
  const otherFiles: FolderIntake['otherFiles'][number][] = [];
  const notes = new Map<string, VisualNote[]>();
  for (const inspection of ordered) notes.set(inspection.id, [...(await readInspectionNotes(folder, inspection, options, problems, otherFiles)), ...notesFromJournal(options.journal, inspection.id)]);
  const photos = await readPhotos(folder, record, [...notes.values()].flat(), stageOf(checkpoint, 'photos', 0, PHOTO_SHARE));
  const total = ordered.reduce((sum, each) => sum + each.runs.length, 0);
  let done = 0;
  for (const inspection of ordered) {
    const runs: Run[] = [];
    const ropeLength = presentLength(record.events, ropeExtent(record), ordered[0].date, inspection.date);
    const clockOn = photos.some((photo) => photo.taken !== null && photo.inspection === inspection.id) ? inspection.date : undefined;
    for (const run of inspection.runs) {
      const before = done;
      const result = await readOneRun(folder, { record, ropeLength, clockOn }, run, options, (stage, share) => checkpoint(`${run.file} ${stage}`.trim(), PHOTO_SHARE + ((1 - PHOTO_SHARE) * (before + share)) / total));
      if ('problems' in result) problems.push(...result.problems);
      else runs.push(result.run);
      done += 1;
    }
    inspections.push({ record: inspection, runs, notes: notes.get(inspection.id) ?? [] });
  }
  if (problems.length > 0) throw new UnusableInput(problems);
  return { record, recordSha256: hasher.digest(), inspections: compareRuns(inspections), photos, otherFiles };
}

/** What only shows when the runs of all inspections are seen together: which way loss points, and noise that stands out. */
function compareRuns(inspections: readonly InspectionIntake[]): InspectionIntake[] {
  const compared = compareNoise(agreeOnSign(inspections.flatMap((each) => each.runs)));
  let next = 0;
  return inspections.map((each) => ({ ...each, runs: each.runs.map(() => compared[next++]) }));
}

interface RunContext {
  readonly record: RopeRecord;
  readonly ropeLength: number | null;
  /** Date of the inspection where its photos need the clock of its scans. */
  readonly clockOn: string | undefined;
}

async function readOneRun(folder: RopeFolder, { record, ropeLength, clockOn }: RunContext, run: InspectionRecord['runs'][number], options: Options, checkpoint: Checkpoint) {
  const known = folder.files.find((each) => each.name === run.file);
  if (!known) return { problems: [missing(run.file)] };
  return readRun(
    {
      file: run.file, bytes: await folder.read(run.file), size: known.size,
      columns: chosenColumns(options.journal, run.file) ?? run.columns,
      direction: run.direction,
      ropeLength, ...(clockOn === undefined ? {} : { clockOn }),
      loop: record.rope.loop === true,
      metallicArea: completeGeometry(record.rope).metallicAreaMm2,
      ropeDiameter: record.rope.diameter_mm ?? null,
    },
    { checkpoint, createHash: options.createHash },
  );
}

async function readInspectionNotes(folder: RopeFolder, inspection: InspectionRecord, options: Options, problems: Problem[], otherFiles: { file: string; sha256: string; rows: number; rowsRejected: number }[]) {
  if (inspection.notes === undefined) return [];
  if (!folder.files.some((each) => each.name === inspection.notes)) {
    problems.push(missing(inspection.notes));
    return [];
  }
  const bytes = await wholeFile(folder, inspection.notes, '');
  const hasher = options.createHash();
  hasher.update(bytes);
  const read = readNotes(bytes, inspection.notes, inspection.id);
  problems.push(...read.problems);
  otherFiles.push({ file: inspection.notes, sha256: hasher.digest(), rows: read.notes.length, rowsRejected: read.problems.length });
  return read.notes;
}

/** A user's own choice of columns for a file, from the journal; the newest holds. */
function chosenColumns(journal: readonly JournalEntry[], file: string): RunColumns | undefined {
  const choice = journal.findLast((entry) => entry.kind === 'column-choice' && entry.file === file);
  if (choice?.kind !== 'column-choice') return undefined;
  const checked = columnsSchema.safeParse(choice.columns);
  return checked.success ? checked.data : undefined;
}

function notesFromJournal(journal: readonly JournalEntry[], inspection: string): VisualNote[] {
  return journal.flatMap((entry, index) =>
    entry.kind === 'visual-note' && entry.inspection === inspection ? [{ ...(entry.note as unknown as VisualNote), id: `entered-${index + 1}`, inspection }] : []);
}

function missing(file: string): Problem {
  return { file, line: null, column: null, what: 'the file is not in the rope folder', remedy: 'put it there or correct its name in record.json' };
}

async function wholeFile(folder: RopeFolder, name: string, remedy: string): Promise<Uint8Array> {
  if (!folder.files.some((each) => each.name === name)) throw new UnusableInput([{ ...missing(name), remedy: remedy || missing(name).remedy }]);
  const bytes = await folder.read(name);
  if (bytes instanceof Uint8Array) return bytes;
  return takeHead(bytes[Symbol.asyncIterator](), Infinity);
}
