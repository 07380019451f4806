import { useMemo } from 'react';
import type { Data, Layout } from 'plotly.js';
import type { UtilisationStrip } from '../../analysis/criteria/criterion.ts';
import type { RopeWindow } from '../state/app-state.ts';
import { OKABE_ITO, inkOf } from './ink.ts';
import { Plot } from './plot.tsx';
import { GUTTER_LEFT, GUTTER_RIGHT } from './strip-scale.ts';

interface ShareStripProps {
  readonly strips: readonly UtilisationStrip[];
  readonly chosen: string | null;
  readonly window: RopeWindow;
  readonly height: number;
  readonly theme: 'light' | 'dark';
}

/** Share of the limit along the rope for each clause, the chosen one strong; 1 is the limit. Gaps were not inspected. */
export function ShareStrip({ strips, chosen, window, height, theme }: ShareStripProps) {
  const data = useMemo(() => tracesOf(strips, chosen, theme), [strips, chosen, theme]);
  const layout = useMemo(() => layoutOf(strips, window, theme), [strips, window, theme]);
  return (
    <div className="strip">
      <span className="strip-title strip-title-upright">Share of limit<small>1 = limit</small></span>
      <Plot data={data} layout={layout} height={height} label={`Share of the limit along the rope for ${strips.length} clauses${chosen === null ? '' : `; ${chosen} drawn strong`}`} />
    </div>
  );
}

function tracesOf(strips: readonly UtilisationStrip[], chosen: string | null, theme: 'light' | 'dark'): Partial<Data>[] {
  const ink = inkOf(theme);
  const strong = theme === 'light' ? OKABE_ITO.blue : OKABE_ITO.sky;
  const sorted = [...strips].sort((a, b) => Number(keyOf(a) === chosen) - Number(keyOf(b) === chosen));
  return sorted.map((strip) => {
    const isChosen = keyOf(strip) === chosen;
    // Readings by hand stand where they were taken; between them nothing was read.
    const single = strip.positions.length < FEW;
    return { type: 'scatter', mode: single ? 'markers' : 'lines', x: strip.positions, y: strip.values, connectgaps: false, hoverinfo: 'skip', marker: { color: isChosen ? strong : ink.line, size: isChosen ? 9 : 6, symbol: 'diamond' }, line: { color: isChosen ? strong : ink.line, width: isChosen ? 2 : 0.8 }, opacity: isChosen ? 1 : 0.55 } as Partial<Data>;
  });
}

/** Strips of fewer positions hold single readings, not a scan. */
const FEW = 60;

const keyOf = (strip: UtilisationStrip) => `${strip.ruleSet} / ${strip.clause}`;

function layoutOf(strips: readonly UtilisationStrip[], window: RopeWindow, theme: 'light' | 'dark'): Partial<Layout> {
  const ink = inkOf(theme);
  let most = 1;
  for (const strip of strips) for (const value of strip.values) if (value !== null && value > most) most = value;
  const limit = theme === 'light' ? '#b34700' : '#ff9a5c';
  return {
    margin: { l: GUTTER_LEFT, r: GUTTER_RIGHT, t: 4, b: 4 }, paper_bgcolor: 'rgba(0,0,0,0)', plot_bgcolor: 'rgba(0,0,0,0)', showlegend: false, hovermode: false, dragmode: false, font: { family: 'inherit', size: 11, color: ink.soft },
    xaxis: { range: [window.from, window.to], showgrid: false, zeroline: false, showticklabels: false, fixedrange: true },
    yaxis: { range: [0, most * 1.12], gridcolor: ink.grid, zerolinecolor: ink.line, fixedrange: true, nticks: 5, tickformat: '.1f' },
    shapes: [{ type: 'line', xref: 'paper', x0: 0, x1: 1, y0: 1, y1: 1, line: { color: limit, width: 1.6 } }],
    annotations: [{ xref: 'paper', x: 0.004, xanchor: 'left', y: 1, yanchor: 'bottom', text: 'limit', showarrow: false, font: { color: limit, size: 10 } }],
  };
}
