import { detectEncoding } from './detect-encoding.ts';
import type { EncodingGuess } from './detect-encoding.ts';

/** A whole small file as text, with the encoding found; null where the bytes are not text. */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly guess: EncodingGuess } | null {
  const guess = detectEncoding(bytes);
  if (guess === null) return null;
  return { text: new TextDecoder(guess.encoding).decode(bytes.subarray(guess.markLength)), guess };
}
