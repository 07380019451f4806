import { describe, expect, it } from 'vitest';
import { UnusableInput } from '../../analysis/rope/problem.ts';
import type { Problem } from '../../analysis/rope/problem.ts';
import { readRecord } from '../../analysis/rope/read-record.ts';
import { encode } from '../corpus/scan-text.ts';

const good = {
  schema: 1, rope: { id: 'R1', length_m: 100 },
  landmarks: [{ name: 'socket', from_m: 0, to_m: 1 }],
  inspections: [{ id: 'b', date: '2024-05-01', runs: [{ file: 'b.csv' }] }, { id: 'a', date: '2023-05-01', runs: [{ file: 'scans/a.csv' }] }],
};
const bytes = (value: unknown) => new TextEncoder().encode(typeof value === 'string' ? value : JSON.stringify(value, null, 2));
function problemsOf(value: unknown): readonly Problem[] {
  try {
    readRecord(bytes(value), 'record.json');
  } catch (error) {
    if (error instanceof UnusableInput) return error.problems;
    throw error;
  }
  return [];
}

describe('record', () => {
  it('reads inspections oldest first', () => expect(readRecord(bytes(good), 'record.json').inspections.map((each) => each.id)).toEqual(['a', 'b']));

  it.each(['utf-8', 'utf-8-bom', 'utf-16le', 'utf-16be', 'utf-16le-bom', 'utf-16be-bom'] as const)('reads %s', (encoding) => {
    expect(readRecord(encode(JSON.stringify(good), encoding), 'record.json').rope.id).toBe('R1');
  });

  it('names every faulty field with its line', () => {
    const text = JSON.stringify({ ...good, rope: { id: 'R1', length_m: '100', core: 'wood' } }, null, 2);
    const found = problemsOf(text);
    const lines = text.split('\n');
    expect(found.map((each) => each.column).sort()).toEqual(['rope.core', 'rope.length_m']);
    for (const each of found) expect(lines[each.line! - 1]).toContain(each.column!.split('.')[1]);
  });

  it.each([
    ['an absolute path', '/etc/a.csv'], ['a drive', 'C:\\a.csv'], ['a step upwards', '../a.csv'], ['a hidden step upwards', 'x/../../a.csv'], ['an address', 'file:///a.csv'], ['a share', '\\\\host\\a.csv'],
  ])('refuses %s', (_, file) => {
    const found = problemsOf({ ...good, inspections: [{ id: 'a', date: '2023-05-01', runs: [{ file }] }] });
    expect(found).toHaveLength(1);
    expect(found[0].column).toBe('inspections[0].runs[0].file');
  });

  it.each([
    ['two inspections of one id', { inspections: [good.inspections[0], good.inspections[0]] }, 'inspections[1].id'],
    ['from beyond to', { landmarks: [{ name: 'x', from_m: 5, to_m: 2 }] }, 'landmarks[0].from_m'],
    ['a loop without a length', { rope: { id: 'R', loop: true } }, 'rope.loop'],
    ['a day that no calendar has', { inspections: [{ id: 'a', date: '2024-02-30', runs: [] }] }, 'inspections[0].date'],
    ['counts without pulses', { inspections: [{ id: 'a', date: '2024-02-03', runs: [{ file: 'a', columns: { position: { unit: 'counts' } } }] }] }, 'inspections[0].runs[0].columns.position'],
    ['another schema', { schema: 2 }, 'schema'],
  ])('refuses %s', (_, change, column) => expect(problemsOf({ ...good, ...change }).map((each) => each.column)).toEqual([column]));

  it('gives the line where the text stops being JSON', () => expect(problemsOf('{\n "schema": 1,\n "rope": { "id": }\n}')[0].line).toBe(3));
  it('does not drop a field that is given twice', () => expect(problemsOf('{"schema":1,\n"rope":{"id":"a"},\n"rope":{"id":"b"}}')[0]).toMatchObject({ line: 3, column: 'rope' }));
  it('refuses an empty file, a binary one and deep nesting', () => {
    expect(problemsOf('')[0].what).toContain('empty');
    expect(() => readRecord(Uint8Array.from({ length: 100 }, (_, i) => i % 7), 'record.json')).toThrow(UnusableInput);
    expect(problemsOf('['.repeat(100_000))).toHaveLength(1);
    expect(problemsOf(`{"schema": ${'['.repeat(5000)}${']'.repeat(5000)}}`).length).toBeGreaterThan(0);
  });
});
