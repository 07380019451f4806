import { useState } from 'react';
import type { SectionFinding, SectionHistory, SectionInspection } from '../../analysis/section/section.ts';
import { showLength } from '../state/show.ts';
import { useApp } from '../state/store.ts';
import { useAnswer } from '../state/use-answer.ts';
import { dayOf, figure, fixed, placed, sentence, share, stretch } from '../text/format.ts';
import { typedNumber } from '../text/typed-number.ts';
import { plain } from '../text/words.ts';
import { Panel } from '../ui/panel.tsx';
import { NoteItem } from '../ui/note-item.tsx';
import { useHeight } from '../ui/use-height.ts';
import { ZoomBar } from './rope-screen.tsx';
import { RopeStrips } from './rope-strips.tsx';
import { useView } from './use-inspections.ts';

const FINDINGS: Record<SectionFinding, { readonly words: string; readonly meaning: string }> = {
  indicated: { words: 'Indicated', meaning: 'At least one inspection shows something here.' },
  'not-indicated': { words: 'Not indicated', meaning: 'What was inspected here shows nothing above what could be found. That is no proof of soundness.' },
  'not-inspected': { words: 'NOT INSPECTED', meaning: 'The head did not reach this place. Nothing can be said of it; it is not "no defect".' },
  'no-data': { words: 'No data', meaning: 'No inspection up to this date has usable data.' },
};

/** For the investigator: what every inspection up to a date shows at one place of the rope. */
export function SectionScreen() {
  const view = useView();
  const cursor = useApp((state) => state.cursor);
  const parted = view.record.events.find((event) => event.kind === 'parted');
  const [at, setAt] = useState((cursor ?? parted?.position_m ?? (view.extent.from + view.extent.to) / 2).toFixed(2));
  const [half, setHalf] = useState('3');
  const [date, setDate] = useState('');
  const [place, width] = [at, half].map(typedNumber);
  const wrong = !Number.isFinite(place) || place < view.extent.from || place > view.extent.to ? `Write a position from ${fixed(view.extent.from, 1)} to ${fixed(view.extent.to, 1)} m.` : !(width > 0) ? 'The half width must be more than 0 m.' : null;
  const { answer, failure } = useAnswer('section', wrong === null ? { at: place, halfWidth: width, date: date === '' ? null : date } : null);
  const { height, ref } = useHeight(300);
  return (
    <div className="section-screen">
      <section className="section-question" aria-label="Which section">
        <div className="form form-line">
          <label>Rope position, m<input inputMode="decimal" value={at} onChange={(event) => setAt(event.target.value)} /></label>
          <label>Half width, m<input className="short" inputMode="decimal" value={half} onChange={(event) => setHalf(event.target.value)} /></label>
          <label>Inspections up to<input type="date" value={date} onChange={(event) => setDate(event.target.value)} /></label>
          <button type="button" disabled={cursor === null} onClick={() => { if (cursor !== null) setAt(cursor.toFixed(2)); }}>Take the cursor’s position</button>
          <button type="button" disabled={wrong !== null} onClick={() => showLength(place - width, place + width)}>Show on the strips</button>
        </div>
        {wrong !== null && <p className="remark">{wrong}</p>}
        {parted && <p className="remark">The record says that this rope parted on {dayOf(parted.date)}{parted.position_m === undefined ? '' : ` at ${fixed(parted.position_m, 2)} m`}. An investigation grants no service.</p>}
      </section>
      <div className="section-answer scrolls" tabIndex={0} role="region" aria-label="History of this section">
        {failure !== null && <p role="alert" className="remark">{failure}</p>}
        {answer !== null && wrong === null && <Panel name="The history"><History history={answer} /></Panel>}
      </div>
      <section className="section-strips" aria-label="Strips"><div className="strip-bar"><span /><ZoomBar /></div><div ref={ref} className="sized"><Panel name="The strips"><RopeStrips height={Math.max(146, height - 142 - 3 * view.inspections.length)} few /></Panel></div></section>
    </div>
  );
}

