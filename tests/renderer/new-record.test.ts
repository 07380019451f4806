import { expect, test } from 'vitest';
import { recordOf, tablesAmong } from '../../renderer/state/new-record.ts';
import type { RecordDraft } from '../../renderer/state/new-record.ts';

const modified = Date.parse('2026-05-01T00:00:00Z');

test('scans are found by their endings and dated by their names, else by their age', () => {
  expect(tablesAmong([{ name: 'b/run_20240301.txt', modified }, { name: 'a/2023-12-31 first.csv', modified }, { name: 'old.dat', modified }, { name: 'photo.jpg', modified }, { name: '.hidden.csv', modified }, { name: 'notes-2023-12-31.csv', modified }, { name: 'README.txt', modified }])).toEqual([
    { file: 'a/2023-12-31 first.csv', date: '2023-12-31', role: 'scan' },
    { file: 'notes-2023-12-31.csv', date: '2023-12-31', role: 'notes' },
    { file: 'b/run_20240301.txt', date: '2024-03-01', role: 'scan' },
    { file: 'README.txt', date: '2026-05-01', role: 'neither' },
    { file: 'old.dat', date: '2026-05-01', role: 'scan' },
  ]);
});

const draft: RecordDraft = { name: 'R1', application: '', construction: '', diameter: '25,4', length: '', files: [{ file: 'a.csv', date: '2024-01-01', role: 'scan' }, { file: 'b.csv', date: '2024-01-01', role: 'scan' }, { file: 'c.csv', date: '2025-01-01', role: 'scan' }, { file: 'd.csv', date: '', role: 'neither' }] };

test('files of one date are runs of one inspection, and what is left empty is not stated', () => {
  const made = recordOf(draft);
  expect(made).toMatchObject({ record: { rope: { id: 'R1', diameter_mm: 25.4 }, inspections: [{ id: '2024-01-01', runs: [{ file: 'a.csv' }, { file: 'b.csv' }] }, { id: '2025-01-01', runs: [{ file: 'c.csv' }] }] } });
  expect('record' in made && Object.keys(made.record.rope).sort()).toEqual(['diameter_mm', 'id', 'name']);
});

test('notes of a date stand with its scans, also where it has none, and two of one date are refused', () => {
  const notes = (file: string, date: string) => ({ file, date, role: 'notes' as const });
  expect(recordOf({ ...draft, files: [...draft.files, notes('n.csv', '2025-01-01'), notes('m.csv', '2026-01-01')] })).toMatchObject({ record: { inspections: [{ id: '2024-01-01' }, { id: '2025-01-01', runs: [{ file: 'c.csv' }], notes: 'n.csv' }, { id: '2026-01-01', runs: [], notes: 'm.csv' }] } });
  expect(recordOf({ ...draft, files: [...draft.files, notes('n.csv', '2025-01-01'), notes('m.csv', '2025-01-01')] })).toEqual({ missing: expect.stringMatching(/m\.csv is a second/) });
});

test.each([
  [{ name: ' ' }, /name/], [{ diameter: 'thick' }, /diameter/], [{ length: '-3' }, /length/], [{ files: [] }, /at least one/], [{ files: [{ file: 'd.csv', date: '', role: 'scan' }] }, /date of d\.csv/],
] as const)('%o is answered with what is missing', (part, words) => {
  expect(recordOf({ ...draft, ...part })).toEqual({ missing: expect.stringMatching(words) });
});
