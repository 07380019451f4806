import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessibilityFaults, openRope, startApp } from './support/app.ts';
import type { App } from './support/app.ts';

/** Every screen and sheet held against axe-core in light and dark, and reached without a mouse. */
let app: App;
beforeAll(async () => { app = await startApp(['parted-rope', 'hoist-rope']); });
afterAll(() => app.end());

const SCREENS = ['Rope', 'Places', 'Criteria', 'Life', 'Compare', 'Section', 'Intake', 'Report'];

test.each([['light', 1440, 900], ['dark', 1024, 700]] as const)('no screen has an accessibility fault in %s at %i by %i', async (mode, width, height) => {
  const { page, complaints } = await app.open({ dark: mode === 'dark', width, height });
  const faults: Record<string, string[]> = { Start: await accessibilityFaults(page) };
  await openRope(page, 'parted-rope');
  expect(await page.evaluate(() => document.documentElement.dataset.theme)).toBe(mode);
  for (const [index, screen] of SCREENS.entries()) {
    await page.keyboard.press(String(index + 1));
    await page.locator('nav.screens [aria-current=page]', { hasText: screen }).waitFor();
    if (screen === 'Places') await page.keyboard.press('n');
    if (screen === 'Report') await page.locator('article.report').waitFor();
    await page.waitForTimeout(250);
    faults[screen] = await accessibilityFaults(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth), `${screen} fits the window`).toBe(true);
  }
  await page.keyboard.press('1');
  for (const [key, name] of [['c', 'Summary and cautions'], ['m', 'Add a visual note'], ['?', 'Keys'], ['Control+k', 'Find a command'], ['g', 'Go to a position']] as const) {
    await page.keyboard.press(key);
    await page.getByRole('dialog', { name }).waitFor();
    faults[name] = await accessibilityFaults(page);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }
  expect(Object.fromEntries(Object.entries(faults).filter(([, found]) => found.length > 0))).toEqual({});
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('a rope is opened, looked over, reviewed and reported on with the keyboard alone', async () => {
  const { page, complaints } = await app.open();
  for (let i = 0; i < 30 && !(await page.evaluate(() => document.activeElement?.textContent?.startsWith('hoist-rope'))); i += 1) await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.locator('nav.screens').waitFor();
  await page.keyboard.press('n');
  await page.locator('.place-row[aria-current=true]').waitFor();
  await page.keyboard.press('Shift+ArrowRight');
  await page.locator('.reading-position').waitFor();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('rule sets');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'Rule sets for this rope' }).waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await page.keyboard.press('8');
  await page.locator('article.report').waitFor();
  // Focus is always somewhere that can be seen.
  await page.keyboard.press('Tab');
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle);
  expect(outline).not.toBe('none');
  expect(complaints).toEqual([]);
  await page.context().close();
});
