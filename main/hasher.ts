import { createHash } from 'node:crypto';
import type { Hasher } from '../analysis/rope/hasher.ts';

/** SHA-256 by Node's own crypto. */
export function nodeHasher(): Hasher {
  const hash = createHash('sha256');
  return { update: (bytes) => void hash.update(bytes), digest: () => hash.digest('hex') };
}
