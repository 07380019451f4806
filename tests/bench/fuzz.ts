import { pathToFileURL } from 'node:url';
import { readNotes } from '../../analysis/intake/read-notes.ts';
import { readRun } from '../../analysis/intake/read-run.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { UnusableInput } from '../../analysis/rope/problem.ts';
import { readRecord } from '../../analysis/rope/read-record.ts';
import { dialectList } from '../corpus/dialect-list.ts';
import { chance, encode, scanTable, writeScan } from '../corpus/scan-text.ts';
import { createHash, runRequest } from '../support/run-of.ts';

/**
 * Damaged input files: whatever is done to them, each is refused with reasons or read with numbers that stand in the file.
 * Seeded: one number names one damage, and `fuzz <count> <first>` repeats it.
 */
export interface Outcome {
  readonly seed: number;
  readonly kind: string;
  readonly result: 'read' | 'refused' | 'failed';
  readonly why: string;
  readonly milliseconds: number;
}

type Damage = (bytes: Uint8Array, random: () => number) => Uint8Array;
const pick = <T>(random: () => number, list: readonly T[]): T => list[Math.floor(random() * list.length)];
const upTo = (random: () => number, end: number) => Math.floor(random() * end);

function spliced(bytes: Uint8Array, at: number, remove: number, insert: Uint8Array): Uint8Array {
  const out = new Uint8Array(bytes.length - remove + insert.length);
  out.set(bytes.subarray(0, at));
  out.set(insert, at);
  out.set(bytes.subarray(at + remove), at + insert.length);
  return out;
}
const ascii = (text: string) => new TextEncoder().encode(text);

const DAMAGES: Readonly<Record<string, Damage>> = {
  flips: (bytes, random) => {
    const out = bytes.slice();
    for (let i = upTo(random, 40) + 1; i > 0; i -= 1) out[upTo(random, out.length)] ^= 1 << upTo(random, 8);
    return out;
  },
  noise: (bytes, random) => {
    const out = bytes.slice();
    const at = upTo(random, out.length);
    for (let i = at; i < Math.min(out.length, at + 300); i += 1) out[i] = upTo(random, 256);
    return out;
  },
  truncated: (bytes, random) => bytes.slice(0, upTo(random, bytes.length)),
  beheaded: (bytes, random) => bytes.slice(upTo(random, bytes.length)),
  swapped: (bytes, random) => {
    const other = writeScan(scanTable(300, upTo(random, 100), 0), pick(random, dialectList()));
    return spliced(bytes, upTo(random, bytes.length), 0, other);
  },
  doubled: (bytes) => spliced(bytes, bytes.length, 0, bytes),
  hugeField: (bytes, random) => spliced(bytes, upTo(random, bytes.length), 0, new Uint8Array(pick(random, [1000, 70_000, 1_500_000])).fill(pick(random, [48, 57, 65, 34, 45]))),
  quotes: (bytes, random) => spliced(bytes, upTo(random, bytes.length), 0, ascii(pick(random, ['"', '""""""', '"\n"\n"\n', '"'.repeat(5001), `"a${'""'.repeat(400)}`]))),
  delimiters: (bytes, random) => spliced(bytes, upTo(random, bytes.length), 0, ascii(pick(random, [';', ',', '\t', '|']).repeat(pick(random, [1, 3, 50_000])))),
  newlines: (bytes, random) => spliced(bytes, upTo(random, bytes.length), 0, ascii(pick(random, ['\n', '\r', '\r\r\n', '\u2028']).repeat(pick(random, [1, 5, 100_000])))),
  noLineEnds: (bytes) => bytes.map((byte) => (byte === 10 || byte === 13 ? 32 : byte)),
  wrongMark: (bytes, random) => spliced(bytes, 0, 0, pick(random, [Uint8Array.of(0xff, 0xfe), Uint8Array.of(0xfe, 0xff), Uint8Array.of(0xef, 0xbb, 0xbf), Uint8Array.of(0xff, 0xfe, 0, 0)])),
  shifted: (bytes, random) => spliced(bytes, upTo(random, bytes.length), 1, new Uint8Array(0)),
  commas: (bytes, random) => { const from = upTo(random, bytes.length); return bytes.map((byte, i) => (i > from && byte === 46 ? 44 : byte)); },
  words: (bytes, random) => {
    let out = bytes;
    for (let i = upTo(random, 8) + 1; i > 0; i -= 1) out = spliced(out, upTo(random, out.length), 0, ascii(pick(random, ['abc', 'NaN', '1e5', '--', '1e999', '0x10', 'Infinity', '=1+1', '\u0000', '-9999', '1.2.3', '12:30:01', '%', '#'])));
    return out;
  },
  exponents: (bytes, random) => spliced(bytes, upTo(random, bytes.length), 0, ascii('e'.repeat(pick(random, [1, 400])))),
  manyColumns: (_, random) => ascii(`${Array.from({ length: 3000 }, (__, i) => `c${i}`).join(',')}\n${Array.from({ length: 30 }, () => Array.from({ length: 3000 }, () => random().toFixed(3)).join(',')).join('\n')}\n`),
  hugePositions: (bytes, random) => spliced(bytes, upTo(random, bytes.length), 0, ascii(pick(random, ['\n1e300,1,1,1\n', '\n99999999999,1,1,1\n', '\n-1e12;1;1;1\n']))),
};

