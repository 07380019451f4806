// Installs what the lock file names when node_modules is missing or older than the lock file. Nothing is printed on success.
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Throws with the installer's own words when it fails. Everything goes to standard error: standard output belongs to the command. */
export function ensureInstalled(root) {
  const stamp = join(root, 'node_modules', '.package-lock.json');
  if (existsSync(stamp) && statSync(stamp).mtimeMs >= statSync(join(root, 'package-lock.json')).mtimeMs - 1000) return;
  if (existsSync(stamp) && existsSync(join(root, 'node_modules', 'esbuild'))) {
    const check = spawnSync('npm', ['ls', '--depth', '0', '--silent'], { cwd: root, stdio: 'ignore', shell: process.platform === 'win32' });
    if (check.status === 0) return;
  }
  process.stderr.write('Installing packages (npm ci) …\n');
  const install = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });
  if (install.status !== 0) throw new Error('npm ci failed: see the lines above; check the connection to the package registry and run the command again');
}
