import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron as electron } from 'playwright-core';
import type { ElectronApplication, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureBundle } from '../../../build/bundle.mjs';
import { ROOT, goTo, lengthInView, ready } from '../../browser/support/app.ts';

/** The real desktop shell: its window, its walls, and one rope opened through it. Runs only where Electron's binary is. */
let home: string;
let app: ElectronApplication;
let page: Page;
const complaints: string[] = [];
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'strandbook-desktop-'));
  cpSync(join(ROOT, 'sample-signals', 'parted-rope'), join(home, 'parted-rope'), { recursive: true });
  const bundle = await ensureBundle(ROOT);
  // As root, which tests in containers run as, the outer sandbox cannot start; the window's own sandbox stays as it is.
  const flags = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  app = await electron.launch({ executablePath: process.env.ELECTRON, args: [...flags, join(bundle, 'desktop.mjs'), `--user-data-dir=${join(home, 'settings')}`, '--open', join(home, 'parted-rope')] });
  page = await app.firstWindow();
  page.on('console', (message) => { if (message.type() === 'error') complaints.push(message.text()); });
  page.on('pageerror', (error) => complaints.push(error.message));
});
afterAll(async () => {
  await app?.close();
  rmSync(home, { recursive: true, force: true });
});

test('the page comes by our own scheme and has neither Node nor more than the bridge', async () => {
  expect(page.url()).toBe('strandbook://app/');
  expect(await page.evaluate(() => ['require', 'process', 'module', 'Buffer'].filter((name) => name in window))).toEqual([]);
  expect(await page.evaluate(() => Object.keys((window as unknown as { strandbook: object }).strandbook).sort())).toEqual(['call', 'folderOfDrop']);
});

test('a rope opens by its stream of bytes, is drawn, and zooms', async () => {
  await ready(page);
  await expect.poll(() => page.locator('.plot path.js-line').count()).toBeGreaterThanOrEqual(6);
  const before = await lengthInView(page);
  await page.keyboard.press('+');
  const after = await lengthInView(page);
  expect(after.to - after.from).toBeCloseTo((before.to - before.from) / 2, 3);
  await goTo(page, 'Report');
  await page.locator('article.report').waitFor();
});

test('the window leaves for no other address and opens no other window', async () => {
  await page.evaluate(() => { window.open('https://example.org/'); });
  expect(app.windows()).toHaveLength(1);
  await page.evaluate(() => { location.href = 'https://example.org/'; }).catch(() => undefined);
  await page.waitForTimeout(300);
  expect(page.url()).toBe('strandbook://app/');
  expect(await page.evaluate(() => fetch('https://example.org/').then(() => 'reached', () => 'refused'))).toBe('refused');
});

test('nothing was complained of but what the policy refused', () => {
  expect(complaints.filter((each) => !/example\.org/.test(each))).toEqual([]);
});
