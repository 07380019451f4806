import { describe, expect, it } from 'vitest';
import { makeRecipe, previewRun, recipeFor } from '../../analysis/intake/preview.ts';
import type { RunPreview } from '../../analysis/intake/preview.ts';
import { columnsSchema } from '../../analysis/rope/record.ts';
import { PLAIN, scanTable, writeScan } from '../corpus/scan-text.ts';
import { runOf } from '../support/run-of.ts';

const table = scanTable(2000, 3, 0);
function preview(bytes: Uint8Array, columns?: Parameters<typeof previewRun>[2]): RunPreview {
  const found = previewRun(bytes, 'scan.csv', columns);
  if (!('rows' in found)) throw new Error(found.problems[0].what);
  return found;
}

describe('preview for the import screen', () => {
  it('shows the first rows, a guess with its reason for every column, and a strip for each', () => {
    const shown = preview(writeScan(table, { ...PLAIN, preamble: 4 }));
    expect(shown.rows[0]).toEqual(table.rows[0]);
    expect(shown.understanding.columns.map((each) => each.role)).toEqual(['position', 'lma', 'lf', 'speed']);
    expect(shown.understanding.columns.every((each) => each.reason !== '')).toBe(true);
    expect(shown.preamble).toHaveLength(4);
    expect(shown.strips.every((strip) => strip !== null && strip.low.length > 100 && strip.low.length <= 300)).toBe(true);
    expect(shown.problems).toEqual([]);
  });

  it('shows a file whose columns it cannot tell, together with what stands in the way', () => {
    const shown = preview(writeScan({ ...table, names: ['a', 'b', 'c', 'd'], units: ['', '', '', ''], rows: table.rows.map((row) => [row[0], row[2], row[2], row[2]]) }, { ...PLAIN, header: 'plain' }));
    expect(shown.rows).toHaveLength(40);
    expect(shown.problems[0].remedy).toContain('columns');
  });

  it('remembers a choice of columns for the next file of the same make, and only for that', async () => {
    const odd = { ...table, names: ['ch0', 'ch1', 'ch2', 'ch3'], units: ['', '', '', ''] };
    const first = preview(writeScan(odd, { ...PLAIN, header: 'plain' }));
    const columns = columnsSchema.parse({ position: { name: 'ch0', unit: 'm' }, lma: { name: 'ch1', unit: '%', loss_is: 'positive' }, lf: { name: 'ch2' } });
    const recipe = makeRecipe('Instrument 7', first, columns);
    const next = writeScan({ ...odd, rows: scanTable(1500, 4, 0).rows }, { ...PLAIN, header: 'plain' });
    expect(recipeFor([recipe], preview(next))).toBe(recipe);
    expect(recipeFor([recipe], preview(writeScan(table, PLAIN)))).toBeNull();
    expect((await runOf(next, { columns: recipe.columns })).understanding.columns.map((each) => each.certainty).slice(0, 2)).toEqual([1, 1]);
  });

  it('refuses what is no table', () => expect(previewRun(new TextEncoder().encode('hello\n'), 'x.csv')).toHaveProperty('problems'));
});
