// npm run package: an installer of the desktop app for this system, into dist/package. Needs Electron's binary, which is downloaded.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureInstalled } from './install.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
process.chdir(root);
ensureInstalled(root);
const { ensureBundle } = await import('./bundle.mjs');
const { ensurePage } = await import('./page.mjs');
await ensureBundle(root);
await ensurePage(root);
const done = spawnSync(process.execPath, ['node_modules/electron-builder/cli.js', '--config', 'build/electron-builder.json', '--publish', 'never', ...process.argv.slice(2)], { stdio: 'inherit' });
if (done.status !== 0) process.stderr.write("No installer was made. Most often Electron's binary could not be downloaded: see the lines above.\n");
process.exit(done.status ?? 1);
