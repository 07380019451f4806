import ExifReader from 'exifreader';
import type { VisualNote } from './visual-note.ts';
import { imageKind } from './image-kind.ts';
import type { ImageKind } from './image-kind.ts';

/** A photo and where on the rope it belongs. */
export interface PlacedPhoto {
  readonly file: string;
  /** Rope position in metres, or null: to be placed by hand. */
  readonly position: number | null;
  readonly by: 'note' | 'name' | 'time' | 'nothing';
  readonly reason: string;
}

export interface PhotoFacts {
  readonly kind: ImageKind | null;
  /** EXIF orientation 1..8; 1 where nothing is said. */
  readonly orientation: number;
  /** Local time of the camera as ISO text without a zone, or null. Places from GPS are never read. */
  readonly taken: string | null;
}

/**
 * What a photo file says of itself. A file that is no image has kind null. Damaged EXIF counts as none.
 * Only orientation and time are taken: location stays in the original and goes nowhere.
 */
export function photoFacts(bytes: Uint8Array): PhotoFacts {
  const kind = imageKind(bytes);
  if (kind === null) return { kind, orientation: 1, taken: null };
  try {
    const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
    const tags = ExifReader.load(buffer, { includeTags: { exif: ['Orientation', 'DateTimeOriginal', 'DateTime'] } } as never) as unknown as Record<string, { value?: unknown; description?: string } | undefined>;
    const turned = Number(tags.Orientation?.value);
    const time = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}:\d{2})/.exec(tags.DateTimeOriginal?.description ?? tags.DateTime?.description ?? '');
    return { kind, orientation: turned >= 1 && turned <= 8 ? turned : 1, taken: time ? `${time[1]}-${time[2]}-${time[3]}T${time[4]}` : null };
  } catch {
    return { kind, orientation: 1, taken: null };
  }
}

const NAME_PATTERNS: readonly { readonly pattern: RegExp; readonly factor: number; readonly why: string }[] = [
  { pattern: /(?:^|[^a-z0-9])(?:pos(?:ition)?|at|x)[ _=-]*(-?\d+(?:[.,]\d+)?)(?![\d.,]*\d)/i, factor: 1, why: 'position in its name' },
  { pattern: /(?:^|[^a-z0-9.])(\d+(?:[.,]\d+)?)[ _-]?m(?![a-z0-9])/i, factor: 1, why: 'metres in its name' },
  { pattern: /(?:^|[^a-z0-9.])(\d+)m(\d{1,3})(?!\d)/i, factor: 1, why: 'metres in its name' },
  { pattern: /(?:^|[^a-z0-9.])(\d+(?:[.,]\d+)?)[ _-]?(?:ft|feet)(?![a-z0-9])/i, factor: 0.3048, why: 'feet in its name' },
];

/** Position that a file name speaks of: `123.4m`, `pos_0123.40`, `12m50`, `400ft`; metres, or null. */
export function positionInName(file: string): { readonly position: number; readonly why: string } | null {
  const base = (file.split(/[\\/]/).pop() ?? '').replace(/\.(jpe?g|png|gif|webp|tiff?|heic|bmp)$/i, '');
  for (const { pattern, factor, why } of NAME_PATTERNS) {
    const found = pattern.exec(base);
    if (!found) continue;
    const text = found[2] !== undefined ? `${found[1]}.${found[2]}` : found[1].replace(',', '.');
    return { position: Number(text) * factor, why };
  }
  return null;
}

/** Where the head stood at moments of the scan: seconds of the camera's local clock -> rope position; from a scan with a clock. */
export interface ScanClock {
  readonly seconds: readonly number[];
  readonly positions: readonly number[];
  /** Camera ahead of the instrument's clock, seconds; as set by the user. */
  readonly cameraAhead: number;
}

/**
 * Puts photos on the rope: by a note that names them, else by their name, else by their time against the scan's clock
 * (within two minutes of a sample). What fits nothing stays without a place; no place is ever guessed.
 */
export function matchPhotos(files: readonly string[], notes: readonly VisualNote[], taken: ReadonlyMap<string, string | null>, clock: ScanClock | null): PlacedPhoto[] {
  const plain = (file: string) => (file.split(/[\\/]/).pop() ?? '').toLowerCase();
  return files.map((file): PlacedPhoto => {
    const note = notes.find((each) => each.photo !== null && plain(each.photo) === plain(file));
    if (note) return { file, position: (note.from + note.to) / 2, by: 'note', reason: `named by the note at ${note.from} m` };
    const named = positionInName(file);
    if (named) return { file, position: named.position, by: 'name', reason: named.why };
    const at = clock === null ? null : positionAtTime(taken.get(file) ?? null, clock);
    if (at !== null) return { file, position: at, by: 'time', reason: 'time of the photo against the clock of the scan' };
    return { file, position: null, by: 'nothing', reason: 'no note, name or time says where: place it by hand' };
  });
}

function positionAtTime(taken: string | null, clock: ScanClock): number | null {
  if (taken === null || clock.seconds.length === 0) return null;
  const second = Date.parse(`${taken}Z`) / 1000 - clock.cameraAhead;
  let best = -1;
  for (let i = 0; i < clock.seconds.length; i += 1) if (best < 0 || Math.abs(clock.seconds[i] - second) < Math.abs(clock.seconds[best] - second)) best = i;
  return Math.abs(clock.seconds[best] - second) <= 120 ? clock.positions[best] : null;
}
