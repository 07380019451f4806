import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { withCameraData } from '../support/exif-jpeg.ts';
import type { CameraData } from '../support/exif-jpeg.ts';
import { TIMED_ROPE } from '../support/timed-rope.ts';
import { accessibilityFaults, goTo, journalOn, openRope, ready, startApp } from './support/app.ts';
import type { App } from './support/app.ts';

/** Photos that no note names: placed by name and time, by hand, and by the camera's clock; shown upright. */
let app: App;
let page: Page;
let complaints: string[];
const file = (name: string) => join(app.home, 'timed-rope', name);
const journal = () => journalOn(join(app.home, 'timed-rope'));
const row = (name: string) => page.locator('.loose-photo', { hasText: name });

beforeAll(async () => {
  app = await startApp([]);
  const { page: painter } = await app.open();
  // A drawing that is wider than high: red on its left half, blue on its right.
  const drawn = await painter.evaluate(async () => {
    const canvas = new OffscreenCanvas(240, 120);
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#c02020';
    pen.fillRect(0, 0, 120, 120);
    pen.fillStyle = '#2020c0';
    pen.fillRect(120, 0, 120, 120);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 })).arrayBuffer())];
  });
  const photo = (data: CameraData) => withCameraData(Uint8Array.from(drawn), { latitude: 47, ...data });
  const files = {
    ...TIMED_ROPE, 'photos/noted 99m.jpg': photo({}), 'photos/2024-09-01 crown 20.5m.jpg': photo({ orientation: 6 }), 'photos/DSC2.jpg': photo({ taken: '2024:09:01 10:00:40' }),
    'photos/DSC3.jpg': photo({ taken: '2024:09:01 11:00:40' }), 'photos/letter.jpg': 'this is a letter and no photo', '../DSC9.jpg': photo({}),
  };
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(file(name)), { recursive: true });
    writeFileSync(file(name), content);
  }
  await painter.context().close();
  ({ page, complaints } = await app.open());
  await openRope(page, 'timed-rope');
});
afterAll(() => app.end());

test('those with a place stand with their thumbnails on the rope, upright', async () => {
  await page.locator('.note-mark img.photo').nth(2).waitFor();
  expect(await page.locator('.note-mark').count()).toBe(3);
  const mark = page.locator('.note-mark[aria-label^="photo"][aria-label$="20.50 m"]');
  await mark.click();
  const image = page.getByRole('dialog').locator('img.photo');
  await image.waitFor();
  const seen = await image.evaluate((shown: HTMLImageElement) => {
    const canvas = new OffscreenCanvas(shown.naturalWidth, shown.naturalHeight);
    const pen = canvas.getContext('2d')!;
    pen.drawImage(shown, 0, 0);
    const top = pen.getImageData(shown.naturalWidth / 2, 10, 1, 1).data;
    return { wide: shown.naturalWidth, high: shown.naturalHeight, red: top[0] > top[2] };
  });
  // Orientation 6: the right-hand side of what is stored is the foot of what was seen.
  expect(seen).toEqual({ wide: 120, high: 240, red: true });
  await page.getByRole('dialog').getByText('metres in its name').waitFor();
  await page.keyboard.press('Escape');
});

test('the list says of each where and why, and of those without a place why not', async () => {
  await goTo(page, 'Intake');
  await page.getByRole('button', { name: /^Photos/ }).click();
  await row('DSC2.jpg').getByText(/at 39\.7\d m ± 0\.\d+ m/).waitFor();
  await row('DSC2.jpg').getByText(/^Taken 10:00:40, when the head stood at 20\.\d m of autumn\.csv/).waitFor();
  await row('DSC3.jpg').getByText(/58 min after the scan ended/).waitFor();
  await row('letter.jpg').getByText('This file is not an image').waitFor();
  expect(await page.locator('.loose-photo').count()).toBe(4);
  expect(await page.locator('.loose-photo-waiting').count()).toBe(2);
  expect(await accessibilityFaults(page)).toEqual([]);
});

test('a clock set by hand places by time anew, and can be taken back', async () => {
  const clock = page.getByLabel(/^Camera clock ahead of the scan/);
  await clock.fill('an hour');
  expect(await page.getByRole('button', { name: 'Set the clock' }).isDisabled()).toBe(true);
  await clock.fill('1:00:00');
  await page.getByRole('button', { name: 'Set the clock' }).click();
  await row('DSC3.jpg').getByText(/at 39\.7\d m/).waitFor();
  await row('DSC2.jpg').getByText(/59 min before the scan began/).waitFor();
  expect(journal().at(-1)).toMatchObject({ kind: 'camera-clock', inspection: 'autumn', ahead_s: 3600 });
  await page.keyboard.press('Control+z');
  await row('DSC2.jpg').getByText(/at 39\.7\d m/).waitFor();
});

test('a photo is placed by hand, taken off the rope and left to its name and time again', async () => {
  const photo = row('DSC3.jpg');
  await photo.getByLabel('Position, m').fill('600');
  expect(await photo.getByRole('button', { name: 'Place', exact: true }).isDisabled()).toBe(true);
  await photo.getByLabel('Position, m').fill('8,25');
  await photo.getByRole('button', { name: 'Place', exact: true }).click();
  await photo.getByText('at 8.25 m').waitFor();
  expect(journal().at(-1)).toMatchObject({ kind: 'photo-place', file: 'photos/DSC3.jpg', inspection: 'autumn', at_m: 8.25 });
  await photo.getByRole('button', { name: 'Take off the rope' }).click();
  await photo.getByText(/Taken off the rope by/).waitFor();
  await photo.getByRole('button', { name: 'Leave to name and time' }).click();
  await photo.getByText(/58 min after the scan ended/).waitFor();
});

test('photos added in the app are copied whole, placed and shown', async () => {
  await page.getByLabel('Add photos').setInputFiles([{ name: '2024-05-02 inside 44.4m.jpg', mimeType: 'image/jpeg', buffer: readFileSync(file('../DSC9.jpg')) }, { name: 'DSC9.jpg', mimeType: 'image/jpeg', buffer: readFileSync(file('../DSC9.jpg')) }]);
  await row('added/2024-05-02 inside 44.4m.jpg').getByText('at 44.40 m').waitFor();
  await row('added/DSC9.jpg').getByText(/which inspection it belongs to/).waitFor();
  expect(readFileSync(file('added/DSC9.jpg'))).toEqual(readFileSync(file('../DSC9.jpg')));
  // A name that is taken is refused, what came before it is kept, and the notice outlasts the analysis.
  await page.getByLabel('Add photos').setInputFiles([{ name: '2024-05-02 again 45m.jpg', mimeType: 'image/jpeg', buffer: readFileSync(file('../DSC9.jpg')) }, { name: 'DSC9.jpg', mimeType: 'image/jpeg', buffer: readFileSync(file('../DSC9.jpg')) }]);
  await row('added/2024-05-02 again 45m.jpg').getByText('at 45.00 m').waitFor();
  await page.getByText('1 of 2 photos were added; DSC9.jpg could not be').waitFor();
  expect(complaints.splice(0)).toEqual([expect.stringContaining('422')]);
});

test('a section shows the photos that lie in it, with why they are taken to lie there', async () => {
  await ready(page);
  await goTo(page, 'Section');
  await page.getByLabel('Rope position, m').fill('39.7');
  await page.getByLabel('Half width, m').fill('1');
  const answer = page.getByRole('region', { name: 'History of this section' });
  await answer.locator('img.photo[alt="Photo at 39.74 m"]').waitFor();
  await answer.getByText(/when the head stood at/).waitFor();
  expect(complaints).toEqual([]);
});
