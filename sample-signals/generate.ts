import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { haulRope } from './ropes/haul-rope.ts';
import { hoistRope } from './ropes/hoist-rope.ts';
import { largeRope } from './ropes/large-rope.ts';
import { partedRope } from './ropes/parted-rope.ts';
import { ropewayLoop } from './ropes/ropeway-loop.ts';
import type { SampleFolder } from './ropes/sample-folder.ts';

/** The committed sample ropes by name; each is made anew, from its seeds alone. */
export const SAMPLES: Readonly<Record<string, () => SampleFolder>> = { 'haul-rope': haulRope, 'ropeway-loop': ropewayLoop, 'hoist-rope': hoistRope, 'parted-rope': partedRope };

/**
 * Writes the sample ropes again (all, or those named), or with --rows and --inspections one large rope into `generated`.
 * Everything is SYNTHETIC. --into names another folder to write to.
 */
export async function main(args: readonly string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args: [...args].filter((each) => each !== '--'), allowPositionals: true,
    options: { rows: { type: 'string' }, inspections: { type: 'string', default: '4' }, seed: { type: 'string', default: '1' }, into: { type: 'string' } },
  });
  const root = values.into ?? homeOfSamples();
  if (values.rows !== undefined) {
    const large = { rows: whole(values.rows, 'rows'), inspections: whole(values.inspections, 'inspections'), seed: whole(values.seed, 'seed') };
    const folder = join(root, 'generated', `large-${large.rows}x${large.inspections}`);
    for (const file of largeRope(large)) write(folder, file);
    process.stdout.write(`${folder}\n`);
    return;
  }
  const unknown = positionals.find((name) => !(name in SAMPLES));
  if (unknown !== undefined) throw new Error(`there is no sample rope "${unknown}"; known: ${Object.keys(SAMPLES).join(', ')}`);
  for (const name of positionals.length > 0 ? positionals : Object.keys(SAMPLES)) {
    const folder = SAMPLES[name]();
    for (const file of folder.files) write(join(root, folder.name), file);
    process.stdout.write(`${folder.name}: ${folder.files.length} files\n`);
  }
}

function write(folder: string, file: { readonly name: string; readonly bytes: Uint8Array }): void {
  const path = join(folder, ...file.name.split('/'));
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, file.bytes);
}

/** sample-signals beside package.json, wherever the bundled program itself lies. */
function homeOfSamples(): string {
  let at = import.meta.dirname;
  while (!existsSync(join(at, 'package.json')) && dirname(at) !== at) at = dirname(at);
  return join(at, 'sample-signals');
}

function whole(text: string, name: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1) throw new Error(`--${name} must be a whole number above 0, not "${text}"`);
  return value;
}
