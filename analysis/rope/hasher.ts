/** SHA-256 in pieces, supplied by the host: Node's own in commands, a library's in the page. `digest` is lower-case hex. */
export interface Hasher {
  update(bytes: Uint8Array): void;
  digest(): string;
}
export type CreateHasher = () => Hasher;
