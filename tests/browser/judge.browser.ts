import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { USER, goTo, journalOn, lengthInView, ready, startOnRope } from './support/app.ts';
import type { App, Watched } from './support/app.ts';

/** What the app says of a rope: criteria, remaining life, comparison, report; and what a competent person may change about it. */
let app: App;
let watched: Watched;
let page: Page;
beforeAll(async () => {
  ({ app, watched, page } = await startOnRope('parted-rope'));
});
afterAll(() => app.end());

const newest = () => journalOn(join(app.home, 'parted-rope')).at(-1);
const dialog = () => page.getByRole('dialog');

test('the criteria table gives value, limit, comparator, share, clause, source and worst place, the nearest to its limit first', async () => {
  await goTo(page, 'Criteria');
  const rows = page.locator('.criteria-full tbody tr');
  const shares: number[] = [];
  for (const row of await rows.all()) {
    const cells = await row.locator('td').allTextContents();
    expect(cells[0]).toMatch(/\d.* (%|wires|mm)/);
    expect(cells[1]).toMatch(/^(≥|>|≤|<)(at or above|more than|at or below|less than) [\d.]+ /);
    const [, value, limit] = [null, parseFloat(cells[0].replace('−', '-')), parseFloat(/[\d.]+/.exec(cells[1])![0])];
    const share = parseFloat(cells[2]);
    shares.push(share);
    // Shown figures are rounded, and so is the share.
    expect(Math.abs(share - (100 * value) / limit)).toBeLessThan(2.5);
    expect(cells[4]).toMatch(/published|from memory|common practice|derived|disputed/);
    expect(cells[5]).toMatch(/ m$/);
  }
  expect(shares.length).toBeGreaterThanOrEqual(3);
  expect(shares[0]).toBe(Math.max(...shares));
  await page.getByText('Not yet confirmed by a competent person for this rope.').waitFor();
});

test('choosing a clause moves the strips to its worst place and marks it on the share of limit', async () => {
  const row = page.locator('.criteria-full tbody tr').first();
  await row.getByRole('button').click();
  const [from, to = from] = (await row.locator('td').last().textContent())!.split('–').map(parseFloat);
  const view = await lengthInView(page);
  expect(view.from).toBeLessThanOrEqual(from);
  expect(view.to).toBeGreaterThanOrEqual(to);
  const [mark, field] = [(await page.locator('.governing').boundingBox())!, (await page.locator('.criteria-strip .strip-body').first().boundingBox())!];
  const at = view.from + ((mark.x + mark.width / 2 - field.x) / field.width) * (view.to - view.from);
  expect(Math.abs(at - (from + to) / 2)).toBeLessThan(0.05 * (view.to - view.from));
});

