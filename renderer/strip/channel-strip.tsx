import { useMemo } from 'react';
import type { Data, Layout } from 'plotly.js';
import type { DisplayPoints } from '../../analysis/display/display-points.ts';
import type { RopeWindow } from '../state/app-state.ts';
import { extremesOf, lineOfPoints } from './line-of-points.ts';
import { Plot } from './plot.tsx';
import { inkOf } from './ink.ts';
import { GUTTER_LEFT, GUTTER_RIGHT } from './strip-scale.ts';

export interface StripLine {
  readonly name: string;
  readonly points: DisplayPoints | null;
  readonly colour: string;
  readonly width: number;
}

export interface StripBand {
  readonly positions: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly colour: string;
}

interface ChannelStripProps {
  readonly title: string;
  readonly unit: string;
  readonly lines: readonly StripLine[];
  readonly bands?: readonly StripBand[];
  readonly window: RopeWindow;
  readonly height: number;
  readonly theme: 'light' | 'dark';
  /** The least height of the scale, in the strip's unit, so that noise on a sound rope does not fill the sheet. */
  readonly leastSpan: number;
  readonly label: string;
}

/** What a low strip has room for. */
const SHORT: Readonly<Record<string, string>> = { 'Loss of metal': 'Loss', 'Local faults': 'LF' };

/** One measured quantity along the rope, all inspections over each other. */
export function ChannelStrip({ title, unit, lines, bands = [], window, height, theme, leastSpan, label }: ChannelStripProps) {
  const data = useMemo(() => [...bands.flatMap(bandTraces), ...lines.flatMap(lineTrace)], [lines, bands]);
  const range = useMemo(() => scaleOf(lines.map((each) => each.points), bands, window, leastSpan), [lines, bands, window, leastSpan]);
  const layout = useMemo(() => layoutOf(window, range, theme), [window, range, theme]);
  return (
    <div className="strip">
      <span className="strip-title strip-title-upright">{height < 92 ? SHORT[title] ?? title : title}<small>{height < 150 ? unit.replace(' of area', '') : unit}</small></span>
      <Plot data={data} layout={layout} height={height} label={label} />
    </div>
  );
}

function lineTrace({ name, points, colour, width }: StripLine): Partial<Data>[] {
  if (points === null) return [];
  const { x, y } = lineOfPoints(points);
  const single = points.samplesPerPoint === 1 && points.positions.length < 300;
  return [{ type: 'scatter', mode: single ? 'lines+markers' : 'lines', name, x, y, connectgaps: false, line: { color: colour, width, shape: 'linear' }, marker: { color: colour, size: 4 }, hoverinfo: 'skip' } as Partial<Data>];
}

function bandTraces({ positions, low, high, colour }: StripBand): Partial<Data>[] {
  const edge = { type: 'scatter', mode: 'lines', x: positions, hoverinfo: 'skip', line: { width: 0, color: colour } };
  return [{ ...edge, y: low }, { ...edge, y: high, fill: 'tonexty', fillcolor: colour }] as Partial<Data>[];
}

/** The scale of what is in view, with zero always on it and a little air. */
function scaleOf(drawn: readonly (DisplayPoints | null)[], bands: readonly StripBand[], window: RopeWindow, leastSpan: number): [number, number] {
  const found = extremesOf(drawn, window.from, window.to);
  const inBands = bands.flatMap((band) => [...band.low, ...band.high]);
  const low = Math.min(0, found?.low ?? 0, ...inBands);
  const high = Math.max(0, found?.high ?? 0, ...inBands);
  const span = Math.max(high - low, leastSpan) || 1;
  const middle = (low + high) / 2;
  return [middle - span * 0.56, middle + span * 0.56];
}

function layoutOf(window: RopeWindow, range: [number, number], theme: 'light' | 'dark'): Partial<Layout> {
  const ink = inkOf(theme);
  return {
    margin: { l: GUTTER_LEFT, r: GUTTER_RIGHT, t: 4, b: 4 }, paper_bgcolor: 'rgba(0,0,0,0)', plot_bgcolor: 'rgba(0,0,0,0)', showlegend: false, hovermode: false, dragmode: false,
    font: { family: 'inherit', size: 11, color: ink.soft },
    xaxis: { range: [window.from, window.to], showgrid: false, zeroline: false, showticklabels: false, fixedrange: true },
    yaxis: { range, gridcolor: ink.grid, zerolinecolor: ink.line, zerolinewidth: 1, nticks: 5, exponentformat: 'none', fixedrange: true, ticks: 'outside', ticklen: 3, tickcolor: ink.line, automargin: false },
  };
}
