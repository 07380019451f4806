import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assess } from '../../analysis/assess.ts';
import type { Analysis } from '../../analysis/assess.ts';
import { momentInName, dayInName } from '../../analysis/intake/photos/moment-in-name.ts';
import { photoFacts } from '../../analysis/intake/photos/photo-facts.ts';
import { photoFile } from '../../analysis/intake/photos/photo-file.ts';
import { positionInName } from '../../analysis/intake/photos/position-in-name.ts';
import { headAt, scanClock } from '../../analysis/intake/photos/scan-clock.ts';
import type { TimeReading } from '../../analysis/intake/photos/scan-clock.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';
import { buildReport } from '../../analysis/report/build-report.ts';
import { sectionHistory } from '../../analysis/section/section-history.ts';
import { openRopeFolder } from '../../main/folder/rope-folder.ts';
import { nodeHasher } from '../../main/hasher.ts';
import { chance } from '../corpus/scan-text.ts';
import { BARE_JPEG, withCameraData } from '../support/exif-jpeg.ts';
import { TIMED_ROPE } from '../support/timed-rope.ts';
import { folderWith } from '../support/rope-folder-on-disk.ts';

describe('what a photo says of itself', () => {
  const whole = withCameraData(BARE_JPEG, { orientation: 6, taken: '2024:05:01 10:11:12', latitude: 47 });
  it('is its kind, orientation and time; where the camera stood is not read', () => {
    expect(photoFacts(whole)).toEqual({ kind: 'jpeg', orientation: 6, taken: '2024-05-01T10:11:12' });
  });
  it('is nothing where the data are cut off, never set or no image', () => {
    expect(photoFacts(whole.subarray(0, 30))).toEqual({ kind: 'jpeg', orientation: 1, taken: null });
    expect(photoFacts(withCameraData(BARE_JPEG, { taken: '0000:00:00 00:00:00' })).taken).toBeNull();
    expect(photoFacts(new TextEncoder().encode('not an image at all'))).toEqual({ kind: null, orientation: 1, taken: null });
  });

  it('never fails on damaged data, and never takes a time from them that is none', () => {
    const draw = chance(2_718_281);
    for (let round = 0; round < 2000; round += 1) {
      const damaged = whole.slice(0, 20 + Math.floor(draw() * (whole.length - 20)));
      for (let flips = 0; flips < 1 + draw() * 8; flips += 1) damaged[12 + Math.floor(draw() * (damaged.length - 12))] = Math.floor(draw() * 256);
      const { taken, orientation } = photoFacts(damaged);
      expect(taken === null || Number.isFinite(Date.parse(taken))).toBe(true);
      expect(orientation).toBeGreaterThanOrEqual(1);
      expect(orientation).toBeLessThanOrEqual(8);
    }
  });

  it.each([['IMG_123.4m.jpg', 123.4], ['pos_0123.40.png', 123.4], ['crown 12m50.jpg', 12.5], ['at 7,25.jpg', 7.25], ['400ft.jpg', 121.92], ['2024-05-01 crown 12m.jpg', 12], ['DSC01234.jpg', null], ['20240501_101112.jpg', null], ['8mm wire.jpg', null]])('finds the place in %s', (file, position) => {
    const found = positionInName(`photos/${file}`)?.position ?? null;
    if (position === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(position, 9);
  });
  it.each([['IMG_20240501_101112.jpg', '2024-05-01T10:11:12'], ['2024-05-01 10.11.12.jpg', '2024-05-01T10:11:12'], ['20240230_101112.jpg', null], ['20240501_251112.jpg', null], ['DSC01234.jpg', null], ['120240501_101112.jpg', null]])('finds the moment in %s', (file, moment) => expect(momentInName(file)).toBe(moment));
  it.each([['2024-05-01 crown.jpg', '2024-05-01'], ['crown_20240501.png', '2024-05-01'], ['2024-13-01.jpg', null], ['crown 2024.jpg', null]])('finds the day in %s', (file, day) => expect(dayInName(file)).toBe(day));
});

describe('the clock of a scan', () => {
  const at = (text: string) => Date.parse(`${text}Z`) / 1000;
  const reading = (changes: Partial<TimeReading> = {}): TimeReading => ({ factor: 1, date: '2024-05-01', preamble: [], written: false, ...changes });
  const clockOf = (times: number[], places: number[], changes: Partial<TimeReading> = {}) => scanClock(Float64Array.from(times), Float64Array.from(places), times.length, reading(changes));
  const ends = (clock: ReturnType<typeof clockOf>) => clock && [clock.seconds[0], clock.seconds.at(-1)];

  it('takes the day of the inspection for times of day, and passes midnight', () => {
    expect(ends(clockOf([86_390, 86_399, 5], [0, 9, 15], { written: true }))).toEqual([at('2024-05-01T23:59:50'), at('2024-05-02T00:00:05')]);
  });
  it('takes dates with times and seconds since 1970 as they stand', () => {
    expect(ends(clockOf([at('2024-05-01T10:00:00'), at('2024-05-01T10:00:10')], [0, 5], { written: true, date: '1999-01-01' }))).toEqual([at('2024-05-01T10:00:00'), at('2024-05-01T10:00:10')]);
    expect(ends(clockOf([at('2024-05-01T10:00:00') * 1000, at('2024-05-01T10:00:10') * 1000], [0, 5], { factor: 0.001 }))).toEqual([at('2024-05-01T10:00:00'), at('2024-05-01T10:00:10')]);
  });
  it.each([
    ['Start: 2024-05-01 10:00:00', '10:00:00'], ['Beginn der Messung 01.05.2024, 10:00', '10:00:00'], ['test start 5/1/2024 10:00:30', '10:00:30'], ['time = 09:15:07', '09:15:07'], ['Uhrzeit;09:15:07', '09:15:07'], ['начало 2024-05-01 10:00:00', '10:00:00'],
  ])('counts seconds from the start that stands above the table: %s', (line, time) => {
    expect(ends(clockOf([3, 13], [0, 5], { preamble: ['instrument 7', line] }))).toEqual([at(`2024-05-01T${time}`), at(`2024-05-01T${time}`) + 10]);
  });
  it.each([['Start: 2024-06-01 10:00:00'], ['exported: date 2024-05-01 18:00:00'], ['calibration date 2024-05-01 08:00:00'], ['length 10:00']])('believes no other moment: %s', (line) => {
    expect(clockOf([0, 10], [0, 5], { preamble: [line] })).toBeNull();
  });
  it('gives none where seconds count from an unknown moment, or no time is there', () => {
    expect(clockOf([0, 10], [0, 5])).toBeNull();
    expect(clockOf([NaN, NaN], [0, 5], { written: true })).toBeNull();
  });
  it('is thin for a long scan and keeps where the head was', () => {
    const rows = 400_000;
    const clock = scanClock(Float64Array.from({ length: rows }, (_, i) => i * 0.002), Float64Array.from({ length: rows }, (_, i) => i * 0.001), rows, reading({ written: true }))!;
    expect(clock.seconds.length).toBeLessThan(2000);
    const head = headAt(clock, at('2024-05-01T00:05:00'), at('2024-05-01T00:05:01'));
    expect(head).toMatchObject({ within: expect.closeTo(0.25, 6) });
    expect('position' in head && head.position).toBeCloseTo(150.25, 6);
  });

  // A run at 0.5 m/s with a stop from 10 s to 30 s, a piece run back and forth, and a stretch without samples from 40 s to 100 s.
  const told = clockOf([0, 10, 30, 34, 36, 40, 100, 110], [0, 5, 5, 7, 6, 8, 60, 65], { written: true })!;
  const start = at('2024-05-01T00:00:00');
  it('says where the head stood in a second, and how far it moved in it', () => {
    expect(headAt(told, start + 4, start + 5)).toEqual({ position: 2.25, within: 0.25 });
    expect(headAt(told, start + 20, start + 21)).toEqual({ position: 5, within: 0 });
    expect(headAt(told, start + 33, start + 37)).toMatchObject({ position: 6.5, within: 0.5 });
  });
  it.each([[50, 'in a gap of 60 s of the scan'], [-200, '3 min before the scan began'], [7310, '2 h 00 min after the scan ended'], [400_000, '5 days after the scan ended']])('says why not at %i s', (second, why) => {
    expect(headAt(told, start + second, start + second + 1)).toEqual({ why });
  });
});

describe('a note and the photo it means', () => {
  const record = { inspections: [{ id: 'i', date: '2024-05-01', runs: [], photos: './pictures/' }] };
  it('is found by full name, in the folder of its inspection, or by its last part', () => {
    const files = ['pictures/a.jpg', 'pictures/sub/b.jpg', 'other/a.jpg'].map((name) => ({ name }));
    expect(['a.jpg', 'other\\a.jpg', 'b.jpg', 'c.jpg'].map((photo) => photoFile(photo, 'i', record, files))).toEqual(['pictures/a.jpg', 'other/a.jpg', 'pictures/sub/b.jpg', null]);
  });
});

/** Two scans of a short rope with a clock each, the second run from the other end, and a folder of photos for both. */
describe('photos of a rope folder', () => {
  const decided = { at: '2024-09-01T08:00:00Z', who: 'R. Harrow (invented)' };
  const taken = (moment: string) => withCameraData(BARE_JPEG, { taken: moment, latitude: 47 });
  const files = {
    ...TIMED_ROPE,
    'photos/noted 99m.jpg': BARE_JPEG, 'photos/2024-09-01 crown 20.5m.jpg': BARE_JPEG, 'photos/2024-09-01 far 600m.jpg': BARE_JPEG,
    'photos/DSC1.jpg': taken('2024:05:01 10:00:40'), 'photos/DSC2.jpg': taken('2024:09:01 10:00:40'), 'photos/DSC3.jpg': taken('2024:09:01 11:00:40'), 'photos/20240501_100020.jpg': BARE_JPEG,
    'photos/who knows 30m.jpg': BARE_JPEG, 'photos/letter 10m 2024-05-01.jpg': 'this is a letter and no photo', 'photos/Thumbs.db': 'x', 'elsewhere/2024-05-01 5m.jpg': BARE_JPEG, 'elsewhere/2024-05-01 6m.txt': 'x', 'added/DSC4.jpg': taken('2024:08:30 10:00:00'), 'added/table.csv': 'position_m,kind\n',
  };
  const analyse = async (journal: readonly JournalEntry[] = []): Promise<Analysis> =>
    assess(await openRopeFolder(folderWith(files)), { generated: '2024-10-01T00:00:00Z', product: 'test', createHash: nodeHasher, checkpoint: noCheckpoint, journal });
  const placesOf = ({ assessment }: Analysis) => Object.fromEntries(assessment.photos.map((each) => [each.file.replace('photos/', ''), [each.inspection, each.position_m === null ? null : Math.round(each.position_m * 10) / 10, each.by]]));

  it('are placed by name and by time on the rope itself, and by nothing where nothing says', async () => {
    const analysis = await analyse();
    expect(placesOf(analysis)).toEqual({
      '2024-09-01 crown 20.5m.jpg': ['autumn', 20.5, 'name'], '2024-09-01 far 600m.jpg': ['autumn', null, 'nothing'],
      // Half a metre a second: forty seconds are 20.25 m of the file, which the second scan counted from the other end.
      'DSC1.jpg': ['spring', 20.3, 'time'], 'DSC2.jpg': ['autumn', 39.7, 'time'], 'DSC3.jpg': ['autumn', null, 'nothing'], '20240501_100020.jpg': ['spring', 10.3, 'time'],
      'who knows 30m.jpg': [null, null, 'nothing'], 'letter 10m 2024-05-01.jpg': ['spring', null, 'nothing'], 'added/DSC4.jpg': ['autumn', null, 'nothing'], 'elsewhere/2024-05-01 5m.jpg': ['spring', 5, 'name'],
    });
    const reasons = new Map(analysis.assessment.photos.map((each) => [each.file, each.reason]));
    expect(reasons.get('photos/DSC2.jpg')).toMatch(/^taken 10:00:40, when the head stood at 20\.\d m of autumn\.csv \(clock: times of day/);
    expect(reasons.get('photos/DSC3.jpg')).toMatch(/58 min after the scan ended/);
    expect(reasons.get('photos/2024-09-01 far 600m.jpg')).toMatch(/off the rope/);
    expect(reasons.get('photos/who knows 30m.jpg')).toMatch(/says which inspection it belongs to/);
    expect(reasons.get('photos/letter 10m 2024-05-01.jpg')).toMatch(/not an image/);
    const timed = analysis.assessment.photos.filter((each) => each.by === 'time');
    for (const each of timed) expect(each.within_m).toBeGreaterThanOrEqual(0.25 - 1e-6);
    expect(JSON.stringify(analysis.assessment)).not.toMatch(/latitude|gps/i);
  });

  it('go where a person puts them, off the rope where one says so, and back when that is withdrawn', async () => {
    const entry = (file: string, at_m: number | null) => ({ ...decided, kind: 'photo-place' as const, file: `photos/${file}`, inspection: 'autumn', at_m });
    const analysis = await analyse([entry('who knows 30m.jpg', 31), entry('2024-09-01 crown 20.5m.jpg', null), entry('DSC1.jpg', 5), { ...decided, kind: 'photo-place-removed', file: 'photos/DSC1.jpg' }]);
    expect(placesOf(analysis)).toMatchObject({ 'who knows 30m.jpg': ['autumn', 31, 'hand'], '2024-09-01 crown 20.5m.jpg': ['autumn', null, 'hand'], 'DSC1.jpg': ['spring', 20.3, 'time'] });
    expect(analysis.assessment.photos.find((each) => each.by === 'hand')?.reason).toContain(decided.who);
  });

  it('move with the camera clock of their inspection alone', async () => {
    const analysis = await analyse([{ ...decided, kind: 'camera-clock', inspection: 'autumn', ahead_s: 3600 }]);
    expect(placesOf(analysis)).toMatchObject({ 'DSC3.jpg': ['autumn', 39.7, 'time'], 'DSC2.jpg': ['autumn', null, 'nothing'], 'DSC1.jpg': ['spring', 20.3, 'time'] });
  });

  it('are in the history of the section they lie in, and in the report with what has no place', async () => {
    const analysis = await analyse();
    const { section } = await sectionHistory(analysis, { at: 20.3, halfWidth: 0.5, date: null });
    expect(section.inspections.map((each) => each.photos.map((photo) => photo.file))).toEqual([['photos/DSC1.jpg'], ['photos/2024-09-01 crown 20.5m.jpg']]);
    const tables = buildReport(analysis).blocks.flatMap((block) => (block.kind === 'table' && block.caption.startsWith('Photos') ? [block.rows] : []));
    expect(tables).toHaveLength(1);
    expect(tables[0].filter((row) => row[1] === 'not placed')).toHaveLength(5);
  });

  it('are only read', async () => {
    const root = folderWith(files);
    await assess(await openRopeFolder(root), { generated: '2024-10-01T00:00:00Z', product: 'test', createHash: nodeHasher, checkpoint: noCheckpoint, journal: [] });
    expect(new Uint8Array(readFileSync(join(root, 'photos/DSC1.jpg')))).toEqual(files['photos/DSC1.jpg']);
  });
});
