import { useMemo } from 'react';
import type { Data, Layout } from 'plotly.js';
import type { MapShift } from '../jobs/map-shift.ts';
import type { RopeWindow } from '../state/app-state.ts';
import { OKABE_ITO, inkOf } from './ink.ts';
import { Plot } from './plot.tsx';
import { GUTTER_LEFT, GUTTER_RIGHT } from './strip-scale.ts';

interface ShiftStripProps {
  readonly shift: MapShift;
  readonly ties: readonly number[];
  readonly window: RopeWindow;
  readonly height: number;
  readonly theme: 'light' | 'dark';
  readonly label: string;
}

/** The rope map as a strip: local shift by position within its claimed 95 % band, slips as triangles, tie points as squares on the axis. */
export function ShiftStrip({ shift, ties, window, height, theme, label }: ShiftStripProps) {
  const data = useMemo(() => tracesOf(shift, ties, window, theme), [shift, ties, window, theme]);
  const layout = useMemo(() => layoutOf(window, theme), [window, theme]);
  return (
    <div className="strip">
      <span className="strip-title strip-title-upright">Local shift<small>m</small></span>
      <Plot data={data} layout={layout} height={height} label={label} />
    </div>
  );
}

function tracesOf({ positions, shift, bound, slips }: MapShift, ties: readonly number[], window: RopeWindow, theme: 'light' | 'dark'): Partial<Data>[] {
  const ink = inkOf(theme);
  const shade = theme === 'light' ? 'rgba(0,114,178,0.18)' : 'rgba(86,180,233,0.25)';
  const colour = theme === 'light' ? OKABE_ITO.blue : OKABE_ITO.sky;
  const nearest = (at: number) => shift[positions.reduce((best, position, i) => (Math.abs(position - at) < Math.abs(positions[best] - at) ? i : best), 0)] ?? 0;
  return [
    { type: 'scatter', mode: 'lines', x: positions, y: shift.map((value, i) => value - bound[i]), line: { width: 0 } },
    { type: 'scatter', mode: 'lines', x: positions, y: shift.map((value, i) => value + bound[i]), line: { width: 0 }, fill: 'tonexty', fillcolor: shade },
    { type: 'scatter', mode: 'lines', x: positions, y: shift, line: { width: 1.5, color: colour } },
    { type: 'scatter', mode: 'text+markers', x: slips.map((slip) => slip.at), y: slips.map((slip) => nearest(slip.at)), text: slips.map((slip) => `slip ${slip.size.toFixed(2)} m`), textposition: slips.map((slip) => sideOf(slip.at, window)), cliponaxis: false, marker: { symbol: 'triangle-down', size: 10, color: theme === 'light' ? OKABE_ITO.vermilion : '#ff9a5c' }, textfont: { size: 10, color: ink.soft } },
    { type: 'scatter', mode: 'markers', x: [...ties], y: ties.map(nearest), marker: { symbol: 'square', size: 9, color: ink.strong } },
  ] as Partial<Data>[];
}

/** Names of slips near an end of the strip are written inwards. */
function sideOf(at: number, window: RopeWindow): string {
  const share = (at - window.from) / (window.to - window.from);
  return share < 0.1 ? 'top right' : share > 0.9 ? 'top left' : 'top center';
}

function layoutOf(window: RopeWindow, theme: 'light' | 'dark'): Partial<Layout> {
  const ink = inkOf(theme);
  return {
    margin: { l: GUTTER_LEFT, r: GUTTER_RIGHT, t: 6, b: 4 }, paper_bgcolor: 'rgba(0,0,0,0)', plot_bgcolor: 'rgba(0,0,0,0)', showlegend: false, hovermode: false, dragmode: false, font: { family: 'inherit', size: 11, color: ink.soft },
    xaxis: { range: [window.from, window.to], showgrid: false, zeroline: false, showticklabels: false, fixedrange: true },
    yaxis: { gridcolor: ink.grid, zerolinecolor: ink.line, fixedrange: true, nticks: 5, autorange: true },
  };
}
