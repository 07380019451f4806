import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder: the nearest one above this file, bundled or not, that holds our package.json. */
export function projectRoot(): string {
  return found().root;
}

/** Name and version for outputs. */
export function productName(): string {
  return `Strandbook ${found().version}`;
}

function found(): { root: string; version: string } {
  for (let folder = dirname(fileURLToPath(import.meta.url)); folder !== dirname(folder); folder = dirname(folder)) {
    const version = versionIn(join(folder, 'package.json'));
    if (version !== null) return { root: folder, version };
  }
  throw new Error('package.json of Strandbook is missing: install the program again');
}

function versionIn(file: string): string | null {
  try {
    const content = JSON.parse(readFileSync(file, 'utf8')) as { name?: string; version?: string };
    return content.name === 'strandbook' ? (content.version ?? '') : null;
  } catch {
    return null;
  }
}
