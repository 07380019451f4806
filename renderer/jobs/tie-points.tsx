import { useState } from 'react';
import { toMeasured, toRope } from '../../analysis/alignment/rope-map.ts';
import { tiePointsOf } from '../../analysis/rope/journal.ts';
import { measuredPosition, ropePosition } from '../../analysis/rope/units.ts';
import { decide } from '../state/decide.ts';
import { change, useApp } from '../state/store.ts';
import { dayOf, fixed } from '../text/format.ts';
import { typedNumber } from '../text/typed-number.ts';
import type { InspectionView } from '../workers/analysis-view.ts';

/** Pins what an inspection shows at one rope position to another one, and aligns anew. */
export async function pin(inspection: InspectionView, seenAt: number, belongsAt: number): Promise<void> {
  const measured = toMeasured(inspection.map, ropePosition(seenAt));
  await decide({
    label: `Pinned ${fixed(seenAt, 2)} m to ${fixed(belongsAt, 2)} m`,
    entries: [{ kind: 'tie-point', inspection: inspection.id, measured_m: measured, rope_m: belongsAt }],
    inverse: [{ kind: 'tie-point-removed', inspection: inspection.id, measured_m: measured }],
    rerun: true,
  });
}

/** Tie points set by hand for one inspection: listed, moved, removed and added. Every act is kept in the journal. */
export function TiePoints({ inspection }: { readonly inspection: InspectionView }) {
  const journal = useApp((state) => state.journal);
  const pinning = useApp((state) => state.compare.pinning);
  const compare = useApp((state) => state.compare);
  const ties = tiePointsOf(journal, inspection.id);
  return (
    <section className="ties" aria-label="Tie points">
      <div className="list-head">
        <h3>Tie points of {dayOf(inspection.date)}</h3>
        <button type="button" aria-pressed={pinning} onClick={() => change({ compare: { ...compare, pinning: !pinning } })}>{pinning ? 'Stop pinning' : 'Pin by dragging'}</button>
      </div>
      {pinning && <p className="remark">Drag on a strip from where this inspection shows a feature to where that feature is on the rope. The drag does not pan while this is on.</p>}
      {ties.length === 0 ? <p className="quiet">None by hand: the map rests on {inspection.map.basis || 'the signal alone'}.</p> : (
        <table className="criteria">
          <thead><tr><th scope="col">In the file, m</th><th scope="col">On the rope, m</th><th scope="col">By</th><th scope="col"><span className="hidden-words">Change</span></th></tr></thead>
          <tbody>{ties.map((tie) => <TieRow key={tie.measured_m} inspection={inspection.id} measured={tie.measured_m} rope={tie.rope_m} who={`${tie.who}, ${dayOf(tie.at)}`} />)}</tbody>
        </table>
      )}
      <PinForm inspection={inspection} />
    </section>
  );
}

function TieRow({ inspection, measured, rope, who }: { readonly inspection: string; readonly measured: number; readonly rope: number; readonly who: string }) {
  const [text, setText] = useState(rope.toFixed(2));
  const wanted = Number(text.replace(',', '.'));
  const entry = { kind: 'tie-point' as const, inspection, measured_m: measured, rope_m: rope };
  const removal = { kind: 'tie-point-removed' as const, inspection, measured_m: measured };
  return (
    <tr>
      <td className="number">{fixed(measured, 2)}</td>
      <td><input className="short" inputMode="decimal" value={text} aria-label={`Rope position of the tie point at ${fixed(measured, 2)} m in the file`} onChange={(event) => setText(event.target.value)} /></td>
      <td><small>{who}</small></td>
      <td>
        <button type="button" disabled={!Number.isFinite(wanted) || text.trim() === '' || Math.abs(wanted - rope) < 1e-9} onClick={() => void decide({ label: 'Tie point moved', entries: [{ ...entry, rope_m: wanted }], inverse: [entry], rerun: true })}>Move</button>
        <button type="button" onClick={() => void decide({ label: 'Tie point removed', entries: [removal], inverse: [entry], rerun: true })}>Remove</button>
      </td>
    </tr>
  );
}

/** Pinning by numbers, for the keyboard: taken from the cursor unless written. */
function PinForm({ inspection }: { readonly inspection: InspectionView }) {
  const cursor = useApp((state) => state.cursor);
  const [seen, setSeen] = useState<string | null>(null);
  const [belongs, setBelongs] = useState('');
  const seenText = seen ?? (cursor === null ? '' : cursor.toFixed(2));
  const [from, to] = [seenText, belongs].map(typedNumber);
  const inFile = Number.isFinite(from) ? toMeasured(inspection.map, ropePosition(from)) : null;
  const ready = inFile !== null && Number.isFinite(to);
  return (
    <form className="pin-form" onSubmit={(event) => { event.preventDefault(); if (ready) void pin(inspection, from, to).then(() => { setSeen(null); setBelongs(''); }); }}>
      <label>Feature now at, m<input className="short" inputMode="decimal" value={seenText} onChange={(event) => setSeen(event.target.value)} /></label>
      <label>belongs at, m<input className="short" inputMode="decimal" value={belongs} onChange={(event) => setBelongs(event.target.value)} /></label>
      <button type="submit" disabled={!ready}>Pin</button>
      <small className="quiet">{inFile === null ? 'Put the cursor on the feature, or write its position.' : `at ${fixed(inFile, 2)} m in the file, now ${fixed(toRope(inspection.map, measuredPosition(inFile)), 2)} m on the rope`}</small>
    </form>
  );
}
