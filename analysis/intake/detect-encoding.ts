export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export interface EncodingGuess {
  readonly encoding: Encoding;
  /** Bytes of a byte order mark, to be skipped. */
  readonly markLength: number;
  readonly reason: string;
}

/**
 * Encoding of a text file from its first bytes, or null where it is not text. A byte order mark decides; without one,
 * zero bytes in every second place mean UTF-16; bytes that are valid UTF-8 are UTF-8, others Windows-1252 (which holds Latin-1).
 */
export function detectEncoding(head: Uint8Array): EncodingGuess | null {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return textual(head, { encoding: 'utf-8', markLength: 3, reason: 'byte order mark of UTF-8' });
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: 'utf-16le', markLength: 2, reason: 'byte order mark of UTF-16, little end first' };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: 'utf-16be', markLength: 2, reason: 'byte order mark of UTF-16, big end first' };
  const wide = wideWithoutMark(head);
  if (wide !== null) return wide;
  return textual(head, validUtf8(head)
    ? { encoding: 'utf-8', markLength: 0, reason: 'all bytes are valid UTF-8' }
    : { encoding: 'windows-1252', markLength: 0, reason: 'bytes above 127 that are not UTF-8: taken as Windows-1252, which holds Latin-1' });
}

/** Text in digits and Latin letters has a zero in every second byte of UTF-16, and in no other. */
function wideWithoutMark(head: Uint8Array): EncodingGuess | null {
  const pairs = Math.min(head.length, 4096) >> 1;
  if (pairs < 4) return null;
  let zeroFirst = 0;
  let zeroSecond = 0;
  for (let i = 0; i < pairs; i += 1) {
    if (head[2 * i] === 0) zeroFirst += 1;
    if (head[2 * i + 1] === 0) zeroSecond += 1;
  }
  if (zeroSecond > 0.7 * pairs && zeroFirst < 0.02 * pairs) return { encoding: 'utf-16le', markLength: 0, reason: 'a zero in every second byte: UTF-16, little end first' };
  if (zeroFirst > 0.7 * pairs && zeroSecond < 0.02 * pairs) return { encoding: 'utf-16be', markLength: 0, reason: 'a zero in every second byte: UTF-16, big end first' };
  return null;
}

/** Control characters other than tab, line ends and form feed do not occur in text; one in a hundred may be damage. */
function textual(head: Uint8Array, guess: EncodingGuess): EncodingGuess | null {
  let control = 0;
  for (let i = 0; i < head.length; i += 1) {
    const byte = head[i];
    if (byte < 32 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 12 && byte !== 26) control += 1;
  }
  return control > 0.01 * head.length && control > 1 ? null : guess;
}

/** True where the bytes are UTF-8; a character cut off at the end of the head is no fault. */
function validUtf8(head: Uint8Array): boolean {
  let at = 0;
  while (at < head.length) {
    const byte = head[at];
    const follow = byte < 0x80 ? 0 : byte >= 0xc2 && byte < 0xe0 ? 1 : byte >= 0xe0 && byte < 0xf0 ? 2 : byte >= 0xf0 && byte < 0xf5 ? 3 : -1;
    if (follow < 0) return false;
    for (let i = 1; i <= follow; i += 1) {
      if (at + i >= head.length) return true;
      if ((head[at + i] & 0xc0) !== 0x80) return false;
    }
    at += follow + 1;
  }
  return true;
}