/** Damages one file by number, reads it, and judges what came out. */
export async function fuzzOne(seed: number): Promise<Outcome> {
  const random = chance(seed * 2654435761);
  for (let i = 0; i < 5; i += 1) random();
  const kinds = Object.keys(DAMAGES);
  const target = random();
  let started = performance.now();
  let read = 0;
  let kind = '';
  const outcome = (result: Outcome['result'], why: string): Outcome => ({ seed, kind, result, why, milliseconds: read || performance.now() - started });
  try {
    if (target < 0.12) { kind = 'record'; return outcome(...damagedRecord(random)); }
    if (target < 0.2) { kind = 'notes'; return outcome(...damagedNotes(random, kinds)); }
    const choice = pick(random, dialectList());
    let bytes = writeScan(scanTable(upTo(random, 900) + 100, seed, 0), choice);
    const damages = [pick(random, kinds), ...(random() < 0.3 ? [pick(random, kinds)] : [])];
    kind = damages.join('+');
    for (const damage of damages) bytes = DAMAGES[damage](bytes, random);
    started = performance.now();
    const result = await readRun(runRequest(bytes), { checkpoint: noCheckpoint, createHash });
    read = performance.now() - started;
    if ('problems' in result) return result.problems.length > 0 && result.problems.every((each) => each.what !== '' && each.remedy !== '') ? outcome('refused', result.problems[0].what) : outcome('failed', 'refused without a reason');
    const wrong = silentlyWrong(result.run, bytes);
    return wrong === null ? outcome('read', result.run.quality.map((each) => each.code).join(' ')) : outcome('failed', wrong);
  } catch (error) {
    return outcome('failed', `threw ${error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 3).join(' | ') : String(error)}`);
  }
}

/**
 * A slow and simple witness: every sample of an even run must stand in one line of the file, position, LMA and LF together,
 * under one reading of the decimal mark. It knows nothing of columns, headers or dialects.
 */
function silentlyWrong(run: { trace: { start: number; step: number; length: number; loss: { values: Float64Array; valid: Uint8Array } | null; fault: { values: Float64Array; valid: Uint8Array } | null }; understanding: { encoding: string; decimalMark: string; decisions: readonly string[]; columns: readonly { role: string; unit: string }[] } }, bytes: Uint8Array): string | null {
  const { trace, understanding } = run;
  if (![trace.start, trace.step].every(Number.isFinite) || !(trace.step > 0) || trace.length > 50_000_000) return 'absurd grid';
  for (const channel of [trace.loss, trace.fault]) if (channel) for (let i = 0; i < trace.length; i += 1) if (channel.valid[i] === 1 && !Number.isFinite(channel.values[i])) return 'a valid sample is not a number';
  if (understanding.decisions.some((each) => each.includes('interpolated')) || understanding.columns.some((each) => each.role === 'position' && each.unit !== 'm')) return null;
  if (understanding.columns.some((each) => each.role === 'lma' && each.unit !== '%')) return null;
  const text = new TextDecoder(understanding.encoding).decode(bytes);
  const lines = new Map<number, Set<number>[]>();
  for (const line of text.split(/[\r\n]+/)) {
    if (line.length > 60_000) continue;
    const numbers = new Set<number>();
    for (const token of line.matchAll(/[-+\u2212]?[\d.,' \u00a0]*\d[\d.,' \u00a0]*(?:e[-+]?\d+)?/gi)) for (const value of readings(token[0], understanding.decimalMark)) numbers.add(value);
    for (const value of numbers) {
      const key = Math.round(value * 1e6);
      const known = lines.get(key);
      if (known) known.push(numbers);
      else lines.set(key, [numbers]);
    }
  }
  const left = understanding.decisions.some((each) => each.includes('metallic area that is left'));
  const close = (set: Set<number>, value: number) => [...set].some((each) => Math.abs(Math.abs(each) - Math.abs(value)) < 1e-9 || (left && Math.abs(100 - Math.abs(each) - value) < 1e-9));
  const merged = run as unknown as { quality: readonly { code: string }[] };
  if (merged.quality.some((each) => each.code === 'stops' || each.code === 'duplicate-positions')) return null;
  for (let i = 0; i < trace.length; i += Math.max(1, Math.floor(trace.length / 400))) {
    const wanted = [trace.loss, trace.fault].flatMap((channel) => (channel && channel.valid[i] === 1 ? [channel.values[i]] : []));
    if (wanted.length === 0) continue;
    const at = Math.round((trace.start + i * trace.step) * 1e6);
    // A grid laid through rounded positions passes each within its rounding: all lines near it may be the witness.
    const near: Set<number>[] = [];
    for (let key = at - 1100; key <= at + 1100; key += 1) for (const set of lines.get(key) ?? []) near.push(set);
    if (!near.some((set) => wanted.every((value) => close(set, value)))) return `no line of the file shows position ${(at / 1e6).toFixed(6)} with ${wanted.join(' and ')}`;
  }
  return null;
}

