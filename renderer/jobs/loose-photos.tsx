import { useState } from 'react';
import type { Assessment } from '../../analysis/assessment/schema.ts';
import { photoPlaceOf } from '../../analysis/rope/journal.ts';
import { addPhotos } from '../state/add-photos.ts';
import { decide } from '../state/decide.ts';
import { showLength } from '../state/show.ts';
import { change, useApp } from '../state/store.ts';
import type { Omitted } from '../state/app-state.ts';
import { dayOf, fixed, placed, sentence } from '../text/format.ts';
import { typedNumber } from '../text/typed-number.ts';
import { Sheet } from '../ui/dialog.tsx';
import { PhotoView } from '../ui/photo-view.tsx';
import { CameraClock } from './camera-clock.tsx';
import { useView } from './use-inspections.ts';

type Photo = Assessment['photos'][number];

/** Photos of the folder that no note names: where each was put and why, and placing by hand. */
export function LoosePhotos() {
  const { assessment, record } = useView();
  const journal = useApp((state) => state.journal);
  const [shown, setShown] = useState<Photo | null>(null);
  const rope = useApp((state) => state.rope);
  const { photos } = assessment;
  const timed = record.inspections.filter((each) => photos.some((photo) => photo.inspection === each.id && photo.taken !== null));
  const ordered = [...photos].sort((a, b) => (a.position_m ?? -Infinity) - (b.position_m ?? -Infinity) || (a.file < b.file ? -1 : 1));
  return (
    <>
      <h2>Photos that no note names</h2>
      <p className="quiet">Placed by the position in their name, else by their time against the clock of the scan, with the camera taken to be at the head. What neither places waits here for a hand. Originals are never changed, and where a camera says it stood is not read.</p>
      <p><label className="add-photos">Add photos<input type="file" accept="image/*" multiple onChange={(event) => void addPhotos([...(event.target.files ?? [])])} /></label> {rope?.writable === false && <small className="quiet">{rope.remark}</small>}</p>
      {timed.map((each) => <CameraClock key={`${each.id} ${journal.length}`} inspection={each.id} date={each.date} />)}
      <ul className="loose-photos">{ordered.map((photo) => <PhotoRow key={`${photo.file} ${journal.length}`} photo={photo} onShow={() => setShown(photo)} />)}</ul>
      {shown !== null && <Sheet title={shown.file} onClose={() => setShown(null)} wide><PhotoView photo={shown.file} inspection={shown.inspection ?? ''} size={860} alt={`Photo ${shown.file}`} /></Sheet>}
    </>
  );
}

function PhotoRow({ photo, onShow }: { readonly photo: Photo; readonly onShow: () => void }) {
  const { record, extent } = useView();
  const journal = useApp((state) => state.journal);
  const [inspection, setInspection] = useState(photo.inspection ?? '');
  const [at, setAt] = useState(photo.position_m === null ? '' : photo.position_m.toFixed(2));
  const place = typedNumber(at);
  const wrong = inspection === '' ? 'Choose the inspection.' : !(place >= extent.from && place <= extent.to) ? `Write a position from ${fixed(extent.from, 1)} to ${fixed(extent.to, 1)} m.` : null;
  const former = photoPlaceOf(journal, photo.file);
  const inverse: Omitted = former === undefined ? { kind: 'photo-place-removed', file: photo.file } : { kind: 'photo-place', file: photo.file, inspection: former.inspection, at_m: former.at_m };
  const put = (label: string, entry: Omitted) => void decide({ label, entries: [entry], inverse: [inverse], rerun: true });
  return (
    <li className={photo.position_m === null ? 'loose-photo loose-photo-waiting' : 'loose-photo'}>
      <button type="button" className="button-plain" onClick={onShow} aria-label={`Show ${photo.file}`}><PhotoView photo={photo.file} inspection={photo.inspection ?? ''} size={96} alt="" /></button>
      <div>
        <p><b>{photo.file}</b> {photo.position_m === null ? <span className="loose-photo-state">not placed</span> : <button type="button" className="link" onClick={() => { change({ screen: 'rope' }); showLength(photo.position_m! - 5, photo.position_m! + 5); }}>at {placed(photo.position_m, photo.within_m)}</button>}</p>
        <p className="quiet">{sentence(photo.reason)}</p>
        <form className="form form-line" onSubmit={(event) => { event.preventDefault(); if (wrong === null) put(`Photo placed at ${fixed(place, 2)} m`, { kind: 'photo-place', file: photo.file, inspection, at_m: place }); }}>
          <label>Inspection<select value={inspection} onChange={(event) => setInspection(event.target.value)}>{inspection === '' && <option value="">not known</option>}{record.inspections.map((each) => <option key={each.id} value={each.id}>{dayOf(each.date)}</option>)}</select></label>
          <label>Position, m<input className="short" inputMode="decimal" value={at} onChange={(event) => setAt(event.target.value)} /></label>
          <button type="submit" disabled={wrong !== null} title={wrong ?? ''}>Place</button>
          {photo.position_m !== null && inspection !== '' && <button type="button" onClick={() => put('Photo taken off the rope', { kind: 'photo-place', file: photo.file, inspection, at_m: null })}>Take off the rope</button>}
          {photo.by === 'hand' && <button type="button" onClick={() => put('Photo left to its name and time', { kind: 'photo-place-removed', file: photo.file })}>Leave to name and time</button>}
        </form>
      </div>
    </li>
  );
}
