// npm start: installs and builds what is missing, then opens the app the best way this machine allows, and says which way and why.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureInstalled } from './install.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
process.chdir(root);
const say = (text) => process.stdout.write(`${text}\n`);

try {
  ensureInstalled(root);
  const { ensureBundle } = await import('./bundle.mjs');
  const { ensurePage } = await import('./page.mjs');
  const out = await ensureBundle(root);
  await ensurePage(root);
  const display = hasDisplay();
  const { findElectron } = await import('./electron.mjs');
  const electron = findElectron(root);
  if (electron.path && display && existsSync(join(out, 'desktop.mjs'))) await openWindow(electron.path, out);
  else await serve(out, display, electron.reason ?? 'there is no display for a window');
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : error}\n`);
  process.exit(1);
}

function hasDisplay() {
  return process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

async function openWindow(electron, out) {
  say('Opening Strandbook in its own window (Electron).');
  const child = spawn(electron, [join(out, 'desktop.mjs')], { stdio: 'inherit' });
  process.exit(await new Promise((resolve) => child.on('exit', (code) => resolve(code ?? 1))));
}

async function serve(out, display, reason) {
  const child = spawn(process.execPath, [join(out, 'loopback.mjs'), ...process.argv.slice(2)], { stdio: ['ignore', 'pipe', 'inherit'] });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  child.on('exit', (code) => process.exit(code ?? 1));
  const address = await firstLine(child.stdout);
  if (display && openBrowser(address)) {
    say(`Opened Strandbook in the default browser, because ${reason}.`);
    say(`Address: ${address}`);
  } else {
    say(`No window was opened, because ${reason}${display ? ' and no browser could be started' : ', and there is no display for a browser either'}.`);
    say(`Open this address in a browser on this computer: ${address}`);
    await summariseSample(out);
  }
  say('Ctrl-C stops it.');
}

function firstLine(stream) {
  return new Promise((resolve) => {
    let text = '';
    stream.on('data', (part) => {
      text += part;
      if (text.includes('\n')) resolve(text.split('\n')[0]);
    });
  });
}

/** True where an opener was found; the browser itself starts on its own. */
function openBrowser(address) {
  if (process.platform === 'linux' && spawnSync('which', ['xdg-open'], { stdio: 'ignore' }).status !== 0) return false;
  const [command, words] = process.platform === 'darwin' ? ['open', [address]] : process.platform === 'win32' ? ['cmd', ['/c', 'start', '', address.replace(/&/g, '^&')]] : ['xdg-open', [address]];
  spawn(command, words, { stdio: 'ignore', detached: true }).on('error', () => undefined).unref();
  return true;
}

/** Without a display the sample's judgement is printed, so that the first start shows what the program does. */
async function summariseSample(out) {
  const folder = mkdtempSync(join(tmpdir(), 'strandbook-'));
  const file = join(folder, 'assessment.json');
  const run = spawn(process.execPath, [join(out, 'assess.mjs'), join(root, 'sample-signals', 'haul-rope'), '--json', file], { stdio: 'inherit' });
  const code = await new Promise((resolve) => run.on('exit', resolve));
  if (code === 0) {
    const { rope, summary, inspections } = JSON.parse(readFileSync(file, 'utf8'));
    say(`\nSample rope: ${rope.name}, ${inspections.length} inspections`);
    say(`Advice: ${summary.state}; next inspection by ${summary.next_inspection_by ?? 'cannot be said'}; NOT INSPECTED: ${summary.not_inspected_m.toFixed(1)} m`);
    for (const reason of summary.reasons) say(`  - ${reason}`);
    say('');
  }
  rmSync(folder, { recursive: true, force: true });
}
