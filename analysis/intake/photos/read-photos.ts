import type { Checkpoint } from '../../rope/checkpoint.ts';
import type { RopeRecord } from '../../rope/record.ts';
import { takeHead } from '../byte-source.ts';
import { IMAGE_ENDING } from '../image-kind.ts';
import type { ImageKind } from '../image-kind.ts';
import type { Bytes } from '../run.ts';
import type { VisualNote } from '../visual-note.ts';
import { dayInName, momentInName } from './moment-in-name.ts';
import { photoFacts } from './photo-facts.ts';
import { photoFile, photoFolder } from './photo-file.ts';

/** A photo that no visual note names: a file of a photo folder, or an image elsewhere in the rope folder. */
export interface LoosePhoto {
  readonly file: string;
  /** The inspection that it belongs to; null where several share its folder and nothing says which. */
  readonly inspection: string | null;
  /** Null: the file is no image. */
  readonly kind: ImageKind | null;
  /** Local time of the camera, from EXIF or the name, as ISO text without a zone, or null. */
  readonly taken: string | null;
}

interface Source {
  readonly files: readonly { readonly name: string }[];
  read(name: string): Promise<Bytes>;
}

/** Enough for the EXIF block, which stands first in what cameras write. */
const HEAD_BYTES = 256 * 1024;
/** What file managers leave in folders. */
const LEFTOVER = /(^|\/)(\.[^/]*|thumbs\.db|desktop\.ini)$/i;
/** A photo belongs to one of the inspections that share its folder if its day lies this near to that inspection's, days. */
const NEAR_DAYS = 31;

/** The photos of all inspections' folders and the other images of the rope folder that no note names; by file name, each with what it says of itself. Originals are only read. */
export async function readPhotos(source: Source, record: Pick<RopeRecord, 'inspections'>, notes: readonly VisualNote[], checkpoint: Checkpoint): Promise<LoosePhoto[]> {
  const named = new Set(notes.map((note) => (note.photo === null ? null : photoFile(note.photo, note.inspection, record, source.files))));
  const loose = source.files.map((each) => each.name).filter((name) => !named.has(name) && !LEFTOVER.test(name)).map((file) => ({ file, sharers: inspectionsOf(file, record) })).filter(({ sharers }) => sharers.length > 0);
  loose.sort((a, b) => (a.file < b.file ? -1 : 1));
  const photos: LoosePhoto[] = [];
  for (const [index, { file, sharers }] of loose.entries()) {
    await checkpoint(file, index / loose.length);
    const { kind, taken: recorded } = photoFacts(await headOf(await source.read(file)));
    const taken = recorded ?? momentInName(file);
    photos.push({ file, kind, taken, inspection: ownerOf(sharers, (taken ?? dayInName(file))?.slice(0, 10) ?? null) });
  }
  return photos;
}

type Inspection = RopeRecord['inspections'][number];

/** The inspections whose photo folder holds the file: those of the innermost such folder; any for an image elsewhere. */
function inspectionsOf(file: string, { inspections }: Pick<RopeRecord, 'inspections'>): Inspection[] {
  const holding = inspections.map((inspection) => ({ inspection, folder: photoFolder(inspection.photos) })).filter(({ folder }) => folder !== null && folder !== '' && file.startsWith(`${folder}/`));
  // Outside the photo folders only what is called an image counts as a photo; it may be of any inspection.
  if (holding.length === 0) return IMAGE_ENDING.test(file) ? [...inspections] : [];
  const innermost = Math.max(...holding.map(({ folder }) => folder!.length));
  return holding.filter(({ folder }) => folder!.length === innermost).map(({ inspection }) => inspection);
}

function ownerOf(sharers: readonly Inspection[], day: string | null): string | null {
  if (sharers.length === 1) return sharers[0].id;
  if (day === null) return null;
  const away = (each: Inspection) => Math.abs(Date.parse(each.date.slice(0, 10)) - Date.parse(day)) / 86_400_000;
  const nearest = [...sharers].sort((a, b) => away(a) - away(b))[0];
  return away(nearest) <= NEAR_DAYS ? nearest.id : null;
}

async function headOf(bytes: Bytes): Promise<Uint8Array> {
  if (bytes instanceof Uint8Array) return bytes.subarray(0, HEAD_BYTES);
  const pieces = bytes[Symbol.asyncIterator]();
  try {
    return await takeHead(pieces, HEAD_BYTES);
  } finally {
    await pieces.return?.();
  }
}
