import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { narrowPieces } from '../../analysis/intake/byte-source.ts';
import { parseNumber } from '../../analysis/intake/parse-cell.ts';
import { readRows } from '../../analysis/intake/read-rows.ts';
import { dialectOf } from '../../analysis/intake/read-run.ts';
import { recogniseColumns } from '../../analysis/intake/recognise-columns.ts';
import { dialectList } from '../corpus/dialect-list.ts';
import { PLAIN, scanTable, writeScan } from '../corpus/scan-text.ts';
import { runOf } from '../support/run-of.ts';

const table = scanTable(3000, 7, 0);
const grouped = scanTable(3000, 8, 1190);
const choices = dialectList();

async function* inPieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}

describe('dialects', () => {
  it('covers at least forty combinations', () => expect(choices.length).toBeGreaterThanOrEqual(40));

  it.each(choices.map((choice, index) => [index, JSON.stringify(choice), choice] as const))('dialect %i %s reads to the exact numbers', async (_, __, choice) => {
    const source = choice.thousands === '' ? table : grouped;
    const run = await runOf(writeScan(source, choice));
    expect(run.rows).toBe(source.rows.length);
    expect(run.rowsRejected).toBe(0);
    const { trace } = run;
    expect(trace.length).toBe(source.rows.length);
    expect(trace.step).toBe(0.005);
    expect(trace.start).toBe(Number(source.rows[0][0]));
    expect([...trace.loss!.values]).toEqual(source.rows.map((row) => Number(row[1])));
    expect([...trace.fault!.values]).toEqual(source.rows.map((row) => Number(row[2])));
    expect(trace.loss!.valid.every((flag) => flag === 1)).toBe(true);
  });

  it.each(choices.map((choice, index) => [index, JSON.stringify(choice), choice] as const))('dialect %i %s: scanner, careful reader and Papa Parse agree to the bit', async (_, __, choice) => {
    const source = choice.thousands === '' ? table : grouped;
    const bytes = writeScan({ ...source, rows: source.rows.slice(1000, 1500) }, choice);
    const dialect = dialectOf(bytes, 'scan.csv');
    const found = recogniseColumns(dialect, undefined, 'scan.csv').columnOf;
    const indexes = [found.position!, found.lma!, found.lf!];
    const slots = indexes.map((index, n) => ({ index, clock: false, needed: n === 0 }));
    const read = async (fast: boolean) => {
      const { encoding, markLength } = dialect.encoding;
      const rows = await readRows(narrowPieces(bytes, inPieces(new Uint8Array(0), 1), encoding, markLength), dialect, slots, null, 'scan.csv', fast);
      return rows.table.columns.map((column) => [...column.subarray(0, rows.table.rows)]);
    };
    const quick = await read(true);
    expect(quick).toEqual(await read(false));
    const { encoding, markLength } = dialect.encoding;
    const text = new TextDecoder(encoding).decode(bytes.subarray(markLength));
    const parsed = Papa.parse<string[]>(text, { delimiter: choice.delimiter, newline: choice.newline, skipEmptyLines: true }).data
      .map((cells) => indexes.map((index) => parseNumber(cells[index] ?? '', choice.decimal))).filter((cells) => cells.every((value) => value !== null));
    expect(indexes.map((_index, n) => parsed.map((cells) => cells[n]))).toEqual(quick);
  });

  it('reads the same from pieces of any size', async () => {
    const bytes = writeScan(table, { ...PLAIN, delimiter: ';', decimal: ',', newline: '\r\n', preamble: 4 });
    const whole = await runOf(bytes);
    for (const size of [1, 7, 64, 1000, 65_536]) {
      const pieced = await runOf(inPieces(size === 1 ? bytes.slice(0, 20_000) : bytes, size), { size: bytes.length });
      if (size === 1) expect(pieced.rows).toBeGreaterThan(500);
      else {
        expect(pieced.sha256).toBe(whole.sha256);
        expect([...pieced.trace.loss!.values]).toEqual([...whole.trace.loss!.values]);
      }
    }
  });
});
