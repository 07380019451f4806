import { useState } from 'react';
import type { VisualKind } from '../../analysis/intake/visual-note.ts';
import { decide } from '../state/decide.ts';
import { change, store, useApp } from '../state/store.ts';
import { troubleOf } from '../state/open-rope.ts';
import { dayOf } from '../text/format.ts';
import { typedNumber } from '../text/typed-number.ts';
import { Sheet } from '../ui/dialog.tsx';
import { useView } from './use-inspections.ts';

const KINDS: readonly { readonly kind: VisualKind; readonly words: string; readonly unit: string }[] = [
  { kind: 'broken-wires', words: 'broken wires on the crown', unit: 'wires' }, { kind: 'broken-wires-valley', words: 'broken wires in a valley', unit: 'wires' },
  { kind: 'broken-wires-termination', words: 'broken wires at a termination', unit: 'wires' }, { kind: 'diameter', words: 'diameter', unit: 'mm' }, { kind: 'lay-length', words: 'lay length', unit: 'mm' },
  { kind: 'corrosion-external', words: 'corrosion outside', unit: '' }, { kind: 'corrosion-internal', words: 'corrosion inside', unit: '' }, { kind: 'waviness', words: 'waviness (gap)', unit: 'mm' },
  { kind: 'distortion', words: 'distortion', unit: '' }, { kind: 'lubrication', words: 'lubrication', unit: '' }, { kind: 'heat', words: 'heat damage', unit: '' },
  { kind: 'end-attachment', words: 'end attachment', unit: '' }, { kind: 'opened', words: 'opened and looked inside', unit: '' }, { kind: 'other', words: 'something else', unit: '' },
];

/** Something seen or measured by hand, put on the rope. It goes to the journal and into every judgement at once. */
export function NoteDialog() {
  const { inspections } = useView();
  const cursor = useApp((state) => state.cursor);
  const rope = useApp((state) => state.rope);
  const [at, setAt] = useState(cursor === null ? '' : cursor.toFixed(2));
  const [to, setTo] = useState('');
  const [inspection, setInspection] = useState(inspections.at(-1)?.id ?? '');
  const [kind, setKind] = useState<VisualKind>('broken-wires');
  const [value, setValue] = useState('');
  const [across, setAcross] = useState('');
  const [severity, setSeverity] = useState('');
  const [remark, setRemark] = useState('');
  const [photo, setPhoto] = useState<File | null>(null);
  const number = (text: string) => (text.trim() === '' ? null : typedNumber(text));
  const from = number(at);
  const end = number(to) ?? from;
  const measured = number(value);
  const second = kind === 'diameter' ? number(across) : null;
  const wrong = from === null || !Number.isFinite(from) ? 'Write where it is, in metres of rope position.'
    : end === null || !Number.isFinite(end) || end < from ? 'The end lies before the beginning.'
      : [measured, second].some((each) => each !== null && !Number.isFinite(each)) ? 'The value is not a number.' : inspection === '' ? 'There is no inspection to add this to.' : null;
  const chosen = KINDS.find((each) => each.kind === kind) ?? KINDS[0];
  const keep = async () => {
    change({ dialog: null });
    const photoName = await keepPhoto(photo);
    if (photo !== null && photoName === null) return;
    const note = { from, to: end, kind, kindAsWritten: chosen.words, value: measured, unit: chosen.unit, severity: severity.trim(), photo: photoName, remark: remark.trim() };
    const notes = second === null ? [note] : [note, { ...note, value: second }];
    await decide({ label: `Visual note at ${at} m`, entries: notes.map((each) => ({ kind: 'visual-note' as const, inspection, note: each })), inverse: [], rerun: true });
  };
  return (
    <Sheet title="Add a visual note" onClose={() => change({ dialog: null })}>
      <form className="form form-two" onSubmit={(event) => { event.preventDefault(); if (wrong === null) void keep(); }}>
        <label>Inspection<select value={inspection} onChange={(event) => setInspection(event.target.value)}>{inspections.map((each) => <option key={each.id} value={each.id}>{dayOf(each.date)}</option>)}</select></label>
        <label>Kind<select value={kind} onChange={(event) => setKind(event.target.value as VisualKind)}>{KINDS.map((each) => <option key={each.kind} value={each.kind}>{each.words}</option>)}</select></label>
        <label>Position, m<input autoFocus inputMode="decimal" value={at} onChange={(event) => setAt(event.target.value)} /></label>
        <label>To, m (for a length)<input inputMode="decimal" value={to} onChange={(event) => setTo(event.target.value)} /></label>
        <label>Value{chosen.unit === '' ? '' : `, ${chosen.unit}`}<input inputMode="decimal" value={value} onChange={(event) => setValue(event.target.value)} /></label>
        {kind === 'diameter' && <label>At right angles to it, mm<input inputMode="decimal" value={across} onChange={(event) => setAcross(event.target.value)} /></label>}
        <label>Severity<input value={severity} onChange={(event) => setSeverity(event.target.value)} placeholder="slight, medium, high …" /></label>
        <label className="form-wide">Remark<textarea rows={2} value={remark} onChange={(event) => setRemark(event.target.value)} /></label>
        <label className="form-wide">Photo (copied into the folder, the original stays as it is)<input type="file" accept="image/*" onChange={(event) => setPhoto(event.target.files?.[0] ?? null)} /></label>
        <p className="quiet form-wide">{wrong ?? (rope?.writable === false ? rope.remark : 'Kept in the journal for good, with who and when; every criterion is judged again.')}</p>
        <button type="submit" className="button-strong" disabled={wrong !== null}>Add the note</button>
      </form>
    </Sheet>
  );
}

/** The photo's name in the folder; null where there is none or it could not be kept, which is then said. */
async function keepPhoto(photo: File | null): Promise<string | null> {
  const { rope } = store.getState();
  if (photo === null || rope === null) return null;
  try {
    return await rope.addFile(photo);
  } catch (error) {
    change({ trouble: troubleOf(error, 'The photo could not be added, and the note was not kept') });
    return null;
  }
}
