import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createTable } from '../../analysis/intake/number-table.ts';
import { scanRows } from '../../analysis/intake/scan-rows.ts';

/** Slow and obvious twin of the byte scanner: split, trim, Number. */
const decimalText = fc.tuple(fc.constantFrom('', '-', '+'), fc.stringMatching(/^\d{0,12}$/), fc.option(fc.stringMatching(/^\d{0,12}$/), { nil: undefined })).map(([sign, whole, fraction]) => `${sign}${whole}${fraction === undefined ? '' : `.${fraction}`}`);
const row = fc.array(fc.oneof({ weight: 20, arbitrary: decimalText }, { weight: 1, arbitrary: fc.constantFrom('', 'NaN', '1e5', '"1.5"', 'x', ' 2.5 ', '1.5.2', '--1') }), { minLength: 3, maxLength: 3 });

it('every number that the scanner takes equals Number(text) to the last bit, and every other row is handed on', () => {
  fc.assert(fc.property(fc.array(row, { minLength: 1, maxLength: 20 }), fc.constantFrom('\n', '\r\n'), (rows, newline) => {
    const text = rows.map((cells) => cells.join(';')).join(newline) + newline;
    const bytes = new TextEncoder().encode(text);
    const table = createTable(3, 4);
    const handedOn: string[] = [];
    const lines = scanRows(bytes, 0, bytes.length, { delimiter: 59, decimal: 46, newline: 10, targets: Int32Array.of(0, 1, 2) }, table, (start, end) => handedOn.push(text.slice(start, end).trimEnd()));
    expect(lines).toBe(rows.length);
    const plain = (cell: string) => /^ *[-+]?(\d+\.?\d*|\.\d+) *$/.test(cell) && cell.replace(/\D/g, '').length <= 15;
    const taken = rows.filter((cells) => cells.every(plain));
    expect(table.rows).toBe(taken.length);
    expect(handedOn).toEqual(rows.filter((cells) => !cells.every(plain)).map((cells) => cells.join(';').trimEnd()));
    taken.forEach((cells, i) => cells.forEach((cell, c) => expect(Object.is(table.columns[c][i], Number(cell))).toBe(true)));
  }), { numRuns: 2000, seed: 20260101 });
});
