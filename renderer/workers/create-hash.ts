import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { CreateHasher } from '../../analysis/rope/hasher.ts';

/** SHA-256 in pieces; the browser's own needs the whole file at once. */
export const createHash: CreateHasher = () => {
  const hash = sha256.create();
  return { update: (bytes) => { hash.update(bytes); }, digest: () => bytesToHex(hash.digest()) };
};
