import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { GUTTER_LEFT, GUTTER_RIGHT } from '../../renderer/strip/strip-scale.ts';
import { goTo, lengthInView, startOnRope } from './support/app.ts';
import type { App, Watched } from './support/app.ts';

/** The strips of one rope: what they show, and every way to move over them. */
let app: App;
let watched: Watched;
let page: Page;
beforeAll(async () => {
  ({ app, watched, page } = await startOnRope('parted-rope'));
});
afterAll(() => app.end());

const field = () => page.locator('.field').first();
const span = async () => { const { from, to } = await lengthInView(page); return to - from; };

test('the strips show every inspection, the landmarks, and the lengths never inspected, hatched and named', async () => {
  await page.getByRole('img', { name: /^Loss of metallic area in percent by rope position, 3 inspections/ }).waitFor();
  await expect.poll(() => page.locator('.plot path.js-line').count()).toBeGreaterThanOrEqual(6);
  expect(await page.locator('.field-under .hatch').count()).toBeGreaterThanOrEqual(1);
  await page.locator('.hatch-label', { hasText: 'NOT INSPECTED' }).first().waitFor();
  await page.locator('.landmark', { hasText: 'socket of the upper car' }).waitFor();
  const [bar] = await page.locator('.field-under .hatch').evaluateAll((all) => all.map((each) => getComputedStyle(each).backgroundImage));
  expect(bar).toContain('repeating-linear-gradient');
});

test('keys zoom, move, go back and show the whole rope', async () => {
  const whole = await span();
  await page.keyboard.press('+');
  expect(await span()).toBeCloseTo(whole / 2, 3);
  const before = await lengthInView(page);
  await page.keyboard.press('ArrowRight');
  const after = await lengthInView(page);
  expect(after.from).toBeGreaterThan(before.from);
  expect(after.to - after.from).toBeCloseTo(whole / 2, 3);
  await page.keyboard.press('ArrowLeft');
  expect((await lengthInView(page)).from).toBeCloseTo(before.from, 3);
  await page.keyboard.press('-');
  expect(await span()).toBeCloseTo(whole, 3);
});

test('zooming ends at the length of one broken wire, with single samples drawn', async () => {
  for (let i = 0; i < 14; i += 1) await page.keyboard.press('+');
  expect(await span()).toBeCloseTo(0.1, 3);
  await expect.poll(() => page.locator('.plot .points path').count()).toBeGreaterThan(0);
  await page.keyboard.press('0');
  expect(await span()).toBeGreaterThan(300);
});

test('the wheel zooms at the pointer, a drag moves the rope under it', async () => {
  const bounds = (await field().boundingBox())!;
  await page.mouse.move(bounds.x + bounds.width / 2, bounds.y + 120);
  await page.mouse.wheel(0, -400);
  await expect.poll(span).toBeLessThan(260);
  const before = await lengthInView(page);
  await page.mouse.down();
  await page.mouse.move(bounds.x + bounds.width / 2 - 150, bounds.y + 120, { steps: 4 });
  await page.mouse.up();
  const after = await lengthInView(page);
  const metresPerPixel = (before.to - before.from) / (bounds.width - GUTTER_LEFT - GUTTER_RIGHT);
  expect(after.from - before.from).toBeCloseTo(150 * metresPerPixel, 0);
  await page.keyboard.press('0');
});

test('the cursor reads the position from both ends and every inspection there, and says NOT INSPECTED where one saw nothing', async () => {
  const bounds = (await field().boundingBox())!;
  await page.mouse.click(bounds.x + (bounds.width + GUTTER_LEFT - GUTTER_RIGHT) / 2, bounds.y + 120);
  const reading = page.locator('.reading');
  await expect.poll(() => reading.locator('td', { hasText: '…' }).count()).toBe(0);
  const [fromA, fromB] = (await reading.locator('.reading-position b').allTextContents()).map((text) => parseFloat(text));
  expect(fromA).toBeGreaterThan(150);
  expect(fromA + fromB).toBeCloseTo(320, 2);
  expect(await reading.locator('.reading-values td').count()).toBe(9);
  const before = fromA;
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(async () => parseFloat((await reading.locator('.reading-position b').first().textContent())!)).toBeGreaterThan(before);
  await page.keyboard.press('g');
  const dialog = page.getByRole('dialog', { name: 'Go to a position' });
  await dialog.getByLabel('Position, m').fill('316');
  await dialog.getByRole('button', { name: 'Go there' }).click();
  await expect.poll(() => reading.locator('.not-inspected-word').count()).toBe(6);
  await page.keyboard.press('0');
});

test('the places list is in order of urgency, and choosing a place moves the strips to it', async () => {
  const rows = page.locator('.beside .place-row');
  const states = await rows.locator('.place-state').allTextContents();
  const rank = states.map((text) => ['growing', 'new', 'NOT INSPECTED', 'stable', 'not found', 'receding'].indexOf(text.trim()));
  expect(Math.min(...rank)).toBeGreaterThanOrEqual(0);
  const unreached = await rows.evaluateAll((all) => all.findIndex((row) => row.querySelector('.verdict') === null));
  expect([...rank.slice(unreached)]).toEqual([...rank.slice(unreached)].sort((a, b) => a - b));
  for (const index of [0, 2]) {
    const where = (await rows.nth(index).locator('.place-where').textContent())!;
    await rows.nth(index).click();
    const [from, to = from] = where.split('–').map((text) => parseFloat(text));
    await expect.poll(async () => { const view = await lengthInView(page); return view.from <= from && view.to >= to && view.to - view.from < 60; }).toBe(true);
    expect(await rows.nth(index).getAttribute('aria-current')).toBe('true');
  }
  await page.keyboard.press('Backspace');
  await page.keyboard.press('0');
});

test('notes carry the thumbnail of their photo and open with it in full', async () => {
  const note = page.locator('.note-mark').first();
  await note.locator('img.photo').waitFor();
  expect(await note.locator('img.photo').evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth > 10 && image.src.startsWith('blob:'))).toBe(true);
  await note.click();
  const dialog = page.getByRole('dialog');
  await dialog.locator('img.photo').first().waitFor();
  await dialog.getByText('rust runs out of the guide tube; tube not opened').waitFor();
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'detached' });
});

test('a section is looked up inspection by inspection; where no head reached it reads NOT INSPECTED', async () => {
  await goTo(page, 'Section');
  await page.getByLabel('Rope position, m').fill('317');
  await page.getByLabel('Half width, m').fill('1');
  const answer = page.getByRole('region', { name: 'History of this section' });
  await answer.locator('p.finding-not-inspected', { hasText: 'NOT INSPECTED' }).waitFor();
  expect(await answer.getByText('not "no defect"').count()).toBe(1);
  await page.getByLabel('Rope position, m').fill('311.4');
  await answer.locator('p.finding-indicated').waitFor();
  await answer.locator('img.photo').first().waitFor();
  await page.getByLabel('Inspections up to').fill('2022-12-31');
  await expect.poll(() => answer.getByRole('row').count()).toBe(2);
});

test('nothing was complained of', () => { expect(watched.complaints).toEqual([]); });
