import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BENCHES } from '../build/bundle.mjs';

/** The two documents name commands, benches and paths: what they name exists. */
const root = join(import.meta.dirname, '..');
const scripts = Object.keys((JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> }).scripts);

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  const text = readFileSync(join(root, name), 'utf8');
  it('names only commands that exist', () => {
    const named = [...text.matchAll(/npm run (?:--silent )?([a-z]+)/g)].map((match) => match[1]);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((each) => !scripts.includes(each))).toEqual([]);
  });
  it('names only folders and files that exist', () => {
    const named = [...text.matchAll(/`((?:analysis|main|renderer|tests|sample-signals|build)\/[\w./-]*)`/g)].map((match) => match[1]);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((each) => !existsSync(join(root, each)))).toEqual([]);
  });
});

it('lists every bench for developers', () => {
  const text = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
  expect(BENCHES.filter((bench) => !text.includes(`\`${bench}\``))).toEqual([]);
});
