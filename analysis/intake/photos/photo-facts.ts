import ExifReader from 'exifreader';
import { imageKind } from '../image-kind.ts';
import type { ImageKind } from '../image-kind.ts';

export interface PhotoFacts {
  readonly kind: ImageKind | null;
  /** EXIF orientation 1..8; 1 where nothing is said. */
  readonly orientation: number;
  /** Local time of the camera as ISO text without a zone, or null. Places from GPS are never read. */
  readonly taken: string | null;
}

/**
 * What a photo file says of itself, from its first bytes. A file that is no image has kind null. Damaged EXIF counts as none.
 * Only orientation and time are taken: location stays in the original and goes nowhere.
 */
export function photoFacts(bytes: Uint8Array): PhotoFacts {
  const kind = imageKind(bytes);
  if (kind === null) return { kind, orientation: 1, taken: null };
  try {
    const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
    const tags = ExifReader.load(buffer, { includeTags: { exif: ['Orientation', 'DateTimeOriginal', 'DateTime'] } } as never) as unknown as Record<string, { value?: unknown; description?: string } | undefined>;
    const turned = Number(tags.Orientation?.value);
    return { kind, orientation: turned >= 1 && turned <= 8 ? turned : 1, taken: momentOf(tags.DateTimeOriginal?.description) ?? momentOf(tags.DateTime?.description) };
  } catch {
    return { kind, orientation: 1, taken: null };
  }
}

/** ISO text of an EXIF time; null where it is none, as the zeros of a camera that was never set. */
function momentOf(text: string | undefined): string | null {
  const time = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}:\d{2})/.exec(text ?? '');
  if (!time) return null;
  const moment = `${time[1]}-${time[2]}-${time[3]}T${time[4]}`;
  return Number.isFinite(Date.parse(`${moment}Z`)) ? moment : null;
}
