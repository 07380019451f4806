import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8', '.svg': 'image/svg+xml', '.png': 'image/png',
  '.json': 'application/json', '.woff2': 'font/woff2', '.map': 'application/json', '.ico': 'image/x-icon',
};

/** One built file of the page by the path of its address; null where there is none, or where the path leads out of the page's folder. */
export async function pageFile(root: string, path: string): Promise<{ bytes: Uint8Array; type: string } | null> {
  const relative = normalize(path === '/' ? 'index.html' : decodePath(path)).replace(/^[/\\]+/, '');
  const file = join(root, relative);
  const type = TYPES[extname(file)];
  if (!type || relative.includes('\0') || !file.startsWith(root + sep)) return null;
  const bytes = await readFile(file).catch(() => null);
  return bytes === null ? null : { bytes, type };
}

/** An address that is not properly encoded names no file. */
export function decodePath(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return '\0';
  }
}
