import { useEffect, useRef } from 'react';
import type { Data, Layout } from 'plotly.js';
import type Plotly from 'plotly.js';

interface PlotProps {
  readonly data: Partial<Data>[];
  readonly layout: Partial<Layout>;
  readonly height: number;
  /** What the drawing shows, for those who do not see it. */
  readonly label: string;
  /** Strips are steered by the rope window and not by plotly; other charts answer to the pointer. */
  readonly answersPointer?: boolean;
}

let loading: Promise<typeof Plotly> | null = null;
const load = (): Promise<typeof Plotly> => {
  loading ??= import('plotly.js-cartesian-dist-min').then((module) => module.default);
  return loading;
};

/** A plotly chart that is redrawn in place when its data change and fits its box. The only part of the page that knows plotly. */
export function Plot({ data, layout, height, label, answersPointer = false }: PlotProps) {
  const box = useRef<HTMLDivElement>(null);
  const newest = useRef({ data, layout });

  useEffect(() => {
    newest.current = { data, layout };
    const element = box.current;
    if (element === null) return;
    let gone = false;
    void load().then((plotly) => {
      if (gone || newest.current.data !== data) return;
      return plotly.react(element, data as Data[], { ...layout, height, autosize: true }, { displaylogo: false, displayModeBar: false, showSendToCloud: false, responsive: false, staticPlot: !answersPointer, scrollZoom: false, doubleClick: false } as Partial<Plotly.Config>);
    });
    return () => { gone = true; };
  }, [data, layout, height, answersPointer]);

  useEffect(() => {
    const element = box.current;
    if (element === null || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(() => {
      void load().then((plotly) => { if (element.isConnected && element.querySelector('.plot-container')) plotly.Plots.resize(element); });
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
      void load().then((plotly) => plotly.purge(element));
    };
  }, []);

  return <div ref={box} className="plot" role="img" aria-label={label} style={{ height }} />;
}
