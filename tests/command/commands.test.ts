import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assessmentSchema } from '../../analysis/assessment/schema.ts';
import { parseAssess, parseSection } from '../../main/command/arguments.ts';
import { folderWith, shortRecord, shortScan } from '../support/rope-folder-on-disk.ts';

interface Done { readonly code: number | null; readonly out: string; readonly err: string }

function run(...words: string[]): Promise<Done> {
  const child = spawn(process.execPath, ['build/run.mjs', ...words], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let err = '';
  child.stdout.on('data', (part) => { out += part; });
  child.stderr.on('data', (part) => { err += part; });
  return new Promise((resolve) => child.on('exit', (code) => resolve({ code, out, err })));
}

const output = (): string => join(mkdtempSync(join(tmpdir(), 'out-')), 'answer.json');
const good = { 'record.json': shortRecord(), 'one.csv': shortScan() };

describe('assess', () => {
  it('writes an assessment of the agreed form and says nothing else', async () => {
    const json = output();
    const report = json.replace('.json', '.html');
    expect(await run('assess', folderWith(good), '--json', json, '--report', report)).toEqual({ code: 0, out: '', err: '' });
    const assessment = assessmentSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
    expect(assessment.files).toHaveLength(1);
    expect(assessment.inspections[0].coverage.length).toBeGreaterThan(0);
    expect(readFileSync(report, 'utf8')).toContain('Decision');
  });

  it.each<[string, Record<string, string | Uint8Array>, RegExp]>([
    ['a missing scan', { 'record.json': shortRecord() }, /^one\.csv: .+; .+/],
    ['an empty scan', { ...good, 'one.csv': '' }, /^one\.csv: .+; .+/],
    ['a binary scan', { ...good, 'one.csv': Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919) % 256) }, /^one\.csv, line 1: .+; .+/],
    ['no record', { 'one.csv': shortScan() }, /^record\.json: .+; .+/],
    ['a record that is no JSON', { ...good, 'record.json': '{"schema": 1,\n "rope": {,}' }, /^record\.json, line 2: .+; .+/],
    ['a wrong field', { ...good, 'record.json': shortRecord({ rope: { id: 'x', core: 'wood' } }) }, /^record\.json, line \d+, column rope\.core: .+; .+/],
    ['a scan outside the folder', { ...good, 'record.json': shortRecord({ inspections: [{ id: 'a', date: '2024-01-01', runs: [{ file: '../one.csv' }] }] }) }, /^record\.json, line \d+, column .+: .+; .+/],
  ])('refuses %s with one clear line, exit code 2, and writes nothing', async (_, files, line) => {
    const json = output();
    const done = await run('assess', folderWith(files), '--json', json);
    expect(done.code).toBe(2);
    expect(done.out).toBe('');
    expect(done.err.trimEnd().split('\n')).toHaveLength(1);
    expect(done.err).toMatch(line);
    expect(existsSync(json)).toBe(false);
  });

  it('says every fault of every file, one line each', async () => {
    const record = shortRecord({ inspections: ['a', 'b'].map((name) => ({ id: name, date: '2024-01-01', runs: [{ file: `${name}.csv` }] })) });
    const done = await run('assess', folderWith({ 'record.json': record }), '--json', output());
    expect(done.err.trimEnd().split('\n').map((line) => line.slice(0, 5))).toEqual(['a.csv', 'b.csv']);
  });

  it('ends with 1 where the answer cannot be written, and leaves no half file', async () => {
    const folder = folderWith(good);
    const done = await run('assess', folder, '--json', join(folder, 'no', 'such', 'folder', 'x.json'));
    expect(done.code).toBe(1);
    expect(readdirSync(folder).sort()).toEqual(['one.csv', 'record.json']);
  });
});

describe('section', () => {
  it('says not-inspected of a length that no scan reached, and not-indicated of a sound one', async () => {
    const folder = folderWith({ ...good, 'record.json': shortRecord({ landmarks: [{ name: 'socket', position_m: 20, blind_m: 2 }] }) });
    const ask = async (at: string): Promise<string> => {
      const json = output();
      expect((await run('section', folder, '--at', at, '--half-width', '0.5', '--json', json)).code).toBe(0);
      return JSON.parse(readFileSync(json, 'utf8')).section.finding;
    };
    expect(await ask('10')).toBe('not-indicated');
    expect(await ask('19')).toBe('not-inspected');
    expect(await ask('-50')).toBe('not-inspected');
  });

  it('answers no-data for a date before the first inspection', async () => {
    const json = output();
    await run('section', folderWith(good), '--at', '10', '--date', '2020-01-01', '--json', json);
    expect(JSON.parse(readFileSync(json, 'utf8')).section).toMatchObject({ finding: 'no-data', inspections: [] });
  });
});

describe('words of the commands', () => {
  it.each([[['f']], [['f', '--json']], [['f', 'g', '--json', 'x']], [['f', '--jsn', 'x']]])('assess refuses %j with its usage', (words) => {
    expect(parseAssess(words)).toMatchObject({ wrong: expect.stringMatching(/usage/) });
  });
  it.each([[['f', '--json', 'x']], [['f', '--at', 'here', '--json', 'x']], [['f', '--at', '3', '--half-width', '0', '--json', 'x']], [['f', '--at', '3', '--date', 'soon', '--json', 'x']], [['f', '--at', '3']]])('section refuses %j', (words) => {
    expect(parseSection(words)).toMatchObject({ wrong: expect.stringMatching(/usage/) });
  });
  it('section takes a negative position', () => {
    expect(parseSection(['f', '--at', '-5', '--json', 'x'])).toMatchObject({ job: { section: { at: -5, halfWidth: 3, date: null } } });
  });
});
