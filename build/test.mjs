// npm test: every check of the project, and one closing line that counts them all.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureInstalled } from './install.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
process.chdir(root);
const total = { passed: 0, failed: 0, skipped: 0 };

function add(passed, failed, skipped) {
  total.passed += passed;
  total.failed += failed;
  total.skipped += skipped;
}

/** A check that is one test: it passes or fails as a whole. */
function check(title, words) {
  process.stdout.write(`\n== ${title}\n`);
  const done = spawnSync(process.execPath, words, { stdio: 'inherit' });
  add(done.status === 0 ? 1 : 0, done.status === 0 ? 0 : 1, 0);
}

function skip(title, reason) {
  process.stdout.write(`\n== ${title}: skipped, ${reason}\n`);
  add(0, 0, 1);
}

/** A vitest run; a run that ends without a readable result counts as a failure. */
function vitest(title, config, environment = {}) {
  process.stdout.write(`\n== ${title}\n`);
  const result = join('dist', `${config}.json`);
  mkdirSync('dist', { recursive: true });
  rmSync(result, { force: true });
  const done = spawnSync(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', '--config', config, '--reporter=default', '--reporter=json', `--outputFile.json=${result}`], { stdio: 'inherit', env: { ...process.env, ...environment } });
  if (!existsSync(result)) return add(0, 1, 0);
  const counts = JSON.parse(readFileSync(result, 'utf8'));
  add(counts.numPassedTests, counts.numFailedTests, counts.numPendingTests + counts.numTodoTests);
  if (done.status !== 0 && counts.numFailedTests === 0) add(0, 1, 0);
}

function filesIn(folder, ending) {
  return existsSync(folder) && readdirSync(folder).some((name) => name.endsWith(ending));
}

ensureInstalled(root);
check('Type checks, one per runtime', ['build/typecheck.mjs']);
check('Lint', ['node_modules/eslint/bin/eslint.js', '.']);
const { ensureBundle } = await import('./bundle.mjs');
await ensureBundle(root);
vitest('Unit, published-source, corpus and command tests', 'vitest.config.ts');
if (filesIn('tests/browser', '.browser.ts')) {
  const { findBrowser } = await import('./browser.mjs');
  const browser = findBrowser();
  if (browser.path) {
    const { ensurePage } = await import('./page.mjs');
    await ensurePage(root);
    vitest('Browser tests', 'vitest.browser.config.ts', { CHROMIUM: browser.path });
  } else skip('Browser tests', browser.reason);
}
const { findElectron } = await import('./electron.mjs');
const electron = findElectron(root);
if (electron.path && filesIn('tests/desktop/electron', '.desktop.ts')) vitest('Desktop tests in Electron', 'vitest.desktop.config.ts', { ELECTRON: electron.path });
else skip('Desktop tests in Electron', electron.reason ?? 'none are written');

process.stdout.write(`\n${total.passed} passed, ${total.failed} failed${total.skipped > 0 ? `, ${total.skipped} skipped` : ''}\n`);
process.exit(total.failed === 0 && total.passed > 0 ? 0 : 1);
