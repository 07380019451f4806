import { useRef } from 'react';
import type { PointerEvent } from 'react';
import { showWindow } from '../state/show.ts';
import { store, useApp } from '../state/store.ts';
import { barOf, percentOf } from '../strip/strip-scale.ts';
import { fixed, metres } from '../text/format.ts';
import { useView } from './use-inspections.ts';

/** The whole rope as a plain bar, so that only what was never inspected is hatched; places stand on it, a frame marks the length in view. */
export function RopeTape() {
  const view = useView();
  const window = useApp((state) => state.window);
  const cursor = useApp((state) => state.cursor);
  const body = useRef<HTMLDivElement>(null);
  const { extent, assessment } = view;
  const drag = useTapeDrag(body);
  const zones = view.inspections.at(-1)?.zones ?? [];
  const frame = barOf(window.from, window.to, extent, 0.4);
  return (
    <section className="tape" aria-label={`Whole rope, ${metres(extent.to - extent.from)}; in view ${fixed(window.from, 1)} to ${fixed(window.to, 1)} m`}>
      <span className="tape-end">A</span>
      <div ref={body} className="tape-body" {...drag}>
        <span className="tape-rope" aria-hidden="true" />
        {zones.map((zone) => <i key={zone.id} className={`tape-zone zone-${zone.kind}`} style={barOf(zone.where.from, zone.where.to, extent, 0.3) ?? undefined} />)}
        {assessment.not_inspected.map((each) => <i key={each.from_m} className="hatch tape-hatch" style={barOf(each.from_m, each.to_m, extent, 0.2) ?? undefined} />)}
        {view.places.map((place) => <i key={place.id} className={`tape-place tape-place-${place.state}`} style={{ left: `${percentOf((place.where.from + place.where.to) / 2, extent)}%` }} />)}
        {cursor !== null && <i className="tape-cursor" style={{ left: `${percentOf(cursor, extent)}%` }} />}
        <i className="tape-frame" style={frame ?? undefined} />
      </div>
      <span className="tape-end">{view.loopLength === null ? 'B' : 'A'}</span>
    </section>
  );
}

/** A press on the tape brings that place into view, and a drag moves the frame along. */
function useTapeDrag(body: React.RefObject<HTMLDivElement | null>) {
  const held = useRef(false);
  const go = (event: PointerEvent, remember: boolean) => {
    const bounds = body.current?.getBoundingClientRect();
    const { view, window } = store.getState();
    if (!bounds || view === null) return;
    const at = view.extent.from + ((event.clientX - bounds.left) / bounds.width) * (view.extent.to - view.extent.from);
    const half = (window.to - window.from) / 2;
    showWindow({ from: at - half, to: at + half }, remember);
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLDivElement>) => { held.current = true; event.currentTarget.setPointerCapture(event.pointerId); go(event, true); },
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => { if (held.current) go(event, false); },
    onPointerUp: () => { held.current = false; },
    onPointerCancel: () => { held.current = false; },
  };
}
