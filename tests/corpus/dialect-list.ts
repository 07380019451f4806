import { PLAIN } from './scan-text.ts';
import type { DialectChoice } from './scan-text.ts';

/** Dialects that instruments and spreadsheets write, as changes to the plain one. Contradictions (comma as both marks) are left out. */
export function dialectList(): DialectChoice[] {
  const list: DialectChoice[] = [];
  const add = (...changes: Partial<DialectChoice>[]) => { for (const change of changes) list.push({ ...PLAIN, ...change }); };
  for (const delimiter of [';', '\t', '|', ' ']) for (const decimal of ['.', ','] as const) add({ delimiter, decimal });
  for (const encoding of ['utf-8', 'utf-8-bom', 'utf-16le', 'utf-16be', 'utf-16le-bom', 'utf-16be-bom', 'windows-1252'] as const) {
    add({ encoding, preamble: 5 }, { encoding, delimiter: ';', decimal: ',', newline: '\r\n', header: 'unit-row', preamble: 3 });
  }
  for (const newline of ['\n', '\r\n', '\r'] as const) add({ newline, delimiter: ';', lastNewline: false }, { newline, delimiter: '\t', decimal: ',', header: 'unit-row' }, { newline, header: 'none' });
  for (const header of ['plain', 'bracket-units', 'unit-row', 'none', 'comment'] as const) add({ header }, { header, delimiter: ';', decimal: ',', preamble: header === 'comment' ? 2 : 6 }, { header, delimiter: ' ', quoted: 'none' });
  for (const thousands of ['.', ' ', "'", '\u00a0'] as const) add({ thousands, delimiter: ';', decimal: ',', encoding: thousands === '\u00a0' ? 'windows-1252' : 'utf-8' });
  add({ thousands: ',', delimiter: ';' }, { thousands: ',', quoted: 'all' }, { thousands: '\u00a0', delimiter: '\t', decimal: ',', encoding: 'utf-16le-bom' });
  for (const quoted of ['all', 'header'] as const) add({ quoted }, { quoted, delimiter: ';', decimal: ',' }, { quoted, delimiter: '\t', newline: '\r\n' });
  add({ decimal: ',', quoted: 'all' });
  add({ comments: true }, { repeatedHeader: true }, { totals: true }, { comments: true, repeatedHeader: true, totals: true, delimiter: ';', decimal: ',', preamble: 4, newline: '\r\n' });
  return list;
}
