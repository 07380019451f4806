// npm start: installs and builds what is missing, then opens the app the best way this machine allows, and says which way and why.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureInstalled } from './install.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
process.chdir(root);
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'];
const SAMPLE = join(root, 'sample-signals', 'haul-rope');
/** How long an opener may take to say that it failed; a browser that was started by it runs on. */
const OPENER_MS = 4000;
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
  const child = spawn(electron, [join(out, 'desktop.mjs'), ...words()], { stdio: 'inherit' });
  for (const signal of SIGNALS) process.on(signal, () => child.kill(signal));
  process.exit(await new Promise((resolve) => child.on('exit', (code) => resolve(code ?? 1))));
}

async function serve(out, display, reason) {
  const child = spawn(process.execPath, [join(out, 'loopback.mjs'), ...words()], { stdio: ['ignore', 'pipe', 'inherit'] });
  let stopping = false;
  for (const signal of SIGNALS) process.on(signal, () => { stopping = true; child.kill(signal); });
  child.on('exit', (code) => process.exit(code ?? 1));
  const address = await firstLine(child.stdout);
  const failure = display ? await openBrowser(address) : 'there is no display for a browser either';
  if (failure === null) {
    say(`Opened Strandbook in the default browser, because ${reason}.`);
    say(`Address, for this computer only: ${address}`);
  } else {
    say(`No window was opened: ${reason}, and ${failure}.`);
    say(`Open this address in a browser on this computer: ${address}`);
    await summariseSample(out);
  }
  if (!stopping) say('Ctrl-C stops it.');
}

/** The app begins on the sample rope unless the user names another folder: npm start -- --open FOLDER. */
function words() {
  const given = process.argv.slice(2);
  return given.includes('--open') ? given : ['--open', SAMPLE, ...given];
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

/** Null where the default browser was started, else why not. */
function openBrowser(address) {
  if (process.platform === 'linux' && spawnSync('which', ['xdg-open'], { stdio: 'ignore' }).status !== 0) return Promise.resolve('no xdg-open was found to start a browser with');
  const [command, given] = process.platform === 'darwin' ? ['open', [address]] : process.platform === 'win32' ? ['cmd', ['/c', 'start', '', address.replace(/&/g, '^&')]] : ['xdg-open', [address]];
  return new Promise((resolve) => {
    const opener = spawn(command, given, { stdio: 'ignore', detached: true });
    const patience = setTimeout(() => resolve(null), OPENER_MS);
    const end = (failure) => { clearTimeout(patience); resolve(failure); };
    opener.on('error', () => end('the default browser could not be started'));
    opener.on('exit', (code) => end(code === 0 ? null : `the default browser could not be started (${command} ended with ${code})`));
    opener.unref();
  });
}

/** Without a display the sample's judgement is printed, so that the first start shows what the program does. */
async function summariseSample(out) {
  const folder = mkdtempSync(join(tmpdir(), 'strandbook-'));
  const file = join(folder, 'assessment.json');
  const run = spawn(process.execPath, [join(out, 'assess.mjs'), SAMPLE, '--json', file], { stdio: 'inherit' });
  const code = await new Promise((resolve) => run.on('exit', resolve));
  if (code === 0) {
    const { rope, summary, inspections } = JSON.parse(readFileSync(file, 'utf8'));
    say(`\nSample rope: ${rope.name}, ${inspections.length} inspections`);
    say(`Advice: ${summary.state}; next inspection by ${summary.next_inspection_by ?? 'cannot be said'}; NOT INSPECTED: ${summary.not_inspected_m.toFixed(1)} m`);
    for (const line of summary.reasons) say(`  - ${line}`);
    say('');
  }
  rmSync(folder, { recursive: true, force: true });
}
