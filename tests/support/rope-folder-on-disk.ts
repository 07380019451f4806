import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/** A fresh folder with the given files; the caller need not clean up, the system's temporary folder is its own. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const root = mkdtempSync(join(tmpdir(), 'rope-'));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), content);
  }
  return root;
}

/** record.json of a short rope with one inspection of one run. */
export function shortRecord(changes: Readonly<Record<string, unknown>> = {}): string {
  return JSON.stringify({
    schema: 1, rope: { id: 'SYNTHETIC-T', application: 'funicular haul rope', construction: '6x19S-FC', diameter_mm: 30, length_m: 20 },
    inspections: [{ id: 'one', date: '2024-01-01', runs: [{ file: 'one.csv' }] }], ...changes,
  }, null, 1);
}

/** A scan of 20 m in 10 mm steps, the same every time. */
export function shortScan(): string {
  const rows = Array.from({ length: 2000 }, (_, i) => `${(i * 0.01).toFixed(2)},${(0.1 * Math.sin(i * 12.9898)).toFixed(3)},${(3 * Math.sin(i * 78.233)).toFixed(2)}`);
  return `position_m,lma_percent,lf_mv\n${rows.join('\n')}\n`;
}
