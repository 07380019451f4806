import type { RopeWindow } from '../state/app-state.ts';
import { fixed } from '../text/format.ts';
import { axisSteps } from './axis-steps.ts';
import { percentOf } from './strip-scale.ts';

interface RulerProps {
  readonly window: RopeWindow;
  readonly width: number;
  /** Positions are read from end A; with a length given, from end B at that position. */
  readonly endB?: number;
  readonly title: string;
}

/** A tape along the rope: round positions, and finer strokes between them. */
export function Ruler({ window, width, endB, title }: RulerProps) {
  const from = endB === undefined ? window.from : endB - window.to;
  const to = endB === undefined ? window.to : endB - window.from;
  const { marks, decimals } = axisSteps(from, to, width / 110);
  const step = marks.length > 1 ? marks[1] - marks[0] : to - from;
  const fine = marks.length > 1 ? Array.from({ length: (marks.length + 1) * 10 }, (_, i) => marks[0] - step + (i * step) / 10).filter((at) => at > from && at < to) : [];
  const place = (at: number) => `${percentOf(endB === undefined ? at : endB - at, window)}%`;
  return (
    <div className={endB === undefined ? 'ruler' : 'ruler ruler-below'}>
      <span className="strip-title">{title}</span>
      <div className="strip-body" aria-hidden="true">
        {fine.map((at) => <i key={at} className="ruler-fine" style={{ left: place(at) }} />)}
        {marks.map((at) => <span key={at} className="ruler-mark" style={{ left: place(at) }}><b>{fixed(at, decimals)}</b></span>)}
      </div>
    </div>
  );
}
