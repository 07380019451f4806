import { useId } from 'react';
import type { StripFigure } from '../../analysis/report/document.ts';
import { fixed } from '../text/format.ts';
import { axisSteps } from './axis-steps.ts';

const WIDTH = 720;
const HEIGHT = 190;
const LEFT = 46;
const BOTTOM = 24;
const TOP = 22;
/** Told apart on a copy without colour by their strokes. */
const STROKES = [{ colour: '#35708f', dash: '5 3' }, { colour: '#16191b', dash: undefined }, { colour: '#8a5a00', dash: '1 2' }];

/** One channel by rope position on paper: extremes as strokes, NOT INSPECTED lengths hatched, gaps left open. */
export function ReportFigure({ figure }: { readonly figure: StripFigure }) {
  const hatch = useId();
  const { low, high } = extremes(figure);
  const x = (at: number) => LEFT + ((at - figure.from) / (figure.to - figure.from)) * (WIDTH - LEFT - 8);
  const y = (value: number) => HEIGHT - BOTTOM - ((value - low) / (high - low)) * (HEIGHT - BOTTOM - TOP);
  const along = axisSteps(figure.from, figure.to, 9);
  const up = axisSteps(low, high, 4);
  return (
    <figure>
      <figcaption>{figure.caption}, {figure.unit}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`${figure.caption}: ${figure.lines.map((line) => line.label).join(', ')}`}>
        <defs><pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="2" height="6" fill="#9a9a92" /></pattern></defs>
        {figure.notInspected.map((each) => <rect key={each.from} x={x(Math.max(each.from, figure.from))} width={Math.max(1, x(Math.min(each.to, figure.to)) - x(Math.max(each.from, figure.from)))} y={TOP} height={HEIGHT - BOTTOM - TOP} fill={`url(#${hatch})`} />)}
        {up.marks.map((value) => <g key={value}><line x1={LEFT} x2={WIDTH - 8} y1={y(value)} y2={y(value)} stroke="#d5d5cf" strokeWidth="0.6" /><text x={LEFT - 4} y={y(value) + 3} textAnchor="end" fontSize="9">{fixed(value, up.decimals)}</text></g>)}
        {along.marks.map((at) => <g key={at}><line x1={x(at)} x2={x(at)} y1={HEIGHT - BOTTOM} y2={HEIGHT - BOTTOM + 4} stroke="#16191b" /><text x={x(at)} y={HEIGHT - BOTTOM + 14} textAnchor="middle" fontSize="9">{fixed(at, along.decimals)}</text></g>)}
        {figure.lines.map((line, index) => <path key={line.label} d={pathOf(line.columns, x, y)} fill="none" stroke={STROKES[index % STROKES.length].colour} strokeDasharray={figure.lines.length > 1 ? STROKES[index % STROKES.length].dash : undefined} strokeWidth="1" />)}
        {figure.lines.map((line, index) => <g key={line.label}><line x1={LEFT + 150 * index} x2={LEFT + 22 + 150 * index} y1={10} y2={10} stroke={STROKES[index % STROKES.length].colour} strokeDasharray={figure.lines.length > 1 ? STROKES[index % STROKES.length].dash : undefined} strokeWidth="1.6" /><text x={LEFT + 27 + 150 * index} y={13} fontSize="9.5">{line.label}</text></g>)}
        <line x1={LEFT} x2={WIDTH - 8} y1={HEIGHT - BOTTOM} y2={HEIGHT - BOTTOM} stroke="#16191b" />
        <text x={WIDTH - 8} y={HEIGHT - 1} textAnchor="end" fontSize="9">rope position, m</text>
      </svg>
    </figure>
  );
}

function extremes({ lines }: StripFigure): { low: number; high: number } {
  let low = 0;
  let high = 0;
  for (const line of lines) for (const column of line.columns) {
    if (column.low < low) low = column.low;
    if (column.high > high) high = column.high;
  }
  return high > low ? { low, high: high + (high - low) * 0.05 } : { low, high: low + 1 };
}

/** Columns farther apart than twice their usual distance have a gap between them: the pen is lifted. */
function pathOf(columns: StripFigure['lines'][number]['columns'], x: (at: number) => number, y: (value: number) => number): string {
  const steps = columns.slice(1).map((column, i) => column.at - columns[i].at).sort((a, b) => a - b);
  const usual = steps.length > 0 ? steps[Math.floor(steps.length / 2)] : 0;
  return columns.map((column, i) => `${i === 0 || column.at - columns[i - 1].at > 2 * usual ? 'M' : 'L'}${x(column.at).toFixed(1)} ${y(column.low).toFixed(1)}L${x(column.at).toFixed(1)} ${y(column.high).toFixed(1)}`).join('');
}
