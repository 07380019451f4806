import { expect, test } from 'vitest';
import { recordOf, scansAmong } from '../../renderer/state/new-record.ts';
import type { RecordDraft } from '../../renderer/state/new-record.ts';

const modified = Date.parse('2026-05-01T00:00:00Z');

test('scans are found by their endings and dated by their names, else by their age', () => {
  expect(scansAmong([{ name: 'b/run_20240301.txt', modified }, { name: 'a/2023-12-31 first.csv', modified }, { name: 'old.dat', modified }, { name: 'photo.jpg', modified }, { name: '.hidden.csv', modified }, { name: 'notes-2023-12-31.csv', modified }])).toEqual([
    { file: 'a/2023-12-31 first.csv', date: '2023-12-31', used: true },
    { file: 'notes-2023-12-31.csv', date: '2023-12-31', used: false },
    { file: 'b/run_20240301.txt', date: '2024-03-01', used: true },
    { file: 'old.dat', date: '2026-05-01', used: true },
  ]);
});

const draft: RecordDraft = { name: 'R1', application: '', construction: '', diameter: '25,4', length: '', scans: [{ file: 'a.csv', date: '2024-01-01', used: true }, { file: 'b.csv', date: '2024-01-01', used: true }, { file: 'c.csv', date: '2025-01-01', used: true }, { file: 'd.csv', date: '', used: false }] };

test('files of one date are runs of one inspection, and what is left empty is not stated', () => {
  const made = recordOf(draft);
  expect(made).toMatchObject({ record: { rope: { id: 'R1', diameter_mm: 25.4 }, inspections: [{ id: '2024-01-01', runs: [{ file: 'a.csv' }, { file: 'b.csv' }] }, { id: '2025-01-01', runs: [{ file: 'c.csv' }] }] } });
  expect('record' in made && Object.keys(made.record.rope).sort()).toEqual(['diameter_mm', 'id', 'name']);
});

test.each([
  [{ name: ' ' }, /name/], [{ diameter: 'thick' }, /diameter/], [{ length: '-3' }, /length/], [{ scans: [] }, /at least one/], [{ scans: [{ file: 'd.csv', date: '', used: true }] }, /date of d\.csv/],
] as const)('%o is answered with what is missing', (part, words) => {
  expect(recordOf({ ...draft, ...part })).toEqual({ missing: expect.stringMatching(words) });
});
