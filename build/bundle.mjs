// Bundles the Node side into dist/, only when a source is newer than the bundle, into a fresh folder that is then renamed:
// two commands started together never see half a bundle.
import { build } from 'esbuild';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = ['analysis', 'main', 'sample-signals', 'tests/bench', 'tests/support', 'build', 'package.json', 'package-lock.json'];
const SKIP = new Set(['node_modules', 'generated']);

/** Name of the bundle -> entry file. An entry that does not exist is left out. */
const ENTRIES = {
  assess: 'main/command/assess.ts',
  section: 'main/command/section.ts',
  worker: 'main/command/worker.ts',
  loopback: 'main/loopback/serve.ts',
  desktop: 'main/desktop/main.ts',
  samples: 'sample-signals/generate.ts',
  'bench-intake': 'tests/bench/intake.ts',
  'bench-condition': 'tests/bench/condition.ts',
  'bench-alignment': 'tests/bench/alignment.ts',
  'bench-criteria': 'tests/bench/criteria.ts',
  'bench-life': 'tests/bench/life-coverage.ts',
  fuzz: 'tests/bench/fuzz.ts',
  evaluate: 'tests/bench/evaluate.ts',
};

/** What `npm run bench` may be asked for, in the order in which it runs them all. */
export const BENCHES = Object.keys(ENTRIES).filter((name) => name.startsWith('bench-')).map((name) => name.slice('bench-'.length));

export async function ensureBundle(root) {
  const out = join(root, 'dist', 'node');
  const newest = Math.max(...SOURCES.map((each) => newestIn(join(root, each))));
  if (existsSync(out) && statSync(out).mtimeMs > newest) return out;
  const fresh = join(root, 'dist', `node-${process.pid}`);
  mkdirSync(fresh, { recursive: true });
  await build({
    absWorkingDir: root,
    entryPoints: Object.fromEntries(Object.entries(ENTRIES).filter(([, file]) => existsSync(join(root, file)))),
    outdir: fresh, outExtension: { '.js': '.mjs' }, bundle: true, splitting: true, platform: 'node', target: 'node20', format: 'esm', logLevel: 'warning', sourcemap: 'linked', external: ['electron'],
    // Packages written as CommonJS find the names they expect.
    banner: { js: "import { createRequire as makeRequire } from 'node:module'; import { fileURLToPath as toFile } from 'node:url'; import { dirname as folderOf } from 'node:path'; const require = makeRequire(import.meta.url); const __filename = toFile(import.meta.url); const __dirname = folderOf(__filename);" },
  });
  // A sandboxed preload must be one CommonJS file.
  await build({ absWorkingDir: root, entryPoints: ['main/desktop/preload.ts'], outfile: join(fresh, 'preload.cjs'), bundle: true, platform: 'node', target: 'node20', format: 'cjs', external: ['electron'], logLevel: 'warning' });
  swap(fresh, out, `${fresh}-old`);
  return out;
}

function swap(fresh, out, old) {
  try {
    if (existsSync(out)) renameSync(out, old);
    renameSync(fresh, out);
  } catch {
    // Another command was faster: its bundle is as new as ours.
    rmSync(fresh, { recursive: true, force: true });
  }
  rmSync(old, { recursive: true, force: true });
}

function newestIn(path) {
  if (!existsSync(path)) return 0;
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).filter((name) => !SKIP.has(name) && !name.endsWith('.csv')).reduce((newest, name) => Math.max(newest, newestIn(join(path, name))), stat.mtimeMs);
}
