import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Name and version for outputs, from package.json wherever the bundle lies below the project. */
export function productName(): string {
  for (let folder = dirname(fileURLToPath(import.meta.url)); folder !== dirname(folder); folder = dirname(folder)) {
    const version = versionIn(join(folder, 'package.json'));
    if (version !== null) return `Strandbook ${version}`;
  }
  return 'Strandbook';
}

function versionIn(file: string): string | null {
  try {
    const found = JSON.parse(readFileSync(file, 'utf8')) as { name?: string; version?: string };
    return found.name === 'strandbook' ? (found.version ?? null) : null;
  } catch {
    return null;
  }
}
