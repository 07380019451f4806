/** What a camera writes beside the picture: CIPA DC-008 (EXIF) in a TIFF 6.0 block, tag numbers of that standard. */
export interface CameraData {
  readonly orientation?: number;
  /** `2024:05:01 10:11:12`. */
  readonly taken?: string;
  /** Whole degrees north, from the GPS block. */
  readonly latitude?: number;
}

type Field = readonly [tag: number, type: number, count: number, data: readonly number[]];

const short = (value: number) => [value >> 8, value & 255];
const long = (value: number) => [value >>> 24, (value >> 16) & 255, (value >> 8) & 255, value & 255];
const ascii = (text: string) => [...new TextEncoder().encode(`${text}\0`)];

/** One image file directory at `offset`: its fields with values of more than four bytes put behind it. */
function directory(fields: readonly Field[], offset: number): number[] {
  let behind = offset + 2 + 12 * fields.length + 4;
  const tail: number[] = [];
  const entries = fields.flatMap(([tag, type, count, data]) => {
    const inline = data.length <= 4;
    const value = inline ? [...data, 0, 0, 0].slice(0, 4) : long(behind);
    if (!inline) {
      tail.push(...data);
      behind += data.length;
    }
    return [...short(tag), ...short(type), ...long(count), ...value];
  });
  return [...short(fields.length), ...entries, 0, 0, 0, 0, ...tail];
}

/** The APP1 segment of a JPEG file. */
export function exifSegment({ orientation, taken, latitude }: CameraData): Uint8Array {
  const first = (exifAt: number, gpsAt: number): Field[] => [
    ...(orientation === undefined ? [] : [[0x0112, 3, 1, short(orientation)] as Field]),
    ...(taken === undefined ? [] : [[0x8769, 4, 1, long(exifAt)] as Field]),
    ...(latitude === undefined ? [] : [[0x8825, 4, 1, long(gpsAt)] as Field]),
  ];
  const exif = (at: number) => (taken === undefined ? [] : directory([[0x9003, 2, 20, ascii(taken)]], at));
  const gps = (at: number) => (latitude === undefined ? [] : directory([[1, 2, 2, ascii('N')], [2, 5, 3, [...long(latitude), ...long(1), ...long(0), ...long(1), ...long(0), ...long(1)]]], at));
  const exifAt = 8 + directory(first(0, 0), 8).length;
  const gpsAt = exifAt + exif(exifAt).length;
  const tiff = [0x4d, 0x4d, 0, 42, ...long(8), ...directory(first(exifAt, gpsAt), 8), ...exif(exifAt), ...gps(gpsAt)];
  const body = [...new TextEncoder().encode('Exif\0\0'), ...tiff];
  return Uint8Array.from([0xff, 0xe1, ...short(body.length + 2), ...body]);
}

/** A JPEG file with the camera's data behind its first two bytes. */
export function withCameraData(jpeg: Uint8Array, data: CameraData): Uint8Array {
  return Uint8Array.from([...jpeg.subarray(0, 2), ...exifSegment(data), ...jpeg.subarray(2)]);
}

/** The least that is a JPEG by its markers: start, start of scan, end. */
export const BARE_JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0xff, 0xd9]);
