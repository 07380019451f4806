// Finds a Chromium for the browser tests, installing Debian's where that is possible.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'microsoft-edge'];
const PLACES = ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', '/Applications/Chromium.app/Contents/MacOS/Chromium', 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe', 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe'];

/** { path } of a browser, or { reason } why there is none. */
export function findBrowser() {
  const found = lookUp();
  if (found) return { path: found };
  if (process.platform === 'linux' && process.getuid?.() === 0 && works('apt-get', ['--version'])) {
    process.stderr.write('Installing a browser for the browser tests (apt-get install chromium) …\n');
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'ignore' });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    const installed = lookUp();
    if (installed) return { path: installed };
    return { reason: 'no Chrome or Chromium found, and apt could not install one' };
  }
  return { reason: 'no Chrome or Chromium found: install one, or set CHROMIUM to its path' };
}

function lookUp() {
  if (process.env.CHROMIUM && existsSync(process.env.CHROMIUM)) return process.env.CHROMIUM;
  const finder = process.platform === 'win32' ? 'where' : 'which';
  for (const name of NAMES) {
    const answer = spawnSync(finder, [name], { encoding: 'utf8' });
    const path = answer.status === 0 ? answer.stdout.split('\n')[0].trim() : '';
    if (path) return path;
  }
  return PLACES.find((path) => existsSync(path)) ?? null;
}

function works(command, words) {
  return spawnSync(command, words, { stdio: 'ignore' }).status === 0;
}
