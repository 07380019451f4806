import type { Checkpoint } from '../rope/checkpoint.ts';
import type { Hasher } from '../rope/hasher.ts';
import type { Encoding } from './detect-encoding.ts';
import type { Bytes } from './run.ts';

/** Pieces of a whole array; small enough that a cancel is heard soon, large enough to cost nothing. */
const PIECE = 1 << 20;

/** The bytes of a file piece by piece as they stand: hashed on the way, with progress by bytes. */
export async function* hashedPieces(bytes: Bytes, size: number | null, hasher: Hasher, checkpoint: Checkpoint): AsyncGenerator<Uint8Array> {
  let passed = 0;
  const total = bytes instanceof Uint8Array ? bytes.length : size;
  for await (const piece of bytes instanceof Uint8Array ? slicesOf(bytes) : bytes) {
    hasher.update(piece);
    passed += piece.length;
    await checkpoint('', total === null || total === 0 ? 0 : Math.min(1, passed / total));
    yield piece;
  }
}

function* slicesOf(bytes: Uint8Array): Generator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += PIECE) yield bytes.subarray(at, Math.min(bytes.length, at + PIECE));
}

/** Takes pieces until `enough` bytes are there or the file ends. */
export async function takeHead(pieces: AsyncIterator<Uint8Array>, enough: number): Promise<Uint8Array> {
  const taken: Uint8Array[] = [];
  let size = 0;
  while (size < enough) {
    const { done, value } = await pieces.next();
    if (done) break;
    taken.push(value);
    size += value.length;
  }
  if (taken.length === 1) return taken[0];
  const head = new Uint8Array(size);
  let at = 0;
  for (const piece of taken) {
    head.set(piece, at);
    at += piece.length;
  }
  return head;
}

/** The head and the rest, without the byte order mark; UTF-16 becomes UTF-8 so that digits are single bytes for the scanner. */
export async function* narrowPieces(head: Uint8Array, rest: AsyncGenerator<Uint8Array>, encoding: Encoding, markLength: number): AsyncGenerator<Uint8Array> {
  const wide = encoding === 'utf-16le' || encoding === 'utf-16be';
  const decoder = wide ? new TextDecoder(encoding, { ignoreBOM: true }) : null;
  const encoder = new TextEncoder();
  const narrow = (piece: Uint8Array) => (decoder ? encoder.encode(decoder.decode(piece, { stream: true })) : piece);
  for (const piece of slicesOf(head.subarray(markLength))) yield narrow(piece);
  for await (const piece of rest) yield narrow(piece);
  if (decoder) yield encoder.encode(decoder.decode());
}
