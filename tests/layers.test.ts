import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize, sep } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Which rooms a room may import from, and which packages only certain folders may use. Exceptions: none. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  analysis: ['analysis'],
  main: ['analysis', 'main'],
  renderer: ['analysis', 'renderer', 'main/contract.ts'],
  'sample-signals': ['analysis', 'sample-signals'],
};
const OWNED_PACKAGES: Readonly<Record<string, string>> = { electron: `main${sep}desktop`, 'plotly.js-cartesian-dist-min': `renderer${sep}strip`, react: 'renderer', 'react-dom': 'renderer' };
const HOST = /^(node:|electron$)/;

interface Import { readonly file: string; readonly to: string }

function sources(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? sources(path) : /\.tsx?$/.test(name) ? [path] : [];
  });
}

function importsIn(file: string, text: string): Import[] {
  return [...text.matchAll(/(?:^|\n)\s*(?:import|export)\b[^'"\n;]*?(?:from\s*)?['"]([^'"]+)['"]/g), ...text.matchAll(/import\(\s*['"]([^'"]+)['"]\s*\)/g)].map((match) => ({ file, to: match[1] }));
}

/** Every import that goes against the direction, in words. */
function violations(imports: readonly Import[]): string[] {
  return imports.flatMap(({ file, to }) => {
    const room = file.split(sep)[0];
    const says = (why: string) => [`${file} imports ${to}: ${why}`];
    if (to.startsWith('.')) {
      const target = normalize(join(dirname(file), to));
      const allowed = MAY_IMPORT[room].some((each) => target === normalize(each) || target.startsWith(normalize(each) + sep));
      return allowed ? [] : says(`${room} may not`);
    }
    if (room !== 'main' && room !== 'sample-signals' && HOST.test(to)) return says(`${room} knows no host`);
    const owner = Object.entries(OWNED_PACKAGES).find(([name]) => to === name || to.startsWith(`${name}/`))?.[1];
    return owner === undefined || file.startsWith(owner) ? [] : says(`only ${owner} may`);
  });
}

describe('direction of imports', () => {
  it('is kept by every source file', () => {
    const imports = Object.keys(MAY_IMPORT).flatMap(sources).flatMap((file) => importsIn(file, readFileSync(file, 'utf8')));
    expect(imports.length).toBeGreaterThan(300);
    expect(violations(imports)).toEqual([]);
  });

  it.each([
    ['analysis/assess.ts', "import { dispatch } from '../main/dispatch.ts';"],
    ['analysis/rope/units.ts', "import { readFileSync } from 'node:fs';"],
    ['main/dispatch.ts', "import { App } from '../renderer/app.tsx';"],
    ['renderer/app.tsx', "export { dispatch } from '../main/dispatch.ts';"],
    ['main/loopback/server.ts', "import * as electron from 'electron';"],
    ['renderer/jobs/x.tsx', "const p = await import('plotly.js-cartesian-dist-min');"],
  ])('is found broken in %s by %s', (file, text) => {
    expect(violations(importsIn(file.split('/').join(sep), text))).toHaveLength(1);
  });
});
