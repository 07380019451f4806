import { useState } from 'react';
import { showLength } from '../state/show.ts';
import { change, useApp } from '../state/store.ts';
import { Sheet } from '../ui/dialog.tsx';
import { useView } from '../jobs/use-inspections.ts';

/** Goes to a position counted from either end. */
export function GoToDialog() {
  const { extent, record, loopLength } = useView();
  const cursor = useApp((state) => state.cursor);
  const [text, setText] = useState(cursor === null ? '' : cursor.toFixed(2));
  const [end, setEnd] = useState<'A' | 'B'>('A');
  const value = Number(text.replace(',', '.'));
  const length = record.rope.length_m ?? extent.to;
  const at = end === 'A' ? value : length - value;
  const wrong = text.trim() === '' || !Number.isFinite(value) ? 'Write a position in metres.' : at < extent.from || at > extent.to ? `The rope reaches from ${extent.from.toFixed(1)} to ${extent.to.toFixed(1)} m.` : null;
  return (
    <Sheet title="Go to a position" onClose={() => change({ dialog: null })}>
      <form className="form" onSubmit={(event) => { event.preventDefault(); if (wrong !== null) return; showLength(at, at); change({ dialog: null }); }}>
        <label>Position, m<input autoFocus inputMode="decimal" value={text} onChange={(event) => setText(event.target.value)} aria-describedby="go-to-wrong" /></label>
        {loopLength === null && <label>Counted from<select value={end} onChange={(event) => setEnd(event.target.value as 'A' | 'B')}><option value="A">end A</option><option value="B">end B</option></select></label>}
        <p id="go-to-wrong" className="quiet">{wrong ?? ' '}</p>
        <button type="submit" className="button-strong" disabled={wrong !== null}>Go there</button>
      </form>
    </Sheet>
  );
}
