import { readFileSync } from 'node:fs';

/** Second column of a two-column CSV under tests/published/data. */
export function readSeries(name: string): Float64Array {
  const rows = readFileSync(new URL(`../published/data/${name}`, import.meta.url), 'utf8').trim().split('\n').slice(1);
  return Float64Array.from(rows, (row) => Number(row.split(',')[1]));
}
