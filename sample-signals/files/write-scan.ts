import type { Scan } from '../signal/make-scan.ts';

/** How an instrument writes its file. */
export interface Dialect {
  readonly encoding: 'utf-8' | 'utf-16le';
  readonly delimiter: ',' | ';' | '\t';
  readonly decimalMark: '.' | ',';
  readonly header: readonly string[];
  readonly columns: readonly ('position' | 'loss' | 'fault' | 'speed')[];
  /** Written position = metres times this. */
  readonly positionFactor: number;
  readonly positionDecimals: number;
  /** -1 where the instrument writes a loss as a negative change of area. */
  readonly lossSign: 1 | -1;
  readonly faultDecimals: number;
  readonly lineEnd: '\n' | '\r\n';
}

/** Rows that the instrument leaves without a value, as at a socket: [first, end). */
export interface Dropout {
  readonly from: number;
  readonly to: number;
}

/** Bytes of a scan file. The preamble says SYNTHETIC before any number. */
export function writeScan(scan: Scan, dialect: Dialect, preamble: readonly string[], dropouts: readonly Dropout[] = []): Uint8Array {
  const number = (value: number, decimals: number): string => {
    const text = value.toFixed(decimals);
    const plain = Number(text) === 0 ? (0).toFixed(decimals) : text;
    return dialect.decimalMark === '.' ? plain : plain.replace('.', ',');
  };
  const cell = {
    position: (i: number) => number(scan.readings[i] * dialect.positionFactor, dialect.positionDecimals),
    loss: (i: number) => number(dialect.lossSign * scan.loss[i], 2),
    fault: (i: number) => number(scan.fault[i], dialect.faultDecimals),
    speed: (i: number) => number(scan.speed[i], 2),
  };
  const lines = [...preamble.map((line) => `# ${line}`), dialect.header.join(dialect.delimiter)];
  for (let i = 0; i < scan.readings.length; i += 1) {
    const silent = dropouts.some((gap) => i >= gap.from && i < gap.to);
    lines.push(dialect.columns.map((column) => (silent && column !== 'position' ? '' : cell[column](i))).join(dialect.delimiter));
  }
  return encode(lines.join(dialect.lineEnd) + dialect.lineEnd, dialect.encoding);
}

export function encode(text: string, encoding: Dialect['encoding']): Uint8Array {
  if (encoding === 'utf-8') return new TextEncoder().encode(text);
  const bytes = new Uint8Array(2 + 2 * text.length);
  bytes[0] = 0xff;
  bytes[1] = 0xfe;
  for (let i = 0; i < text.length; i += 1) {
    const unit = text.charCodeAt(i);
    bytes[2 + 2 * i] = unit & 0xff;
    bytes[3 + 2 * i] = unit >> 8;
  }
  return bytes;
}

/** Plain file of three columns in metres, percent and millivolts. */
export const PLAIN: Dialect = {
  encoding: 'utf-8', delimiter: ',', decimalMark: '.', header: ['Position [m]', 'LMA [%]', 'LF [mV]'], columns: ['position', 'loss', 'fault'],
  positionFactor: 1, positionDecimals: 2, lossSign: 1, faultDecimals: 0, lineEnd: '\n',
};
