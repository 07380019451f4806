// Builds the page into dist/renderer when a source is newer than the last build.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = ['renderer', 'analysis', 'main/contract.ts', 'vite.config.ts', 'package-lock.json'];

export async function ensurePage(root) {
  const index = join(root, 'dist', 'renderer', 'index.html');
  const newest = Math.max(...SOURCES.map((each) => newestIn(join(root, each))));
  if (existsSync(index) && statSync(index).mtimeMs > newest) return;
  const { build } = await import('vite');
  await build({ root: join(root, 'renderer'), configFile: join(root, 'vite.config.ts'), logLevel: 'warn' });
}

function newestIn(path) {
  if (!existsSync(path)) return 0;
  const stat = statSync(path);
  return stat.isDirectory() ? readdirSync(path).reduce((newest, name) => Math.max(newest, newestIn(join(path, name))), stat.mtimeMs) : stat.mtimeMs;
}
