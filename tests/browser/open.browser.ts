import { cpSync, existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { accessibilityFaults, openRope, ready, startApp } from './support/app.ts';
import type { App } from './support/app.ts';

/** Every way to open a rope, long work with its progress, and stopping it. */
let app: App;
beforeAll(async () => { app = await startApp(['haul-rope', 'hoist-rope', 'parted-rope']); });
afterAll(() => app.end());

/** Drops files or folders of the disk on the window, as a hand would. */
async function drop(page: Page, files: string[]): Promise<void> {
  const protocol = await page.context().newCDPSession(page);
  const data = { items: [], files, dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver'] as const) await protocol.send('Input.dispatchDragEvent', { type, x: 700, y: 500, data });
  await page.getByText('Drop the rope folder').waitFor();
  // A hand moves on before it lets go; only then does the browser know that the window takes the folder.
  await protocol.send('Input.dispatchDragEvent', { type: 'dragOver', x: 702, y: 500, data });
  await protocol.send('Input.dispatchDragEvent', { type: 'drop', x: 700, y: 500, data });
}

test('the chooser in the page opens a folder, which then stands in the recent list', async () => {
  const { page, complaints } = await app.open();
  await page.getByRole('button', { name: 'Open a rope folder…' }).click();
  const chooser = page.getByRole('dialog', { name: 'Open a rope folder' });
  await chooser.getByRole('button', { name: 'hoist-rope' }).click();
  await ready(page);
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toContain('SYNTHETIC');
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  const recent = page.locator('section', { has: page.getByRole('heading', { name: 'Recent ropes' }) });
  await recent.getByRole('button', { name: /^hoist-rope/ }).click();
  await ready(page);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await recent.getByRole('button', { name: 'Take hoist-rope off this list' }).click();
  await expect.poll(() => page.getByRole('heading', { name: 'Recent ropes' }).count()).toBe(0);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('a dropped folder is read in the page, which says that decisions are not kept', async () => {
  const { page, complaints } = await app.open();
  await drop(page, [join(app.home, 'hoist-rope')]);
  await ready(page);
  await page.getByText('Decisions are not kept').waitFor();
  expect(existsSync(join(app.home, 'hoist-rope', 'strandbook-journal.jsonl'))).toBe(false);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('scans, notes and photos dropped without a record are dated from their names, and read once the rope is named', async () => {
  const { page, complaints } = await app.open();
  const files = ['2024-02-27.csv', '2026-02-24.csv'].map((name) => join(app.home, 'hoist-rope', name));
  const beside = { notes: join(app.home, '2026-02-24 visual notes.csv'), photo: join(app.home, '2026-02-24 crown 12.5m.png') };
  writeFileSync(beside.notes, 'position_m,kind,value\n40,broken-wires,2\n');
  cpSync(join(app.home, 'parted-rope', 'photos', '2025-04-311m.png'), beside.photo);
  await drop(page, [...files, beside.notes, beside.photo]);
  const form = page.getByRole('form', { name: 'New record' });
  await form.waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await form.getByLabel('Date of 2024-02-27.csv').inputValue()).toBe('2024-02-27');
  expect(await form.getByLabel('What 2026-02-24 visual notes.csv holds').inputValue()).toBe('notes');
  expect(await form.getByRole('button', { name: 'Read these scans' }).isDisabled()).toBe(true);
  await form.getByLabel('Name of the rope').fill('SYNTHETIC spare rope');
  await form.getByLabel('Diameter, mm').fill('26');
  await form.getByRole('button', { name: 'Read these scans' }).click();
  await ready(page);
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe('SYNTHETIC spare rope');
  expect(await page.locator('.legend-switch').count()).toBe(2);
  await page.locator('.note-mark[aria-label="photo, 12.50 m"] img.photo').waitFor();
  await page.locator('.note-mark[aria-label="broken wires 2, 40.00 m"]').waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('long work shows its stage and share, and Stop ends it with nothing written', async () => {
  const { page, complaints } = await app.open();
  await page.locator('.entry-open', { hasText: 'haul-rope' }).click();
  const bar = page.getByRole('progressbar');
  await bar.waitFor();
  const shares: number[] = [];
  await expect.poll(async () => {
    const share = Number(await bar.getAttribute('aria-valuenow'));
    if (share > (shares.at(-1) ?? -1)) shares.push(share);
    return shares.length;
  }, { timeout: 15_000, interval: 60 }).toBeGreaterThanOrEqual(3);
  expect((await page.locator('.progress-stage').textContent())?.length).toBeGreaterThan(3);
  const asked = Date.now();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.getByRole('heading', { name: 'Open a rope folder' }).waitFor();
  expect(Date.now() - asked).toBeLessThan(3000);
  expect(existsSync(join(app.home, 'haul-rope', 'strandbook-journal.jsonl'))).toBe(false);
  // The same folder opens afterwards: the stop gave its lock back.
  await openRope(page, 'parted-rope');
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('closing a rope gives its folder back', async () => {
  const { page, complaints } = await app.open();
  await openRope(page, 'hoist-rope');
  const lock = join(app.home, 'hoist-rope', '.strandbook-lock');
  expect(existsSync(lock)).toBe(true);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.getByRole('heading', { name: 'Recent ropes' }).waitFor();
  expect(existsSync(lock)).toBe(false);
  expect(complaints).toEqual([]);
  await page.context().close();
});
