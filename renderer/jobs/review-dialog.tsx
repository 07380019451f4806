import { useState } from 'react';
import { decide } from '../state/decide.ts';
import type { Omitted } from '../state/app-state.ts';
import { change, store, useApp } from '../state/store.ts';
import { stretch } from '../text/format.ts';
import { Sheet } from '../ui/dialog.tsx';
import { reviewOf } from './place-review.ts';
import { useView } from './use-inspections.ts';

const TITLES = { accepted: 'Accept', 'set-aside': 'Set aside', relabelled: 'Relabel' } as const;

/** One decision on one place, with its reason; who and when are added when it is kept. */
export function ReviewDialog() {
  const { places } = useView();
  const id = useApp((state) => state.place);
  const verdict = useApp((state) => state.review) ?? 'accepted';
  const rope = useApp((state) => state.rope);
  const user = useApp((state) => state.shell?.user ?? '');
  const [reason, setReason] = useState('');
  const [label, setLabel] = useState('');
  const place = places.find((each) => each.id === id);
  const close = () => change({ dialog: null, review: null });
  if (!place) return null;
  const needsReason = verdict === 'set-aside';
  const wrong = needsReason && reason.trim() === '' ? 'Setting a place aside needs a reason.' : verdict === 'relabelled' && label.trim() === '' ? 'Write the new label.' : null;
  const keep = async () => {
    const where = { from_m: place.where.from, to_m: place.where.to };
    const former = reviewOf(store.getState().journal, place.where);
    const inverse: Omitted = former === null
      ? { kind: 'place-review', ...where, verdict: 'withdrawn', reason: 'taken back' }
      : { kind: 'place-review', from_m: former.from_m, to_m: former.to_m, verdict: former.verdict, reason: former.reason, ...(former.label === undefined ? {} : { label: former.label }) };
    const entry: Omitted = { kind: 'place-review', ...where, verdict, reason: reason.trim(), ...(label.trim() === '' ? {} : { label: label.trim() }) };
    close();
    await decide({ label: `${TITLES[verdict]}: ${stretch(place.where.from, place.where.to)}`, entries: [entry], inverse: [inverse], rerun: false });
  };
  return (
    <Sheet title={`${TITLES[verdict]}: ${place.subject} at ${stretch(place.where.from, place.where.to)}`} onClose={close}>
      <form className="form" onSubmit={(event) => { event.preventDefault(); if (wrong === null) void keep(); }}>
        {verdict === 'relabelled' && <label>New label<input autoFocus value={label} onChange={(event) => setLabel(event.target.value)} placeholder="for example: splice tuck" /></label>}
        <label>{needsReason ? 'Reason' : 'Remark (may be left empty)'}<textarea autoFocus={verdict !== 'relabelled'} rows={3} value={reason} onChange={(event) => setReason(event.target.value)} /></label>
        <p className="quiet">{wrong ?? (rope?.writable === false ? rope.remark : `Kept in the journal as decided by ${user || 'not named'}, with the time. The finding itself stays in the assessment.`)}</p>
        <button type="submit" className="button-strong" disabled={wrong !== null}>{TITLES[verdict]}</button>
      </form>
    </Sheet>
  );
}
