import { cpSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startApp, openRope, ready } from './support/app.ts';
import type { App } from './support/app.ts';

/** What people really hand in: each fault is one line with its file, what is wrong and what to do, and nothing is written. */
let app: App;
beforeAll(async () => {
  app = await startApp(['parted-rope']);
  const copy = (name: string, spoil: (folder: string) => void) => {
    const folder = join(app.home, name);
    cpSync(join(app.home, 'parted-rope'), folder, { recursive: true });
    spoil(folder);
  };
  copy('broken-record', (folder) => writeFileSync(join(folder, 'record.json'), readFileSync(join(folder, 'record.json'), 'utf8').replace('"diameter_mm": 28,', '"diameter_mm": 28')));
  copy('wrong-field', (folder) => writeFileSync(join(folder, 'record.json'), readFileSync(join(folder, 'record.json'), 'utf8').replace('"diameter_mm": 28', '"diameter_mm": "thick"')));
  copy('missing-scan', (folder) => rmSync(join(folder, 'scans', '2023-10-10.csv')));
  copy('binary-scan', (folder) => writeFileSync(join(folder, 'scans', '2023-10-10.csv'), Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 7919) % 256))));
  copy('photo-no-image', (folder) => writeFileSync(join(folder, 'photos', '2025-04-311m.png'), 'this is a letter and no photo'));
});
afterAll(() => app.end());

async function refused(name: string): Promise<{ problem: string; complaints: string[] }> {
  const { page, complaints } = await app.open();
  const before = readdirSync(join(app.home, name)).sort();
  await page.locator('.entry-open', { hasText: name }).click();
  const line = page.locator('.trouble li').first();
  await line.waitFor();
  const problem = (await line.textContent())!;
  await page.getByRole('heading', { name: `${name} could not be assessed yet` }).waitFor();
  expect(readdirSync(join(app.home, name)).filter((each) => each !== '.strandbook-lock').sort()).toEqual(before);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.getByRole('heading', { name: 'Open a rope folder' }).waitFor();
  await page.context().close();
  return { problem, complaints };
}

test.each([
  ['broken-record', /record\.json, line 12/, /comma|JSON/i],
  ['wrong-field', /record\.json/, /diameter_mm/],
  ['missing-scan', /record\.json|scans\/2023-10-10\.csv/, /2023-10-10\.csv|missing|not in the folder/],
  ['binary-scan', /scans\/2023-10-10\.csv/, /binary|text/],
])('%s: the file is named with what is wrong and what to do', async (name, file, what) => {
  const { problem, complaints } = await refused(name);
  expect(problem).toMatch(file);
  expect(problem).toMatch(what);
  expect(problem.length).toBeGreaterThan(30);
  expect(complaints).toEqual([]);
});

test('a photo that is no image is shown as just that, and the rope is judged all the same', async () => {
  const { page, complaints } = await app.open();
  await openRope(page, 'photo-no-image');
  await page.locator('.note-mark [aria-label*="this file is not an image"]').first().waitFor();
  await page.locator('.note-mark').first().click();
  await page.getByRole('dialog').getByText('this file is not an image').waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('a folder put right is read again without being opened anew', async () => {
  const { page } = await app.open();
  await page.locator('.entry-open', { hasText: 'broken-record' }).first().click();
  await page.getByRole('heading', { name: 'broken-record could not be assessed yet' }).waitFor();
  cpSync(join(app.home, 'parted-rope', 'record.json'), join(app.home, 'broken-record', 'record.json'));
  await page.getByRole('button', { name: 'Read the folder again' }).click();
  await ready(page);
  await page.context().close();
});
