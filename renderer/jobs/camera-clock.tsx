import { useState } from 'react';
import { cameraAheadOf } from '../../analysis/rope/journal.ts';
import { decide } from '../state/decide.ts';
import { useApp } from '../state/store.ts';
import { clockDifference } from '../text/clock-difference.ts';
import { dayOf } from '../text/format.ts';

/** How far the camera's clock ran ahead of the instrument's at one inspection; photos placed by time move with it. */
export function CameraClock({ inspection, date }: { readonly inspection: string; readonly date: string }) {
  const journal = useApp((state) => state.journal);
  const held = cameraAheadOf(journal, inspection);
  const [text, setText] = useState(String(held));
  const wanted = clockDifference(text);
  const keep = () => decide({
    label: `Camera clock of ${dayOf(date)}: ${wanted} s ahead`,
    entries: [{ kind: 'camera-clock', inspection, ahead_s: wanted ?? held }], inverse: [{ kind: 'camera-clock', inspection, ahead_s: held }], rerun: true,
  });
  return (
    <form className="form form-line" onSubmit={(event) => { event.preventDefault(); if (wanted !== null && wanted !== held) void keep(); }}>
      <label>Camera clock ahead of the scan of {dayOf(date)}, s or h:mm:ss<input className="short" value={text} onChange={(event) => setText(event.target.value)} /></label>
      <button type="submit" disabled={wanted === null || wanted === held}>Set the clock</button>
      {wanted === null && <small className="remark">Write seconds or h:mm:ss; with a minus where the camera is behind.</small>}
    </form>
  );
}
