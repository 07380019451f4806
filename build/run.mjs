// node build/run.mjs NAME [arguments]: installs and bundles what is missing, then runs one bundled program.
// `bench` alone runs every bench with its defaults; `bench NAME [arguments]` runs one.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureInstalled } from './install.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const [name, ...rest] = process.argv.slice(2);

try {
  ensureInstalled(root);
  const { BENCHES, ensureBundle } = await import('./bundle.mjs');
  const out = await ensureBundle(root);
  for (const [each, words] of programs(BENCHES)) {
    const file = join(out, `${each}.mjs`);
    if (!existsSync(file)) throw new Error(`there is no program ${each}`);
    // One bench that misses its mark does not keep the others from being run.
    process.exitCode = (await runProgram(each, file, words)) || process.exitCode;
  }
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : error}\n`);
  process.exit(1);
}

/** The programs to run, each with its arguments. */
function programs(benches) {
  if (name !== 'bench') return [[name, rest]];
  if (rest.length === 0) return benches.map((each) => [`bench-${each}`, []]);
  if (!benches.includes(rest[0])) throw new Error(`there is no bench ${rest[0]}; there are ${benches.join(', ')}`);
  return [[`bench-${rest[0]}`, rest.slice(1)]];
}

/** Commands end by themselves; campaigns export `run`, the generator exports `main`. */
function runProgram(each, file, given) {
  const campaign = each.startsWith('bench-') || each === 'fuzz' || each === 'evaluate';
  const start = campaign ? 'run' : each === 'samples' ? 'main' : null;
  const code = `const m = await import(${JSON.stringify(`file://${file}`)}); await m.${start}(process.argv.slice(1));`;
  const words = start === null ? [file, ...given] : ['--expose-gc', '--input-type=module', '-e', code, '--', ...given];
  const child = spawn(process.execPath, ['--enable-source-maps', ...words], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  return new Promise((resolve) => child.on('exit', (code) => resolve(code ?? 1)));
}
