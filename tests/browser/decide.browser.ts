import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { USER, goTo, journalOn, ready, startOnRope } from './support/app.ts';
import type { App, Watched } from './support/app.ts';

/** Every decision goes to the journal beside the record, with who and when; taking back adds and never erases. */
let app: App;
let watched: Watched;
let page: Page;
beforeAll(async () => {
  ({ app, watched, page } = await startOnRope('parted-rope'));
});
afterAll(() => app.end());

const journal = () => journalOn(join(app.home, 'parted-rope'));
const newest = () => journal().at(-1);
const dialog = () => page.getByRole('dialog');

async function kept(kind: string, count: number): Promise<void> {
  await expect.poll(() => journal().filter((entry) => entry.kind === kind).length).toBe(count);
  await ready(page);
}

test('a place is accepted, set aside with a reason and relabelled by keyboard alone', async () => {
  await goTo(page, 'Places');
  await page.keyboard.press('n');
  await page.keyboard.press('a');
  await dialog().getByLabel('Remark (may be left empty)').fill('seen on both runs');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await kept('place-review', 1);
  expect(newest()).toMatchObject({ kind: 'place-review', verdict: 'accepted', reason: 'seen on both runs', who: USER });
  expect(Math.abs(Date.parse(String(newest()?.at)) - Date.now())).toBeLessThan(60_000);
  await page.locator('.place-review-line', { hasText: USER }).waitFor();

  await page.keyboard.press('n');
  await page.keyboard.press('s');
  expect(await dialog().getByRole('button', { name: 'Set aside', exact: true }).isDisabled()).toBe(true);
  await dialog().getByLabel('Reason').fill('marker tape on the rope');
  await dialog().getByRole('button', { name: 'Set aside', exact: true }).click();
  await kept('place-review', 2);
  expect(newest()).toMatchObject({ verdict: 'set-aside', reason: 'marker tape on the rope' });

  await page.keyboard.press('l');
  await dialog().getByLabel('New label').fill('clamp mark');
  await page.keyboard.press('Enter');
  await kept('place-review', 3);
  expect(newest()).toMatchObject({ verdict: 'relabelled', label: 'clamp mark' });
  await page.locator('.place-row[aria-current=true]', { hasText: 'clamp mark' }).waitFor();
  expect(await page.locator('.list-head b').textContent()).toMatch(/^2 of \d+$/);
});

test('taking back adds the former decision again and keeps both', async () => {
  await page.keyboard.press('Control+z');
  await kept('place-review', 4);
  expect(newest()).toMatchObject({ verdict: 'set-aside', reason: 'marker tape on the rope' });
});

test('a tie point is pinned, moved and removed, and the map changes at once', async () => {
  await goTo(page, 'Compare');
  await page.getByRole('tab', { name: 'Rope map' }).click();
  const ties = page.getByRole('region', { name: 'Tie points' });
  await ties.getByLabel('Feature now at, m').fill('100');
  await ties.getByLabel('belongs at, m').fill('100.4');
  await ties.getByRole('button', { name: 'Pin', exact: true }).click();
  await kept('tie-point', 1);
  expect(newest()).toMatchObject({ kind: 'tie-point', inspection: '2025-04-15', rope_m: 100.4, who: USER });
  await ties.locator('td', { hasText: USER }).waitFor();
  await ties.getByLabel('Feature now at, m').fill('100.4');
  await expect.poll(() => ties.locator('.pin-form small').textContent()).toContain('now 100.40 m on the rope');
  await ties.getByLabel(/^Rope position of the tie point/).fill('100.2');
  await ties.getByRole('button', { name: 'Move', exact: true }).click();
  await kept('tie-point', 2);
  expect(newest()).toMatchObject({ kind: 'tie-point', rope_m: 100.2 });
  await ties.getByRole('button', { name: 'Remove', exact: true }).click();
  await kept('tie-point-removed', 1);
  await ties.getByText('None by hand').waitFor();
});

test('a tie point is pinned by dragging on a strip', async () => {
  await page.getByRole('button', { name: 'Pin by dragging' }).click();
  const bounds = (await page.locator('.field').first().boundingBox())!;
  await page.mouse.move(bounds.x + 500, bounds.y + 100);
  await page.mouse.down();
  await page.mouse.move(bounds.x + 506, bounds.y + 100, { steps: 3 });
  await page.mouse.up();
  await kept('tie-point', 3);
  await page.getByRole('button', { name: 'Stop pinning' }).click();
  await page.keyboard.press('Control+z');
  await kept('tie-point-removed', 2);
});

test('a visual note entered by hand is judged and stands on the rope', async () => {
  await goTo(page, 'Rope');
  await page.keyboard.press('0');
  await page.keyboard.press('m');
  await dialog().getByLabel('Kind').selectOption('diameter');
  await dialog().getByLabel('Position, m').fill('150');
  await dialog().getByLabel('Value, mm').fill('27,4');
  await dialog().getByLabel('At right angles to it, mm').fill('27.6');
  await dialog().getByLabel('Remark').fill('two readings at right angles');
  await dialog().getByLabel(/^Photo/).setInputFiles(join(app.home, 'parted-rope', 'photos', '2025-04-311m.png'));
  await dialog().getByRole('button', { name: 'Add the note' }).click();
  await kept('visual-note', 2);
  expect(newest()).toMatchObject({ kind: 'visual-note', inspection: '2025-04-15', note: { from: 150, to: 150, kind: 'diameter', value: 27.6, unit: 'mm', photo: 'added/2025-04-311m.png' }, who: USER });
  await page.locator('.note-mark[aria-label="2 visual notes, 150.00 m"] img.photo').waitFor();
  expect(readFileSync(join(app.home, 'parted-rope', 'added', '2025-04-311m.png'))).toEqual(readFileSync(join(app.home, 'parted-rope', 'photos', '2025-04-311m.png')));
});

test('columns chosen by hand are kept, and a named recipe reads the next file with the same header without a question', async () => {
  await goTo(page, 'Intake');
  const form = page.getByRole('region', { name: /^Columns of/ });
  await form.getByLabel('Name of this recipe').fill('green head');
  const also = form.getByRole('checkbox');
  if (await also.count() > 0) await also.uncheck();
  await form.getByRole('button', { name: 'Use these columns' }).click();
  await kept('column-choice', 1);
  expect(newest()).toMatchObject({ kind: 'column-choice', file: 'scans/2022-04-26.csv', recipe: 'green head', who: USER });
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.locator('.entry-open', { hasText: 'parted-rope' }).first().click();
  await ready(page);
  await goTo(page, 'Intake');
  await expect.poll(() => journal().filter((entry) => entry.kind === 'column-choice').length).toBeGreaterThan(1);
  expect(journal().filter((entry) => entry.kind === 'column-choice').slice(1).every((entry) => entry.recipe === 'green head' && entry.file !== 'scans/2022-04-26.csv')).toBe(true);
});

test('nothing was complained of', () => { expect(watched.complaints).toEqual([]); });
