import { existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { appendToJournal, JOURNAL_FILE, readJournal } from '../../main/folder/journal-file.ts';
import { lockFolder } from '../../main/folder/lock.ts';
import { readRecent, writeRecent } from '../../main/folder/recent.ts';
import { openRopeFolder } from '../../main/folder/rope-folder.ts';
import { UnusableInput } from '../../analysis/rope/problem.ts';
import { folderWith, shortRecord } from '../support/rope-folder-on-disk.ts';

const remark = (text: string) => ({ kind: 'remark' as const, at: '2026-01-01T10:00:00Z', who: 'tester', text });

describe('a rope folder on disk', () => {
  it('lists its files by relative name and opens by folder or record', async () => {
    const root = folderWith({ 'record.json': shortRecord(), 'scans/one.csv': 'x', '.hidden': 'x' });
    expect((await openRopeFolder(root)).files.map((file) => file.name).sort()).toEqual(['record.json', 'scans/one.csv']);
    expect((await openRopeFolder(join(root, 'record.json'))).files).toHaveLength(2);
  });

  it('neither lists nor reads what a link brings in from outside', async () => {
    const outside = folderWith({ 'secret.csv': 'x' });
    const root = folderWith({ 'record.json': shortRecord() });
    symlinkSync(join(outside, 'secret.csv'), join(root, 'secret.csv'));
    symlinkSync(outside, join(root, 'elsewhere'));
    const folder = await openRopeFolder(root);
    expect(folder.files.map((file) => file.name)).toEqual(['record.json']);
    await expect(folder.read('secret.csv')).rejects.toBeInstanceOf(UnusableInput);
    await expect(folder.read('../x')).rejects.toBeInstanceOf(UnusableInput);
  });

  it('says of a path that is no folder what it is', async () => {
    await expect(openRopeFolder('/nowhere/at/all')).rejects.toThrow(/no such folder/);
    await expect(openRopeFolder(join(folderWith({ 'a.txt': '' }), 'a.txt'))).rejects.toThrow(/neither a folder nor a record/);
  });
});

describe('the journal', () => {
  it('keeps every entry in order and leaves the record alone', async () => {
    const root = folderWith({ 'record.json': shortRecord() });
    await appendToJournal(root, remark('first'));
    await appendToJournal(root, remark('second'));
    expect((await readJournal(root)).entries).toEqual([remark('first'), remark('second')]);
    expect(readFileSync(join(root, 'record.json'), 'utf8')).toBe(shortRecord());
  });

  it('loses only a line that was cut off, says so, and writes the next entry whole', async () => {
    const root = folderWith({});
    await appendToJournal(root, remark('kept'));
    const path = join(root, JOURNAL_FILE);
    writeFileSync(path, `${readFileSync(path, 'utf8')}{"kind":"remark","at":"20`);
    await appendToJournal(root, remark('after'));
    const { entries, remarks } = await readJournal(root);
    expect(entries).toEqual([remark('kept'), remark('after')]);
    expect(remarks).toHaveLength(1);
    expect(remarks[0]).toMatch(/line 2/);
  });

  it('is empty where none was written', async () => {
    expect(await readJournal(folderWith({}))).toEqual({ entries: [], remarks: [] });
  });
});

describe('the lock of a folder', () => {
  it('is given once, and again after its release', async () => {
    const root = folderWith({});
    const first = await lockFolder(root);
    expect('lock' in first).toBe(true);
    if ('lock' in first) await first.lock.release();
    expect(existsSync(join(root, '.strandbook-lock'))).toBe(false);
  });

  it('is refused while another live process holds it and taken over from a dead one', async () => {
    const held = folderWith({ '.strandbook-lock': '1' });
    expect(await lockFolder(held)).toEqual({ held: 'process 1' });
    const stale = folderWith({ '.strandbook-lock': '999999999' });
    expect('lock' in (await lockFolder(stale))).toBe(true);
  });
});

describe('recent folders', () => {
  it('come back as written, at most twelve, and a damaged list counts as empty', async () => {
    const settings = folderWith({});
    const many = Array.from({ length: 20 }, (_, i) => ({ path: `/r/${i}`, openedAt: '2026-01-01T00:00:00Z' }));
    await writeRecent(settings, many);
    expect(await readRecent(settings)).toEqual(many.slice(0, 12));
    writeFileSync(join(settings, 'recent.json'), '{"');
    expect(await readRecent(settings)).toEqual([]);
  });
});
