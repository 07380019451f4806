/** Scans as text in many dialects, from one table of decimal numbers: the same numbers must come out of every one of them. */
export interface ScanTable {
  /** Decimal text with a point, so that the expected number is Number(text) and nothing else. */
  readonly rows: readonly (readonly string[])[];
  readonly names: readonly string[];
  readonly units: readonly string[];
}

export type TextEncodingName = 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'utf-16be' | 'utf-16le-bom' | 'utf-16be-bom' | 'windows-1252';

export interface DialectChoice {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  readonly newline: '\n' | '\r\n' | '\r';
  readonly encoding: TextEncodingName;
  readonly header: 'plain' | 'bracket-units' | 'unit-row' | 'none' | 'comment';
  readonly preamble: number;
  readonly quoted: 'none' | 'all' | 'header';
  readonly thousands: '' | '.' | ',' | ' ' | "'" | '\u00a0';
  readonly comments: boolean;
  readonly repeatedHeader: boolean;
  readonly totals: boolean;
  readonly lastNewline: boolean;
}

export const PLAIN: DialectChoice = { delimiter: ',', decimal: '.', newline: '\n', encoding: 'utf-8', header: 'bracket-units', preamble: 0, quoted: 'none', thousands: '', comments: false, repeatedHeader: false, totals: false, lastNewline: true };

/** Repeatable numbers in [0, 1): a linear congruential generator (Numerical Recipes constants). */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** A scan of `count` samples every 5 mm with one length of loss, noise and some pulses. */
export function scanTable(count: number, seed: number, from = 1200): ScanTable {
  const random = chance(seed);
  const rows: string[][] = [];
  for (let i = 0; i < count; i += 1) {
    const share = i / count;
    const loss = (share > 0.4 && share < 0.6 ? 3 : 0) + 0.1 * normal(random);
    const fault = 12 * normal(random) + (i % 211 === 0 ? 2400.5 : 0);
    rows.push([(from + i * 0.005).toFixed(3), loss.toFixed(4), fault.toFixed(2), (1 + 0.01 * random()).toFixed(3)]);
  }
  return { rows, names: ['Position', 'LMA', 'LF', 'Speed'], units: ['m', '%', 'mV', 'm/s'] };
}

export function writeScan(table: ScanTable, choice: DialectChoice): Uint8Array {
  const { delimiter, newline } = choice;
  const quote = (cell: string, on: boolean) => (on ? `"${cell}"` : cell);
  const names = table.names.map((name, i) => (choice.header === 'bracket-units' ? `${name} [${table.units[i]}]` : name));
  const header = names.map((name) => quote(name, choice.quoted !== 'none')).join(delimiter);
  const lines: string[] = [];
  for (let i = 0; i < choice.preamble; i += 1) lines.push(['Rope test record', 'Diameter: 32 mm', 'Überprüfung Prüfgerät 7', '', 'Operator: N. N.', 'Gain 2'][i % 6]);
  if (choice.header === 'comment') lines.push(`# ${header}`);
  else if (choice.header !== 'none') lines.push(header);
  if (choice.header === 'unit-row') lines.push(table.units.map((unit) => `[${unit}]`).join(delimiter));
  table.rows.forEach((row, i) => {
    if (choice.comments && i === 30) lines.push('# speed raised');
    if (choice.repeatedHeader && i > 0 && i % 100 === 0) lines.push(header);
    lines.push(row.map((text) => quote(localised(text, choice), choice.quoted === 'all')).join(delimiter));
  });
  if (choice.totals) lines.push(['Total', ...table.rows[0].slice(1).map(() => localised('12345.5', choice))].join(delimiter));
  return encode(lines.join(newline) + (choice.lastNewline ? newline : ''), choice.encoding);
}

function localised(text: string, { decimal, thousands }: DialectChoice): string {
  const [, sign, whole, fraction] = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text)!;
  const grouped = thousands === '' ? whole : whole.replace(/\B(?=(\d{3})+$)/g, thousands);
  return sign + grouped + (fraction === undefined ? '' : decimal + fraction);
}

export function encode(text: string, encoding: TextEncodingName): Uint8Array {
  const marked = encoding.endsWith('-bom') ? `\ufeff${text}` : text;
  if (encoding.startsWith('utf-8')) return new TextEncoder().encode(marked);
  if (encoding === 'windows-1252') return Uint8Array.from(marked, (char) => (char.charCodeAt(0) < 256 ? char.charCodeAt(0) : 63));
  const bytes = new Uint8Array(2 * marked.length);
  const big = encoding.startsWith('utf-16be');
  for (let i = 0; i < marked.length; i += 1) {
    const code = marked.charCodeAt(i);
    bytes[2 * i] = big ? code >> 8 : code & 255;
    bytes[2 * i + 1] = big ? code & 255 : code >> 8;
  }
  return bytes;
}
