import { useEffect, useRef } from 'react';
import type { PointerEvent, ReactNode } from 'react';
import type { RopeWindow } from '../state/app-state.ts';
import { zoomed } from '../state/rope-window.ts';
import { showWindow } from '../state/show.ts';
import { change, store, useApp } from '../state/store.ts';
import { metres, monthOf } from '../text/format.ts';
import { GUTTER_LEFT, GUTTER_RIGHT, barOf, percentOf, positionAtPixel } from './strip-scale.ts';

interface StripFieldProps {
  readonly window: RopeWindow;
  readonly notInspected: readonly { readonly from_m: number; readonly to_m: number; readonly last_seen: string | null }[];
  readonly children: ReactNode;
  /** Pins: a drag from one position to another instead of panning. */
  readonly onDragBetween?: ((from: number, to: number) => void) | null;
  readonly label: string;
}

/**
 * The sheet that all strips of a screen lie on: it turns wheel and drag into the length in view, puts the cursor,
 * and hatches what was never inspected through every strip.
 */
export function StripField({ window, notInspected, children, onDragBetween = null, label }: StripFieldProps) {
  const box = useRef<HTMLDivElement>(null);
  const drag = useRef<{ x: number; window: RopeWindow; moved: boolean; at: number } | null>(null);
  const cursor = useApp((state) => state.cursor);
  useWheel(box);

  const at = (event: PointerEvent) => {
    const bounds = box.current?.getBoundingClientRect();
    return bounds ? positionAtPixel(event.clientX - bounds.left, bounds.width, store.getState().window) : 0;
  };
  const onDown = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0 || (event.target as Element).closest('button, a, input')) return;
    drag.current = { x: event.clientX, window: store.getState().window, moved: false, at: at(event) };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const onMove = (event: PointerEvent<HTMLDivElement>) => {
    const held = drag.current;
    if (held === null) return;
    if (!held.moved && Math.abs(event.clientX - held.x) < 4) return;
    held.moved = true;
    if (onDragBetween !== null) {
      change({ cursor: at(event) });
      return;
    }
    const width = (box.current?.clientWidth ?? 1) - GUTTER_LEFT - GUTTER_RIGHT;
    const by = ((held.x - event.clientX) / width) * (held.window.to - held.window.from);
    showWindow({ from: held.window.from + by, to: held.window.to + by }, false);
  };
  const onUp = (event: PointerEvent<HTMLDivElement>) => {
    const held = drag.current;
    drag.current = null;
    if (held === null) return;
    if (!held.moved) change({ cursor: at(event) });
    else if (onDragBetween !== null) onDragBetween(held.at, at(event));
  };
  return (
    <div ref={box} className={onDragBetween === null ? 'field' : 'field field-pinning'} role="group" aria-label={label} tabIndex={0} data-from={window.from} data-to={window.to}
      onPointerDown={onDown} onPointerMove={onMove} onPointerUp={onUp} onPointerCancel={() => { drag.current = null; }}>
      <div className="field-under" aria-hidden="true">
        {notInspected.map((each) => {
          const bar = barOf(each.from_m, each.to_m, window, 0.15);
          return bar && <div key={each.from_m} className="hatch" style={bar} />;
        })}
      </div>
      {children}
      <div className="field-over" aria-hidden="true">
        {notInspected.map((each) => {
          const bar = barOf(each.from_m, each.to_m, window, 0.15);
          return bar && <div key={each.from_m} className="hatch-label" style={bar}><span>NOT INSPECTED{each.last_seen === null ? '' : <em>, last seen {monthOf(each.last_seen)}</em>}</span></div>;
        })}
        {cursor !== null && cursor >= window.from && cursor <= window.to && (
          <i className="cursor-line" style={{ left: `${percentOf(cursor, window)}%` }}><b>{metres(cursor, window.to - window.from)}</b></i>
        )}
      </div>
    </div>
  );
}

/** A wheel listener that may keep the page from scrolling: React's own may not. Sideways or with Shift it pans. */
function useWheel(box: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const onWheel = (event: WheelEvent) => {
      const { view, window } = store.getState();
      if (view === null) return;
      event.preventDefault();
      const bounds = element.getBoundingClientRect();
      if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        const by = ((event.deltaX || event.deltaY) / Math.max(1, bounds.width)) * (window.to - window.from);
        showWindow({ from: window.from + by, to: window.to + by }, false);
      } else {
        const about = Math.min(window.to, Math.max(window.from, positionAtPixel(event.clientX - bounds.left, bounds.width, window)));
        showWindow(zoomed(window, Math.exp(Math.sign(event.deltaY) * Math.min(0.4, Math.abs(event.deltaY) / 400)), about, view.extent), false);
      }
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [box]);
}
