import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzlibSync } from 'fflate';
import { afterAll, describe, expect, test } from 'vitest';
import { readRecord } from '../../analysis/rope/read-record.ts';
import { crc32 } from '../../sample-signals/files/png.ts';
import { main, SAMPLES } from '../../sample-signals/generate.ts';
import { largeRope } from '../../sample-signals/ropes/large-rope.ts';

const root = join(import.meta.dirname, '..', '..', 'sample-signals');
const filesIn = (folder: string): string[] => readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile()).map((each) => join(each.parentPath, each.name).slice(folder.length + 1).split('\\').join('/')).sort();
const sha = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const scratch = mkdtempSync(join(tmpdir(), 'samples-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe('committed sample ropes', () => {
  test('a fresh run makes the committed hoist rope byte for byte', async () => {
    await main(['hoist-rope', '--into', scratch]);
    expect(filesIn(join(scratch, 'hoist-rope'))).toEqual(filesIn(join(root, 'hoist-rope')));
    for (const name of filesIn(join(root, 'hoist-rope'))) expect(sha(readFileSync(join(scratch, 'hoist-rope', name))), name).toBe(sha(readFileSync(join(root, 'hoist-rope', name))));
  });

  test.each(Object.keys(SAMPLES))('%s: record is valid, every named file is there, everything is marked SYNTHETIC', (name) => {
    const folder = join(root, name);
    const record = readRecord(readFileSync(join(folder, 'record.json')), 'record.json');
    expect(record.synthetic).toBe(true);
    expect(record.rope.name).toContain('SYNTHETIC');
    const files = filesIn(folder);
    for (const inspection of record.inspections) {
      for (const run of inspection.runs) expect(files).toContain(run.file);
      if (inspection.notes !== undefined) expect(files).toContain(inspection.notes);
    }
    for (const file of files.filter((each) => each.endsWith('.csv'))) {
      const head = readFileSync(join(folder, file)).subarray(0, 200);
      expect(head.toString(head[0] === 0xff ? 'utf16le' : 'utf8').split('\n')[0], file).toContain('SYNTHETIC');
    }
  });

  test('all together are smaller than 12 MB', () => {
    const size = Object.keys(SAMPLES).reduce((sum, name) => sum + filesIn(join(root, name)).reduce((inner, file) => inner + statSync(join(root, name, file)).size, 0), 0);
    expect(size).toBeLessThan(12e6);
  });

  test('a name that is no sample is refused', async () => {
    await expect(main(['no-such-rope', '--into', scratch])).rejects.toThrow(/haul-rope/);
    await expect(main(['--rows', 'many', '--into', scratch])).rejects.toThrow(/whole number/);
  });
});

describe('pictures', () => {
  const folder = join(root, 'haul-rope', 'photos');
  test.each(readdirSync(folder))('%s is a sound PNG that says SYNTHETIC', (name) => {
    const bytes = new Uint8Array(readFileSync(join(folder, name)));
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    const types: string[] = [];
    let packed = new Uint8Array(0);
    for (let at = 8; at < bytes.length; ) {
      const length = view.getUint32(at);
      const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
      expect(view.getUint32(at + 8 + length), `check sum of ${type}`).toBe(crc32(bytes.subarray(at + 4, at + 8 + length)));
      if (type === 'IDAT') packed = bytes.slice(at + 8, at + 8 + length);
      types.push(type);
      at += 12 + length;
    }
    expect(types).toEqual(['IHDR', 'tEXt', 'IDAT', 'IEND']);
    expect(unzlibSync(packed).length).toBe(view.getUint32(20) * (1 + 3 * view.getUint32(16)));
    expect(Buffer.from(bytes).toString('latin1')).toContain('SYNTHETIC');
    expect(bytes.length).toBeLessThan(20_000);
  });

  test('the check sum is that of the PNG standard', () => expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926));
});

test('a large rope has as many rows as asked for, whatever the scale and slips of its scans', () => {
  const files = [...largeRope({ rows: 20_000, inspections: 2, seed: 3 })];
  expect(files.map((each) => each.name)).toEqual(['record.json', '2020-05-12.csv', '2021-05-12.csv']);
  const rows = files.slice(1).map((each) => new TextDecoder().decode(each.bytes).trim().split('\n').filter((line) => !line.startsWith('#')).length - 1);
  expect(rows[0]).toBe(20_000);
  expect(Math.abs(rows[1] - 20_000)).toBeLessThan(250);
});
