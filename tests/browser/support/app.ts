import { cpSync, mkdtempSync, readFileSync, rmSync, existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { startLoopback } from '../../../main/loopback/server.ts';
import type { Loopback } from '../../../main/loopback/server.ts';
import { loopbackSession } from '../../../main/loopback/session.ts';
import { closeAllFolders } from '../../../main/operations/open-folder.ts';

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
export const USER = 'R. Harrow (invented)';
/** The address book of the browser may not be asked for: nothing leaves this computer. */
const FLAGS = ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface App {
  /** A folder of copies of sample ropes; the app takes it for the user's home and for the samples. */
  readonly home: string;
  readonly loopback: Loopback;
  readonly browser: Browser;
  /** A new window on the start screen. */
  open(options?: { readonly dark?: boolean; readonly width?: number; readonly height?: number }): Promise<Watched>;
  end(): Promise<void>;
}

/** A page whose complaints are kept: console errors, exceptions, refused loads, requests to anywhere else. */
export interface Watched {
  readonly page: Page;
  readonly complaints: string[];
}

/** The built page, served by the loopback shell on copies of the named sample ropes, in a browser. */
export async function startApp(samples: readonly string[]): Promise<App> {
  const path = process.env.CHROMIUM;
  if (!path) throw new Error('CHROMIUM must hold the path of a Chrome or Chromium');
  const home = mkdtempSync(join(tmpdir(), 'strandbook-browser-'));
  for (const sample of samples) cpSync(join(ROOT, 'sample-signals', sample), join(home, sample), { recursive: true });
  const own = loopbackSession(ROOT, join(home, '.settings'));
  const session = { ...own, shell: { ...own.shell, home, samplesFolder: home, user: USER } };
  const loopback = await startLoopback(session, join(ROOT, 'dist', 'renderer'), 0);
  const browser = await chromium.launch({ executablePath: path, args: FLAGS });
  return {
    home, loopback, browser,
    open: (options = {}) => openWindow(browser, loopback, options),
    async end() {
      await browser.close();
      await closeAllFolders(session);
      await loopback.close();
      rmSync(home, { recursive: true, force: true });
    },
  };
}

/** The app on a copy of one sample rope, open in one window. */
export async function startOnRope(sample: string): Promise<{ readonly app: App; readonly watched: Watched; readonly page: Page }> {
  const app = await startApp([sample]);
  const watched = await app.open();
  await openRope(watched.page, sample);
  return { app, watched, page: watched.page };
}

async function openWindow(browser: Browser, loopback: Loopback, { dark = false, width = 1440, height = 900 }: { dark?: boolean; width?: number; height?: number }): Promise<Watched> {
  const context = await browser.newContext({ viewport: { width, height }, colorScheme: dark ? 'dark' : 'light', acceptDownloads: true, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  const complaints: string[] = [];
  page.on('console', (message) => { if (message.type() === 'error') complaints.push(`console: ${message.text()}`); });
  page.on('pageerror', (error) => complaints.push(`exception: ${error.message}`));
  page.on('request', (request) => { if (!/^(blob|data):/.test(request.url()) && !request.url().startsWith(loopback.origin)) complaints.push(`request to ${request.url()}`); });
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`));
  });
  await page.goto(loopback.address);
  await page.getByRole('heading', { name: 'Open a rope folder' }).waitFor();
  return { page, complaints };
}

/** Opens a rope of the start screen's lists and waits for its strips. */
export async function openRope(page: Page, name: string): Promise<void> {
  await page.locator('.entry-open', { hasText: name }).first().click();
  await ready(page);
}

/** Waits until no work is under way and a rope is in view. */
export async function ready(page: Page): Promise<void> {
  await page.locator('nav.screens').waitFor();
  await page.locator('.progress').waitFor({ state: 'detached' });
}

export async function goTo(page: Page, screen: string): Promise<void> {
  await page.locator('nav.screens').getByRole('button', { name: screen, exact: true }).click();
  await page.locator('nav.screens [aria-current=page]', { hasText: screen }).waitFor();
}

/** Decisions in the journal file on disk, oldest first. */
export function journalOn(folder: string): Record<string, unknown>[] {
  const file = join(folder, 'strandbook-journal.jsonl');
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8').split('\n').filter(Boolean).map((line) => JSON.parse(line) as Record<string, unknown>);
}

/** What axe-core finds wrong with the page, one line each (rules of WCAG 2.0 to 2.2, levels A and AA, and its best practices). */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  // By the debugging protocol, so that the page's own policy stays as strict as it is.
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }> } }).axe.run();
    return violations.flatMap((violation) => violation.nodes.map((node) => `${violation.id}: ${node.html.slice(0, 160)} ${node.failureSummary.replace(/\s+/g, ' ').slice(0, 240)}`));
  });
}

/** Rope positions at both ends of the strips in view, metres. */
export async function lengthInView(page: Page): Promise<{ from: number; to: number }> {
  const field = page.locator('.field').first();
  return { from: Number(await field.getAttribute('data-from')), to: Number(await field.getAttribute('data-to')) };
}
