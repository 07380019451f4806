import { zlibSync } from 'fflate';

/** A picture of eight-bit red, green and blue, three bytes a pixel, row by row. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Bytes of a PNG file (ISO/IEC 15948): header, a comment that says SYNTHETIC, unfiltered rows, end. */
export function encodePng({ width, height, pixels }: Picture): Uint8Array {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  header.set([8, 2, 0, 0, 0], 8);
  const rows = new Uint8Array(height * (1 + 3 * width));
  for (let y = 0; y < height; y += 1) rows.set(pixels.subarray(y * 3 * width, (y + 1) * 3 * width), y * (1 + 3 * width) + 1);
  const comment = new TextEncoder().encode('Comment\0SYNTHETIC: a drawing, not a photograph');
  return join([new Uint8Array(SIGNATURE), chunk('IHDR', header), chunk('tEXt', comment), chunk('IDAT', zlibSync(rows, { level: 9 })), chunk('IEND', new Uint8Array(0))]);
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const body = join([new TextEncoder().encode(type), data]);
  const out = new Uint8Array(8 + body.length);
  const view = new DataView(out.buffer);
  view.setUint32(0, data.length);
  out.set(body, 4);
  view.setUint32(4 + body.length, crc32(body));
  return out;
}

/** The check sum of PNG chunks: polynomial 0xedb88320, bits reflected. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

function join(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}
