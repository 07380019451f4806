import { useMemo } from 'react';
import type { Annotations, Data, Layout, Shape } from 'plotly.js';
import type { Forecast } from '../../analysis/life/forecast.ts';
import { dayOf, figure } from '../text/format.ts';
import { OKABE_ITO, inkOf } from './ink.ts';
import { Plot } from './plot.tsx';

interface LifeChartProps {
  readonly forecast: Forecast;
  readonly theme: 'light' | 'dark';
  readonly height: number;
}

/** Measured points with two sigma, the trend, the limit, the 10-90 % band and the dates at which it would be reached. */
export function LifeChart({ forecast, theme, height }: LifeChartProps) {
  const data = useMemo(() => tracesOf(forecast, theme), [forecast, theme]);
  const layout = useMemo(() => layoutOf(forecast, theme), [forecast, theme]);
  return <Plot data={data} layout={layout} height={height} label={wordsOf(forecast)} answersPointer />;
}

function wordsOf({ clause, series, limit, unit, date, reason }: Forecast): string {
  const points = series.map((point) => `${dayOf(point.date)} ${figure(point.value)} ${unit}`).join(', ');
  const dates = date.median === null ? reason : `limit reached between ${date.low === null ? 'an unknown date' : dayOf(date.low)} and ${date.high === null ? 'an unknown date' : dayOf(date.high)}, as likely as not by ${dayOf(date.median)}`;
  return `${clause}: ${points}; limit ${figure(limit)} ${unit}; ${dates}`;
}

function tracesOf({ series, band, unit }: Forecast, theme: 'light' | 'dark'): Partial<Data>[] {
  const ink = inkOf(theme);
  const x = band.map((point) => point.date);
  const shade = theme === 'light' ? 'rgba(0,114,178,0.16)' : 'rgba(86,180,233,0.22)';
  const trend = theme === 'light' ? OKABE_ITO.blue : OKABE_ITO.sky;
  const drawn: Partial<Data>[] = [];
  if (band.length > 0) {
    drawn.push(
      { type: 'scatter', mode: 'lines', x, y: band.map((point) => point.low), line: { width: 0 }, hoverinfo: 'skip' },
      { type: 'scatter', mode: 'lines', x, y: band.map((point) => point.high), line: { width: 0 }, fill: 'tonexty', fillcolor: shade, hoverinfo: 'skip' },
      { type: 'scatter', mode: 'lines', x, y: band.map((point) => point.median), line: { color: trend, width: 1.6, dash: 'dash' }, hovertemplate: `%{x|%b %Y}: %{y:.2f} ${unit}<extra></extra>` },
    );
  }
  drawn.push({
    type: 'scatter', mode: 'markers', x: series.map((point) => point.date), y: series.map((point) => point.value), marker: { size: 7, color: ink.strong },
    error_y: { type: 'data', array: series.map((point) => 2 * point.uncertainty), color: ink.soft, thickness: 1.2, width: 3 }, hovertemplate: `%{x|%d %b %Y}: %{y:.2f} ${unit}<extra></extra>`,
  } as Partial<Data>);
  return drawn;
}

/** The farthest date worth drawing: a band that runs on for a century would press the measurements flat. */
function lastDate({ series, date, band }: Forecast): string {
  const measured = series.map((point) => Date.parse(point.date));
  const span = Math.max(365 * 864e5, Math.max(...measured) - Math.min(...measured));
  const wanted = [date.high, date.median, date.low].filter((each): each is string => each !== null).map((each) => Date.parse(each));
  const far = Math.max(...measured) + 6 * span;
  const end = Math.min(far, Math.max(Math.max(...measured) + span, ...wanted.filter((each) => each <= far).map((each) => each + 0.12 * span)));
  return band.length === 0 ? new Date(Math.max(...measured) + span * 0.5).toISOString() : new Date(end).toISOString();
}

/** Names the three dates on the limit; where they stand too near to each other, the band's ends share one label. */
function dateMarks({ date, limit, model }: Forecast, first: string | undefined, end: string | undefined): Partial<Annotations>[] {
  if (first === undefined || end === undefined) return [];
  const whole = Date.parse(end) - Date.parse(first);
  const inside = ([['10 %', date.low], ['50 %', date.median], ['90 %', date.high]] as const).flatMap(([text, at]) => (at !== null && Date.parse(at) <= Date.parse(end) ? [{ text, at }] : []));
  if (model === 'reached') return inside.slice(0, 1).map(({ at }) => ({ x: at, y: limit, yanchor: 'bottom' as const, text: 'reached', showarrow: false, font: { size: 10 } }));
  const near = inside.some((each, i) => i > 0 && Date.parse(each.at) - Date.parse(inside[i - 1].at) < 0.08 * whole);
  const shown = near && inside.length > 1 ? [{ text: `${inside[0].text} to ${inside[inside.length - 1].text}`, at: inside[Math.floor(inside.length / 2)].at }] : inside;
  return shown.map(({ text, at }) => ({ x: at, y: limit, yanchor: 'bottom' as const, text, showarrow: false, font: { size: 10 } }));
}

function layoutOf(forecast: Forecast, theme: 'light' | 'dark'): Partial<Layout> {
  const ink = inkOf(theme);
  const { series, limit, unit, date } = forecast;
  const end = series.length > 0 ? lastDate(forecast) : undefined;
  const most = Math.max(limit * 1.18, ...series.map((point) => 1.08 * (point.value + 2 * point.uncertainty)));
  const least = Math.min(0, ...series.map((point) => point.value - 2 * point.uncertainty)) - 0.04 * most;
  const first = series.length > 0 ? new Date(Math.min(...series.map((point) => Date.parse(point.date))) - 60 * 864e5).toISOString() : undefined;
  const upright = (at: string | null): Partial<Shape>[] => (at === null || (end !== undefined && Date.parse(at) > Date.parse(end)) ? [] : [{ type: 'line', x0: at, x1: at, y0: least, y1: limit, line: { color: ink.soft, width: 1, dash: 'dot' } }]);
  const limitColour = theme === 'light' ? '#b34700' : '#ff9a5c';
  return {
    margin: { l: 52, r: 12, t: 8, b: 32 }, paper_bgcolor: 'rgba(0,0,0,0)', plot_bgcolor: 'rgba(0,0,0,0)', showlegend: false, dragmode: false, hovermode: 'closest',
    font: { family: 'inherit', size: 11, color: ink.soft },
    xaxis: { type: 'date', range: first !== undefined && end !== undefined ? [first, end] : undefined, gridcolor: ink.grid, linecolor: ink.line, nticks: 6, fixedrange: true },
    yaxis: { range: [least, most], title: { text: unit, standoff: 6 }, gridcolor: ink.grid, zerolinecolor: ink.line, fixedrange: true, nticks: 5 },
    shapes: [{ type: 'line', xref: 'paper', x0: 0, x1: 1, y0: limit, y1: limit, line: { color: limitColour, width: 1.8 } }, ...upright(date.low), ...upright(date.median), ...upright(date.high)] as Shape[],
    annotations: [{ xref: 'paper', x: 0.01, xanchor: 'left', y: limit, yanchor: 'bottom', text: `limit ${figure(limit)} ${unit}`, showarrow: false, font: { color: limitColour, size: 11 } }, ...dateMarks(forecast, first, end)],
  };
}
