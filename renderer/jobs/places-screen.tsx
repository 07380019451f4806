import { commandNamed } from '../state/named-command.ts';
import { change, useApp } from '../state/store.ts';
import { dayOf, figure, sentence, stretch } from '../text/format.ts';
import { STATE_WORDS, VERDICT_WORDS, plain } from '../text/words.ts';
import { CommandButton } from '../ui/command-button.tsx';
import { Glyph } from '../ui/glyph.tsx';
import { Panel } from '../ui/panel.tsx';
import { useHeight } from '../ui/use-height.ts';
import { PlaceList, rateOf } from './place-list.tsx';
import { reviewOf } from './place-review.ts';
import { RopeStrips } from './rope-strips.tsx';
import { byUrgency } from './urgency.ts';
import { useView } from './use-inspections.ts';
import { ZoomBar } from './rope-screen.tsx';
import { InspectionLegend } from './inspection-legend.tsx';

/** Going through the places one by one, by keyboard: what was found, what it means, what was decided. */
export function PlacesScreen() {
  const { places, inspections } = useView();
  const journal = useApp((state) => state.journal);
  const { height, ref } = useHeight(300);
  const done = places.filter((place) => reviewOf(journal, place.where) !== null).length;
  return (
    <div className="places-screen">
      <section className="places-list scrolls" aria-label="Places">
        <p className="list-head"><b>{done} of {places.length}</b> reviewed <span className="quiet">· <kbd>n</kbd> next, <kbd>p</kbd> former, <kbd>a</kbd> accept, <kbd>s</kbd> set aside, <kbd>l</kbd> relabel, <kbd>m</kbd> note</span></p>
        <Panel name="The places list"><PlaceList full /></Panel>
      </section>
      <section className="places-detail" aria-label="Chosen place">
        <Panel name="The place"><PlaceDetail /></Panel>
        <div className="strip-bar"><InspectionLegend /><ZoomBar /></div>
        <div ref={ref} className="sized"><Panel name="The strips"><RopeStrips height={Math.max(150, height - 145 - 3 * inspections.length)} few /></Panel></div>
      </section>
    </div>
  );
}

function PlaceDetail() {
  const view = useView();
  const id = useApp((state) => state.place);
  const journal = useApp((state) => state.journal);
  const found = byUrgency(view).find((each) => each.place.id === id);
  if (!found) return <p className="empty">Choose a place of the list, or press <kbd>n</kbd> for the most urgent one.</p>;
  const { place, criterion } = found;
  const review = reviewOf(journal, place.where);
  return (
    <div className="place-detail">
      <div className="place-head">
        <h2><span className={`state-${place.state}`}><Glyph name={place.state} size={15} /></span> {review?.label ?? (place.subject === 'zone' ? 'Zone' : 'Fault')} at {stretch(place.where.from, place.where.to)}: {STATE_WORDS[place.state]}</h2>
        <div className="place-acts" role="group" aria-label="Decide on this place">
          {['accept-place', 'set-aside-place', 'relabel-place', 'add-note', 'history-here'].map((name) => <CommandButton key={name} command={commandNamed(name)} />)}
        </div>
      </div>
      <p>{sentence(place.reason)} {rateOf(place) !== '' && <b>{rateOf(place)}.</b>}</p>
      {criterion !== null && <p><button type="button" className="link" onClick={() => change({ screen: 'criteria', clause: `${criterion.ruleSet} / ${criterion.clause}` })}>{plain(criterion.clause)}</button> {VERDICT_WORDS[criterion.verdict]} here: {figure(criterion.value)} {criterion.unit} against a limit of {figure(criterion.limit)} {criterion.unit}.</p>}
      {review !== null && <p className="place-review-line">{review.verdict} by <b>{review.who}</b> on {dayOf(review.at)}{review.reason === '' ? '' : `: ${review.reason}`}</p>}
      <div className="scrolls" tabIndex={0} role="region" aria-label="Series of this place"><table className="series">
        <caption className="hidden-words">Series of this place</caption>
        <thead><tr><th scope="row">Inspection</th>{place.series.map((point) => <th scope="col" key={point.inspection}>{dayOf(point.date)}</th>)}</tr></thead>
        <tbody><tr><th scope="row">{place.subject === 'zone' ? 'Loss, %' : 'Breaks'}</th>{place.series.map((point) => <td key={point.inspection}>{figure(point.value)} <small>± {figure(2 * point.uncertainty)}</small></td>)}</tr></tbody>
      </table></div>
    </div>
  );
}
