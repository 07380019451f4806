// node build/run.mjs NAME [arguments]: installs and bundles what is missing, then runs one bundled program.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureInstalled } from './install.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const [name, ...rest] = process.argv.slice(2);

try {
  ensureInstalled(root);
  const { ensureBundle } = await import('./bundle.mjs');
  const out = await ensureBundle(root);
  const names = name === 'bench' ? ['bench-intake', 'bench-condition', 'bench-alignment', 'bench-life'] : [name];
  for (const each of names) {
    const file = join(out, `${each}.mjs`);
    if (!existsSync(file)) throw new Error(`there is no program ${each}`);
    const code = await runProgram(each, file);
    if (code !== 0) process.exit(code);
  }
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : error}\n`);
  process.exit(1);
}

/** Commands end by themselves; campaigns export `run`, the generator exports `main`. */
function runProgram(each, file) {
  const campaign = each.startsWith('bench-') || each === 'fuzz' || each === 'evaluate';
  const start = campaign ? 'run' : each === 'samples' ? 'main' : null;
  const code = `const m = await import(${JSON.stringify(`file://${file}`)}); await m.${start}(process.argv.slice(1));`;
  const words = start === null ? [file, ...rest] : ['--expose-gc', '--input-type=module', '-e', code, '--', ...rest];
  const child = spawn(process.execPath, ['--enable-source-maps', ...words], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  return new Promise((resolve) => child.on('exit', (code) => resolve(code ?? 1)));
}