function History({ history: { section } }: { readonly history: SectionHistory }) {
  const { words, meaning } = FINDINGS[section.finding];
  return (
    <>
      <p className={`finding finding-${section.finding}`}>{section.finding === 'not-inspected' && <span className="hatch hatch-sample" aria-hidden="true" />}<b>{words}</b> <span>{meaning}</span></p>
      <p>{sentence(section.reason)}</p>
      <table className="criteria">
        <caption className="hidden-words">What every inspection shows here</caption>
        <thead><tr><th scope="col">Inspection</th><th scope="col">Finding</th><th scope="col" className="number">Seen</th><th scope="col" className="number">Mean loss, %</th><th scope="col" className="number">Loss, against the rest</th><th scope="col" className="number">Faults</th><th scope="col" className="number">LF texture, ×</th><th scope="col" className="number">Smallest loss that shows, %</th><th scope="col" className="number">Position ±, m</th></tr></thead>
        <tbody>{section.inspections.map((each) => <HistoryRow key={each.id} inspection={each} />)}</tbody>
      </table>
      {section.growth.map((each) => <p key={each.id}><b>{each.subject}, {stretch(each.from_m, each.to_m)}: {plain(each.state)}.</b> {sentence(each.reason)}</p>)}
      {section.criteria.length > 0 && <ul className="plain-list">{section.criteria.map((each, index) => <li key={index}><b>{plain(each.clause)}</b> {plain(each.verdict)}: {figure(each.value)} {each.unit} against {figure(each.limit)} {each.unit}, {stretch(each.from_m, each.to_m)}</li>)}</ul>}
      <NotesHere inspections={section.inspections} />
      <PhotosHere inspections={section.inspections} />
    </>
  );
}

function HistoryRow({ inspection }: { readonly inspection: SectionInspection }) {
  const number = (value: number | null, decimals: number) => (value === null ? <span className="quiet">–</span> : fixed(value, decimals));
  const hidden = inspection.finding === 'not-inspected' || inspection.finding === 'no-data';
  return (
    <tr>
      <th scope="row">{dayOf(inspection.date)}</th>
      <td className={`finding-${inspection.finding}`}>{FINDINGS[inspection.finding].words}</td>
      <td className="number">{share(inspection.coverage_share)}</td>
      {hidden ? <td colSpan={6} className="not-inspected-cell"><span>{FINDINGS[inspection.finding].words}</span></td> : (
        <>
          <td className="number">{number(inspection.mean_loss_percent, 2)}</td>
          <td className="number">{inspection.loss_rank_percentile === null ? '–' : `more than ${Math.min(99, Math.floor(inspection.loss_rank_percentile))} %`}</td>
          <td className="number">{inspection.faults.length}</td>
          <td className="number">{number(inspection.texture_ratio, 2)}</td>
          <td className="number">{number(inspection.smallest_detectable_loss_percent, 2)}</td>
          <td className="number">{number(inspection.position_uncertainty_m, 3)}</td>
        </>
      )}
    </tr>
  );
}

function NotesHere({ inspections }: { readonly inspections: readonly SectionInspection[] }) {
  const notes = inspections.flatMap((each) => each.notes.map((note) => ({ note, inspection: each })));
  if (notes.length === 0) return <p className="quiet">No visual note is on record here.</p>;
  return (
    <ul className="notes">
      {notes.map(({ note, inspection }, index) => (
        <NoteItem key={index} photo={note.photo} inspection={inspection.id} size={220} alt={`Photo of ${plain(note.kind)} at ${stretch(note.from_m, note.to_m)}`}
          what={<><b>{plain(note.kind)}</b> {note.value === null ? '' : `${note.value} ${note.unit}`} {note.severity}</>} where={`${stretch(note.from_m, note.to_m)}, ${dayOf(inspection.date)}`} remark={note.remark} />
      ))}
    </ul>
  );
}

/** Photos without a note, with where they lie and why they are taken to lie there. */
function PhotosHere({ inspections }: { readonly inspections: readonly SectionInspection[] }) {
  const photos = inspections.flatMap((each) => each.photos.map((photo) => ({ photo, inspection: each })));
  if (photos.length === 0) return null;
  return (
    <ul className="notes">
      {photos.map(({ photo, inspection }) => (
        <NoteItem key={photo.file} photo={photo.file} inspection={inspection.id} size={220} alt={`Photo at ${fixed(photo.position_m, 2)} m`}
          what={<b>photo</b>} where={`${placed(photo.position_m, photo.within_m)}, ${dayOf(inspection.date)}`} remark={sentence(photo.reason)} />
      ))}
    </ul>
  );
}
