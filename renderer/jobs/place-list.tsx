import { useEffect, useMemo, useRef, useState } from 'react';
import type { Place } from '../../analysis/growth/place.ts';
import { showPlace } from '../state/show.ts';
import { useApp } from '../state/store.ts';
import { counted, figure, stretch } from '../text/format.ts';
import { STATE_WORDS, VERDICT_WORDS } from '../text/words.ts';
import { Glyph } from '../ui/glyph.tsx';
import { Sparkline } from '../ui/sparkline.tsx';
import { reviewOf } from './place-review.ts';
import { byUrgency } from './urgency.ts';
import type { UrgentPlace } from './urgency.ts';
import { useView } from './use-inspections.ts';

const AT_ONCE = 150;

/** Places on the rope, the most urgent first; choosing one moves every strip to it. */
export function PlaceList({ full = false }: { readonly full?: boolean }) {
  const view = useView();
  const chosen = useApp((state) => state.place);
  const ordered = useMemo(() => byUrgency(view), [view]);
  const [shown, setShown] = useState(AT_ONCE);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => { list.current?.querySelector('[aria-current=true]')?.scrollIntoView?.({ block: 'nearest' }); }, [chosen]);
  if (ordered.length === 0) return <p className="empty">{view.inspections.length === 0 ? 'No inspection could be used: nothing is known of this rope.' : 'No place with a fault or a zone was found in the lengths inspected.'}</p>;
  const cut = Math.max(shown, ordered.findIndex((each) => each.place.id === chosen) + 1);
  return (
    <>
      <ol className="places" ref={list}>
        {ordered.slice(0, cut).map((each) => <PlaceRow key={each.place.id} {...each} chosen={each.place.id === chosen} full={full} />)}
      </ol>
      {ordered.length > cut && <button type="button" className="more" onClick={() => setShown(shown + 500)}>{counted(ordered.length - cut, 'more place')}: show on</button>}
    </>
  );
}

function PlaceRow({ place, criterion, chosen, full }: UrgentPlace & { readonly chosen: boolean; readonly full: boolean }) {
  const journal = useApp((state) => state.journal);
  const review = reviewOf(journal, place.where);
  return (
    <li className={`place${review?.verdict === 'set-aside' ? ' place-set-aside' : ''}`}>
      <button type="button" className="place-row" aria-current={chosen} onClick={() => showPlace(place.id)}>
        <span className={`place-state state-${place.state}`}><Glyph name={place.state} /> {STATE_WORDS[place.state]}</span>
        <span className="place-where">{stretch(place.where.from, place.where.to)}</span>
        <span className="place-rate">{[review?.label || place.subject, rateOf(place), full ? tripRateOf(place) : ''].filter(Boolean).join(', ')}</span>
        {full && <Sparkline series={place.series} unit={place.subject === 'zone' ? '%' : 'breaks'} />}
        {criterion !== null && criterion.verdict !== 'not-reached' && <span className={`verdict verdict-${criterion.verdict}`}>{criterion.clause}: {VERDICT_WORDS[criterion.verdict]}</span>}
        {review !== null && <span className="place-review">{review.verdict} by {review.who}</span>}
      </button>
    </li>
  );
}

/** The rate in words with its interval; a place whose rate cannot be said says nothing. */
export function rateOf(place: Place): string {
  if (place.ratePerYear === null) return '';
  const unit = place.subject === 'zone' ? '%/yr' : 'breaks/yr';
  const interval = place.rateLow !== null && place.rateHigh !== null ? ` (${figure(place.rateLow)} to ${figure(place.rateHigh)})` : '';
  return `${place.ratePerYear > 0 ? '+' : ''}${figure(place.ratePerYear)} ${unit}${interval}`;
}

/** The same by a thousand trips, where something grows and trips are on record. */
function tripRateOf({ state, tripRate }: Place): string {
  return tripRate === null || state !== 'growing' ? '' : `${figure(tripRate.perThousand)} per 1000 trips (${figure(tripRate.low)} to ${figure(tripRate.high)})`;
}