function readings(token: string, decimal: string): number[] {
  const trimmed = token.trim().replace('\u2212', '-');
  const found: number[] = [];
  const parts = new Set([trimmed, ...trimmed.split(/[;\s]+/), ...(decimal === '.' ? trimmed.split(',') : [])]);
  for (const part of parts) {
    const other = decimal === '.' ? ',' : '.';
    for (const plain of [part, part.replaceAll(other, ''), part.replace(/['\s\u00a0]/g, ''), part.replaceAll(other, '').replace(/['\s\u00a0]/g, '')]) {
      const value = Number(plain.replace(decimal, '.'));
      if (plain !== '' && Number.isFinite(value)) found.push(value);
    }
  }
  return found;
}

const RECORD = JSON.stringify({ schema: 1, rope: { id: 'R1', length_m: 100, diameter_mm: 20 }, landmarks: [{ name: 'socket A', position_m: 0 }], events: [{ date: '2024-01-01', kind: 'shortened', end: 'A', length_m: 2 }], inspections: [{ id: 'i1', date: '2024-02-02', runs: [{ file: 'runs/a.csv', columns: { position: { name: 'Pos', unit: 'm' } } }], notes: 'notes.csv' }, { id: 'i2', date: '2023-02-02', runs: [{ file: 'b.csv' }] }] }, null, 1);

function damagedRecord(random: () => number): ['read' | 'refused' | 'failed', string] {
  const tricks = ['../x.csv', '/etc/x.csv', 'C:\\\\x.csv', 'a/../../x', 'file:///x', '\\\\\\\\host\\\\x', '', '.', 'a\\u0000b'];
  let text = random() < 0.5 ? RECORD.replace('b.csv', pick(random, tricks)) : RECORD;
  if (random() < 0.3) text = text.replace('"length_m": 100', pick(random, ['"length_m": "100"', '"length_m": -5', '"length_m": 1e999', '"length_m": null', '"length_m": [[[[]]]]', `"length_m": ${'['.repeat(5000)}${']'.repeat(5000)}`, '"length_m": 1, "length_m": 2', '"__proto__": {"loop": true}, "length_m": 3']));
  let bytes: Uint8Array = encode(text, pick(random, ['utf-8', 'utf-8-bom', 'utf-16le-bom', 'utf-16be']));
  if (random() < 0.6) bytes = pick(random, [DAMAGES.flips, DAMAGES.truncated, DAMAGES.quotes, DAMAGES.words, DAMAGES.noise, DAMAGES.wrongMark])(bytes, random);
  try {
    const record = readRecord(bytes, 'record.json');
    const names = record.inspections.flatMap((each) => [...each.runs.map((run) => run.file), each.notes ?? 'x']);
    if (names.some((name) => name.split(/[\\/]/).includes('..') || /^([\\/]|[A-Za-z]:)/.test(name))) return ['failed', `a name leaves the folder: ${names.join(' ')}`];
    return ['read', ''];
  } catch (error) {
    if (error instanceof UnusableInput && error.problems.length > 0) return ['refused', error.problems[0].what];
    throw error;
  }
}

function damagedNotes(random: () => number, kinds: readonly string[]): ['read' | 'refused' | 'failed', string] {
  const text = `position_m,kind,value,unit,severity,photo,remark\n${Array.from({ length: 30 }, (_, i) => `${(i * 1.5).toFixed(1)},broken-wires,${i % 4},wires,,p${i}.jpg,"said, ""seen"""`).join('\n')}\n`;
  const { notes, problems } = readNotes(DAMAGES[pick(random, kinds)](encode(text, 'utf-8'), random), 'notes.csv', 'i1');
  if (notes.some((each) => !Number.isFinite(each.from) || each.from > each.to)) return ['failed', 'a note without a place'];
  return problems.length > 0 ? ['refused', problems[0].what] : ['read', ''];
}

export async function run(args: string[]): Promise<void> {
  const [count, first] = [Number(args[0] ?? 10_000), Number(args[1] ?? 1)];
  const tally = new Map<string, number>();
  const failures: Outcome[] = [];
  let slowest: Outcome | null = null;
  for (let seed = first; seed < first + count; seed += 1) {
    const outcome = await fuzzOne(seed);
    tally.set(outcome.result, (tally.get(outcome.result) ?? 0) + 1);
    if (slowest === null || outcome.milliseconds > slowest.milliseconds) slowest = outcome;
    if (outcome.result === 'failed' || outcome.milliseconds > 5000) failures.push(outcome);
  }
  const print = (text: string) => process.stdout.write(`${text}\n`);
  print(`${count} damaged files: ${[...tally].map(([result, n]) => `${n} ${result}`).join(', ')}; slowest ${slowest?.milliseconds.toFixed(0)} ms (${slowest?.kind}, seed ${slowest?.seed})`);
  for (const each of failures.slice(0, 40)) print(`seed ${each.seed} ${each.kind}: ${each.why} (${each.milliseconds.toFixed(0)} ms)`);
  if (failures.length > 0) process.exitCode = 1;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) void run(process.argv.slice(2));
