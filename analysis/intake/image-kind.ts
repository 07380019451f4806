export type ImageKind = 'jpeg' | 'png' | 'gif' | 'webp' | 'tiff' | 'heic' | 'bmp';

/** What image files are called. */
export const IMAGE_ENDING = /\.(jpe?g|png|gif|webp|tiff?|heic|heif|avif|bmp)$/i;

/** What an image file is by its first bytes, or null where it is no image that the program knows: names can lie. */
export function imageKind(head: Uint8Array): ImageKind | null {
  const starts = (...bytes: number[]) => bytes.every((byte, i) => head[i] === byte);
  const ascii = (from: number, to: number) => String.fromCharCode(...head.subarray(from, to));
  if (starts(0xff, 0xd8, 0xff)) return 'jpeg';
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (ascii(0, 6) === 'GIF87a' || ascii(0, 6) === 'GIF89a') return 'gif';
  if (ascii(0, 4) === 'RIFF' && ascii(8, 12) === 'WEBP') return 'webp';
  if (starts(0x49, 0x49, 0x2a, 0) || starts(0x4d, 0x4d, 0, 0x2a)) return 'tiff';
  if (ascii(4, 8) === 'ftyp' && /^(heic|heix|mif1|msf1|avif)/.test(ascii(8, 12))) return 'heic';
  if (ascii(0, 2) === 'BM' && head.length > 26 && head[6] === 0 && head[7] === 0 && head[8] === 0 && head[9] === 0) return 'bmp';
  return null;
}
