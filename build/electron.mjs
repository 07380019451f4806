// Finds Electron's binary without downloading anything and without failing.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** { path } of the binary, or { reason } why there is none. */
export function findElectron(root) {
  const folder = join(root, 'node_modules', 'electron');
  if (!existsSync(folder)) return { reason: 'Electron is not installed' };
  const pointer = join(folder, 'path.txt');
  const path = existsSync(pointer) ? join(folder, 'dist', readFileSync(pointer, 'utf8').trim()) : null;
  return path && existsSync(path) ? { path } : { reason: "Electron's binary is not on this machine (it is downloaded on first use, which needs a connection)" };
}
