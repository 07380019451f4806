import { execFileSync } from 'node:child_process';
import { createHash as nodeHash } from 'node:crypto';
import { createReadStream, createWriteStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { hashedPieces, narrowPieces, takeHead } from '../../analysis/intake/byte-source.ts';
import { HEAD_BYTES, dialectOf, readRun } from '../../analysis/intake/read-run.ts';
import { readRows } from '../../analysis/intake/read-rows.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { chance, normal } from '../corpus/scan-text.ts';

/** Intake against pandas.read_csv (C engine) on the same file in the same run; peak memory; growth with the count of rows. */
const createHash = () => {
  const hash = nodeHash('sha256');
  return { update: (bytes: Uint8Array) => { hash.update(bytes); }, digest: () => hash.digest('hex') };
};

async function writeScanFile(file: string, rows: number): Promise<void> {
  const out = createWriteStream(file);
  const random = chance(rows);
  out.write('Time [s],Position [m],LMA [%],LF [mV],Speed [m/s]\n');
  for (let from = 0; from < rows; from += 20_000) {
    let text = '';
    for (let i = from; i < Math.min(rows, from + 20_000); i += 1) {
      text += `${(i * 0.002).toFixed(3)},${(i * 0.002).toFixed(3)},${(0.2 * normal(random)).toFixed(4)},${(30 * normal(random)).toFixed(6)},${(1 + 0.01 * normal(random)).toFixed(6)}\n`;
    }
    if (!out.write(text)) await new Promise<void>((resolve) => { out.once('drain', () => resolve()); });
  }
  await new Promise<void>((resolve) => { out.end(resolve); });
}

/** All five columns into Float64Arrays, streamed from disk: the work that pandas.read_csv does. */
async function readAll(file: string): Promise<number> {
  const size = statSync(file).size;
  const pieces = hashedPieces(createReadStream(file, { highWaterMark: 1 << 20 }), size, { update: () => {}, digest: () => '' }, noCheckpoint);
  const head = await takeHead(pieces, HEAD_BYTES);
  const dialect = dialectOf(head, file);
  const slots = dialect.names.map((_, index) => ({ index, clock: false, needed: false }));
  const { encoding, markLength } = dialect.encoding;
  const rows = await readRows(narrowPieces(head, pieces, encoding, markLength), dialect, slots, size, file);
  return rows.table.rows;
}

/** The whole of readRun on the same file: hash, dialect, numbers, even grid, masks, findings. */
async function readWhole(file: string): Promise<number> {
  const size = statSync(file).size;
  const result = await readRun({ file: 'scan.csv', bytes: createReadStream(file, { highWaterMark: 1 << 20 }), size, columns: undefined, direction: undefined, ropeLength: null, metallicArea: null, ropeDiameter: null }, { checkpoint: noCheckpoint, createHash });
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result.run.rows;
}

const PANDAS = 'import sys,time,pandas;pandas.read_csv(sys.argv[1],nrows=1000);t=time.perf_counter();c=time.process_time();pandas.read_csv(sys.argv[1],engine="c");print(time.perf_counter()-t,time.process_time()-c)';
const median = (values: number[]) => [...values].sort((a, b) => a - b)[values.length >> 1];

/** One measurement in a process of its own, so that peak memory is this reading's and nothing else's. */
function measure(kind: string, file: string): { seconds: number; cpu: number; peakMb: number; baseMb: number; rows: number } {
  const out = execFileSync(process.execPath, ['--import', 'tsx', import.meta.filename, 'child', kind, file], { encoding: 'utf8' });
  return JSON.parse(out);
}

async function child(kind: string, file: string): Promise<void> {
  const work = kind === 'numbers' ? readAll : readWhole;
  const warm = `${file}.warm`;
  await work(warm);
  const base = process.memoryUsage().rss;
  let peak = base;
  const timer = setInterval(() => { peak = Math.max(peak, process.memoryUsage().rss); }, 5);
  const cpuBefore = process.cpuUsage();
  const started = performance.now();
  const rows = await work(file);
  const seconds = (performance.now() - started) / 1000;
  const spent = process.cpuUsage(cpuBefore);
  clearInterval(timer);
  peak = Math.max(peak, process.memoryUsage().rss);
  process.stdout.write(JSON.stringify({ seconds, cpu: (spent.user + spent.system) / 1e6, peakMb: peak / 1e6, baseMb: base / 1e6, rows }));
}

export async function run(args: string[]): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'intake-bench-'));
  const print = (text: string) => process.stdout.write(`${text}\n`);
  try {
    const sizes = args.includes('--short') ? [100_000] : args.some((each) => /^\d+$/.test(each)) ? args.filter((each) => /^\d+$/.test(each)).map(Number) : [100_000, 1_000_000, 2_000_000, 10_000_000];
    for (const rows of sizes) {
      const file = join(folder, `${rows}.csv`);
      await writeScanFile(file, rows);
      await writeScanFile(`${file}.warm`, 50_000);
      const repeats = rows > 2_000_000 ? 1 : 5;
      const seconds = { numbers: [] as number[], whole: [] as number[], pandas: [] as number[], numbersCpu: [] as number[], pandasCpu: [] as number[] };
      let memory = 0;
      let wholeMemory = 0;
      for (let i = 0; i < repeats; i += 1) {
        try {
          const [wall, cpu] = execFileSync('/usr/bin/python3', ['-c', PANDAS, file], { encoding: 'utf8' }).split(' ').map(Number);
          seconds.pandas.push(wall);
          seconds.pandasCpu.push(cpu);
        } catch { /* without pandas the ratio is left out */ }
        const numbers = measure('numbers', file);
        seconds.numbers.push(numbers.seconds);
        seconds.numbersCpu.push(numbers.cpu);
        memory = Math.max(memory, numbers.peakMb - numbers.baseMb);
        const whole = measure('whole', file);
        seconds.whole.push(whole.seconds);
        wholeMemory = Math.max(wholeMemory, whole.peakMb - whole.baseMb);
      }
      const own = (rows * 5 * 8) / 1e6;
      const pandas = seconds.pandas.length > 0 ? median(seconds.pandas) : NaN;
      print(`${rows} rows x 5, ${(statSync(file).size / 1e6).toFixed(1)} MB: numbers ${median(seconds.numbers).toFixed(3)} s = ${(median(seconds.numbers) / pandas).toFixed(2)} x pandas (${pandas.toFixed(3)} s), ${(1e9 * median(seconds.numbers) / rows).toFixed(0)} ns a row (processor time ${(median(seconds.numbersCpu) / (seconds.pandasCpu.length > 0 ? median(seconds.pandasCpu) : NaN)).toFixed(2)} x pandas), peak ${memory.toFixed(0)} MB = ${(memory / own).toFixed(2)} x the numbers; whole run ${median(seconds.whole).toFixed(3)} s = ${(median(seconds.whole) / pandas).toFixed(2)} x pandas, peak ${wholeMemory.toFixed(0)} MB = ${(wholeMemory / own).toFixed(2)} x`);
      rmSync(file);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  if (process.argv[2] === 'child') void child(process.argv[3], process.argv[4]);
  else void run(process.argv.slice(2));
}