test('a copy of a rule set with another limit is made, confirmed with a reason, and marked as changed', async () => {
  await page.getByRole('button', { name: 'Confirm or change rule sets' }).click();
  await dialog().getByRole('button', { name: /^Change a copy of Ropeway and funicular ropes: reduction of metallic area \(Italian/ }).click();
  await dialog().getByLabel('Name of the copy').fill('House limits');
  await dialog().getByLabel('Limit of area 6d, %').fill('5');
  expect(await dialog().getByRole('button', { name: 'Keep the copy' }).isDisabled()).toBe(true);
  await dialog().getByLabel('Why it is changed').fill('stricter after an incident');
  await dialog().getByRole('button', { name: 'Keep the copy' }).click();
  await dialog().getByText('changed: area-6d').waitFor();
  expect(newest()).toMatchObject({ kind: 'rule-set', who: USER, set: { id: 'own-house-limits', changed: { from: 'ropeway-area-italy-2016', clauses: ['area-6d'] } } });
  expect(await dialog().getByRole('button', { name: 'Confirm these rule sets' }).isDisabled()).toBe(true);
  await dialog().getByLabel('Reason').fill('haul rope of a funicular');
  await dialog().getByRole('button', { name: 'Confirm these rule sets' }).click();
  await page.getByText(`Confirmed by ${USER}`).waitFor();
  await ready(page);
  const row = page.locator('.criteria-full tbody tr', { hasText: 'own-house-limits' }).filter({ hasText: 'area 6d' });
  await row.locator('td', { hasText: /≥.*\b5 %/ }).waitFor();
  await row.getByText('your own').waitFor();
  await page.getByText('a copy of ropeway-area-italy-2016 changed by the user (area-6d): stricter after an incident').waitFor();
});

test('the life chart has points, limit and band; the chance before a picked date rises with it', async () => {
  await goTo(page, 'Life');
  const dated = page.locator('.life-list tbody tr').filter({ hasNotText: /reached|no date|not before/ }).first();
  await dated.getByRole('button').click();
  const chart = page.locator('.life-detail .plot');
  await expect.poll(() => chart.getAttribute('aria-label')).toMatch(/limit [\d.]+ .*as likely as not by/);
  await expect.poll(() => chart.locator('.points path').count()).toBeGreaterThanOrEqual(2);
  expect(await chart.locator('.js-fill').count()).toBeGreaterThan(0);
  expect(await chart.locator('.annotation-text').allTextContents()).toContainEqual(expect.stringMatching(/^limit/));
  const chance = page.locator('.chance output');
  const before = async (date: string) => {
    await page.getByLabel('Chance that the limit is reached before').fill(date);
    await page.waitForTimeout(50);
    const text = (await chance.textContent())!;
    return text.startsWith('less than') ? 0 : text.startsWith('more than') ? 100 : parseFloat(text);
  };
  const [soon, later, far] = [await before('2025-04-16'), await before('2027-01-01'), await before('2034-01-01')];
  expect(soon).toBeLessThanOrEqual(later);
  expect(later).toBeLessThanOrEqual(far);
  expect(far).toBeGreaterThan(soon);
});

test('the share of the time to the low bound is seen and changed, and kept', async () => {
  const share = page.getByLabel(/^Inspect again after this share/);
  expect(await share.inputValue()).toBe('0.50');
  await share.fill('0.25');
  await page.getByRole('button', { name: 'Use', exact: true }).click();
  await expect.poll(newest).toMatchObject({ kind: 'parameters', values: { nextInspectionShare: 0.25 }, who: USER });
  await ready(page);
  await expect.poll(() => page.getByLabel(/^Inspect again after this share/).inputValue()).toBe('0.25');
});

test('parameters of the analysis are shown with their reasons, changed, and stand in the assessment', async () => {
  await page.keyboard.press('Control+k');
  await page.keyboard.type('parameters');
  await page.keyboard.press('Enter');
  await dialog().getByLabel('Smallest zone loss').fill('0.8');
  await dialog().getByRole('button', { name: 'Use these and analyse again' }).click();
  await expect.poll(newest).toMatchObject({ kind: 'parameters', values: { nextInspectionShare: 0.25, smallestZoneLoss: 0.8 } });
  await ready(page);
  await goTo(page, 'Report');
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save assessment.json' }).click()]);
  const assessment = JSON.parse(readFileSync(await download.path(), 'utf8')) as { inspections: { parameters: Record<string, number> }[] };
  expect(assessment.inspections[0].parameters.smallestZoneLoss).toBe(0.8);
});

test('the report says what the screens say, has room for signatures, and is saved as one file that runs nothing', async () => {
  const report = page.locator('article.report');
  await report.waitFor();
  await report.getByText('SYNTHETIC DATA').first().waitFor();
  expect(await report.textContent()).toMatch(/NOT INSPECTED/);
  expect(await report.locator('.signature tr').count()).toBeGreaterThanOrEqual(1);
  expect(await report.locator('figure svg').count()).toBeGreaterThanOrEqual(1);
  // What is wider than the page is cut off by a printer.
  expect(await report.evaluate((page) => [...page.querySelectorAll('table')].filter((table) => table.getBoundingClientRect().right > page.getBoundingClientRect().right - parseFloat(getComputedStyle(page).paddingRight) + 1).map((table) => table.caption?.textContent))).toEqual([]);
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as one HTML file' }).click()]);
  const html = readFileSync(await download.path(), 'utf8');
  expect(html).toMatch(/^<!doctype html>/);
  expect(html).toContain("default-src 'none'");
  expect(html).not.toMatch(/<script|<link|src=|javascript:|https?:\/\/(?!www\.w3\.org)/);
  expect(html).toContain('House limits');
});

test('two inspections are compared: both drawn, the difference with its noise band, the map with its bound, places with their series', async () => {
  await goTo(page, 'Compare');
  await page.keyboard.press('0');
  await page.getByRole('group', { name: 'What is compared' }).locator('select').first().selectOption('2022-04-26');
  await page.getByRole('img', { name: /Loss of metallic area on 26 Apr 2022 and 15 Apr 2025/ }).waitFor();
  const difference = page.getByRole('img', { name: /^Later minus earlier loss averaged over 0.5 m; noise band plus and minus [\d.]+ percent/ });
  await expect.poll(() => difference.locator('.js-line').count()).toBeGreaterThan(0);
  expect(await difference.locator('.js-fill').count()).toBeGreaterThan(0);
  const map = page.getByRole('img', { name: /^Local shift of the map of 15 Apr 2025 with its 95 percent band/ });
  await expect.poll(() => map.locator('.js-fill').count()).toBeGreaterThan(0);
  const rows = page.locator('.beside .place-row');
  expect(await rows.locator('svg.sparkline').count()).toBe(await rows.count());
  await page.getByRole('tab', { name: 'Rope map' }).click();
  await page.getByText('95 % bound').waitFor();
});

test('nothing was complained of', () => { expect(watched.complaints).toEqual([]); });
