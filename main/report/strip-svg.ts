import type { StripFigure } from '../../analysis/report/document.ts';
import { escape } from './escape.ts';

const WIDTH = 960;
const HEIGHT = 210;
const LEFT = 56;
const BOTTOM = 34;
const TOP = 26;
/** Okabe and Ito's palette, safe for colour-blind readers; dashes tell the lines apart in black and white. */
const LINES = [{ colour: '#0072b2', dash: '' }, { colour: '#d55e00', dash: '4 2' }];

/** A strip by rope position; hatched where NOT INSPECTED. */
export function stripSvg(figure: StripFigure): string {
  const highs = figure.lines.flatMap((line) => line.columns.map((column) => column.high));
  const lows = figure.lines.flatMap((line) => line.columns.map((column) => column.low));
  const top = Math.max(...highs, 0.1);
  const bottom = Math.min(...lows, 0);
  const x = (at: number) => LEFT + ((at - figure.from) / (figure.to - figure.from)) * (WIDTH - LEFT - 8);
  const y = (value: number) => TOP + ((top - value) / (top - bottom)) * (HEIGHT - TOP - BOTTOM);
  const hatch = figure.notInspected.map((each) => `<rect x="${x(Math.max(each.from, figure.from)).toFixed(1)}" y="${TOP}" width="${Math.max(1, x(Math.min(each.to, figure.to)) - x(Math.max(each.from, figure.from))).toFixed(1)}" height="${HEIGHT - TOP - BOTTOM}" fill="url(#unseen)"><title>NOT INSPECTED</title></rect>`).join('');
  const lines = figure.lines.map((line, index) => {
    const { colour, dash } = LINES[index % LINES.length];
    const path = line.columns.map((column) => `M${x(column.at).toFixed(1)} ${y(column.low).toFixed(1)}V${(y(column.high) - 0.5).toFixed(1)}`).join('');
    const key = `<text x="${LEFT + index * 260}" y="16" fill="${colour}">${escape(line.label)}</text>`;
    return `<path d="${path}" stroke="${colour}" stroke-width="1.4" fill="none"${dash === '' ? '' : ' opacity="0.75"'}/>${key}`;
  }).join('');
  return `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escape(figure.caption)}" font-family="sans-serif" font-size="11">
<defs><pattern id="unseen" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#eee"/><path d="M0 0V6" stroke="#555" stroke-width="2"/></pattern></defs>
${hatch}${axis(figure, x, y, top, bottom)}${lines}</svg>`;
}

function axis(figure: StripFigure, x: (at: number) => number, y: (value: number) => number, top: number, bottom: number): string {
  const base = HEIGHT - BOTTOM;
  const marks = Array.from({ length: 7 }, (_, i) => figure.from + ((figure.to - figure.from) * i) / 6);
  const ticks = marks.map((at) => `<path d="M${x(at).toFixed(1)} ${base}v4" stroke="#111"/><text x="${x(at).toFixed(1)}" y="${base + 15}" text-anchor="middle">${at.toFixed(0)}</text>`).join('');
  const levels = [bottom, (top + bottom) / 2, top].map((value) => `<text x="${LEFT - 6}" y="${(y(value) + 4).toFixed(1)}" text-anchor="end">${value.toPrecision(2)}</text>`).join('');
  const unseen = figure.notInspected.length > 0 ? '   hatched: NOT INSPECTED' : '';
  return `<path d="M${LEFT} ${TOP}V${base}H${WIDTH - 8}" stroke="#111" fill="none"/>${ticks}${levels}<text x="${(WIDTH + LEFT) / 2}" y="${HEIGHT - 4}" text-anchor="middle">rope position [m]${unseen}</text>`;
}
