import { Fragment, useMemo } from 'react';
import type { ReactNode } from 'react';
import type { Place } from '../../analysis/growth/place.ts';
import type { VisualNote } from '../../analysis/intake/visual-note.ts';
import type { Landmark } from '../../analysis/rope/record.ts';
import type { RopeWindow } from '../state/app-state.ts';
import { showLength, showPlace } from '../state/show.ts';
import { counted, dayOf, figure, stretch } from '../text/format.ts';
import { STATE_WORDS, plain } from '../text/words.ts';
import { Glyph } from '../ui/glyph.tsx';
import { PhotoView } from '../ui/photo-view.tsx';
import type { InspectionView } from '../workers/analysis-view.ts';
import { clustersOf } from './cluster.ts';
import { GUTTER_LEFT, GUTTER_RIGHT, barOf, percentOf } from './strip-scale.ts';

interface LaneProps {
  readonly title: string;
  readonly height?: number;
  readonly children: ReactNode;
}

export function Lane({ title, height, children }: LaneProps) {
  return (
    <div className="lane" style={height === undefined ? undefined : { height }}>
      <span className="strip-title">{title}</span>
      <div className="strip-body">{children}</div>
    </div>
  );
}

interface Drawn {
  readonly window: RopeWindow;
  /** Width of the whole strip in pixels. */
  readonly width: number;
}

const inView = (from: number, to: number, window: RopeWindow) => to >= window.from && from <= window.to;
/** A mark at a share of the lane, kept whole at both ends. */
const within = (percent: number, half: number): string => `clamp(${half}px, ${percent}%, calc(100% - ${half}px))`;
const perPixel = ({ window, width }: Drawn) => (window.to - window.from) / Math.max(1, width - GUTTER_LEFT - GUTTER_RIGHT);

/** Corrosion and wear zones of the newest inspection as bars, those of earlier ones as thin lines below. */
export function ZoneLane({ window, width, inspections, colours }: Drawn & { readonly inspections: readonly InspectionView[]; readonly colours: ReadonlyMap<string, string> }) {
  const newest = inspections.at(-1);
  if (!newest) return null;
  const pixel = perPixel({ window, width });
  const earlier = inspections.slice(0, -1);
  return (
    <Lane title="Zones" height={24 + 3 * earlier.length}>
      {newest.zones.filter((zone) => inView(zone.where.from, zone.where.to, window)).map((zone) => {
        const words = `${zone.kind} ${figure(zone.meanLossPercent)} %`;
        const wide = (Math.min(zone.where.to, window.to) - Math.max(zone.where.from, window.from)) / pixel;
        return (
          <button key={zone.id} type="button" className={`zone zone-${zone.kind}`} style={barOf(zone.where.from, zone.where.to, window, 0.6) ?? undefined}
            onClick={() => showLength(zone.where.from, zone.where.to)}
            aria-label={`${words}, zone at ${stretch(zone.where.from, zone.where.to)}`} title={`${words}, ${stretch(zone.where.from, zone.where.to)}`}>
            {wide > 90 ? words : wide > 16 ? <span aria-hidden="true">{zone.kind[0].toUpperCase()}</span> : ''}
          </button>
        );
      })}
      {earlier.map((inspection, row) => inspection.zones.filter((zone) => inView(zone.where.from, zone.where.to, window)).map((zone) => (
        <i key={`${inspection.id} ${zone.id}`} className="zone-former" style={{ ...barOf(zone.where.from, zone.where.to, window, 0.4), top: 22 + 3 * row, background: colours.get(inspection.id) }} />
      )))}
    </Lane>
  );
}

/** Places with local faults; those too near to be told apart at this zoom as one mark with their count. */
export function FaultLane({ window, width, places, chosen }: Drawn & { readonly places: readonly Place[]; readonly chosen: string | null }) {
  const pixel = perPixel({ window, width });
  const clusters = useMemo(() => clustersOf(places.filter((place) => place.subject === 'fault' && inView(place.where.from, place.where.to, window)), (place) => place.where, pixel * 20), [places, window, pixel]);
  return (
    <Lane title="Faults" height={26}>
      {clusters.map(({ from, to, members }) => {
        const [first] = members;
        const single = members.length === 1;
        const state = single ? first.state : leading(members);
        return (
          <button key={`${from} ${members.length}`} type="button" className={`mark mark-${state}${members.some((place) => place.id === chosen) ? ' mark-chosen' : ''}`} style={{ left: within(percentOf((from + to) / 2, window), 9) }}
            onClick={() => (single ? showPlace(first.id) : showLength(from, to))}
            aria-label={single ? `Fault ${STATE_WORDS[first.state]} at ${stretch(from, to)}` : `${counted(members.length, 'fault')}, ${stretch(from, to)}, foremost ${STATE_WORDS[state]}`}
            title={single ? `${first.id}: ${STATE_WORDS[first.state]}, ${stretch(from, to)}` : `${members.length} faults, ${stretch(from, to)}`}>
            <Glyph name={state} size={11} />{single ? null : <small>{members.length}</small>}
          </button>
        );
      })}
    </Lane>
  );
}

function leading(members: readonly Place[]): Place['state'] {
  const order = ['growing', 'new', 'not-inspected', 'stable', 'not-found', 'receding'] as const;
  return order.find((state) => members.some((place) => place.state === state)) ?? 'stable';
}

/** Visual notes, with the photo where there is one. */
export function NoteLane({ window, width, notes, onOpen }: Drawn & { readonly notes: readonly VisualNote[]; readonly onOpen: (notes: readonly VisualNote[]) => void }) {
  const pixel = perPixel({ window, width });
  const clusters = useMemo(() => clustersOf(notes.filter((note) => inView(note.from, note.to, window)), (note) => keptInside(note, window, 23 * pixel), pixel * 46), [notes, window, pixel]);
  return (
    <Lane title="Seen by eye" height={38}>
      {clusters.map(({ from, to, members }) => {
        const photo = members.find((note) => note.photo !== null);
        const words = members.length === 1 ? `${plain(members[0].kind)} ${members[0].value ?? ''} ${members[0].unit}`.trim() : counted(members.length, 'visual note');
        return (
          <button key={`${from} ${members.length} ${members[0].id}`} type="button" className="note-mark" style={{ left: within(percentOf((from + to) / 2, window), 23) }} onClick={() => onOpen(members)} aria-label={`${words}, ${stretch(from, to)}`} title={`${words}, ${stretch(from, to)}`}>
            {photo?.photo ? <PhotoView photo={photo.photo} inspection={photo.inspection} size={64} alt="" /> : <Glyph name="note" size={16} />}
            {members.length > 1 && <small>{members.length}</small>}
          </button>
        );
      })}
    </Lane>
  );
}

/** Sockets, splices, sheaves and markers of the record; a name that has no room is in the mark's title. */
export function LandmarkLane({ window, width, landmarks }: Drawn & { readonly landmarks: readonly Landmark[] }) {
  const body = Math.max(1, width - GUTTER_LEFT - GUTTER_RIGHT);
  return (
    <Lane title="Landmarks" height={20}>
      {namedMarks(landmarks, window, body).map(({ mark, from, to, left, words }) => {
        const long = to > from;
        const bar = long ? barOf(from, to, window) : null;
        return (
          <Fragment key={mark.name}>
            {bar && <span className="landmark landmark-long" style={bar} title={mark.name} />}
            <span className={`landmark${left ? ' landmark-left' : ''}${long ? ' landmark-words' : ''}`} style={{ left: `${Math.min(100, Math.max(0, percentOf(left ? to : from, window)))}%` }} title={mark.name}>
              {!long && <Glyph name="landmark" size={10} />}{words}
            </span>
          </Fragment>
        );
      })}
    </Lane>
  );
}

/** Where a mark of that half width is drawn, so that marks pushed in from an end join those that they would cover. */
function keptInside({ from, to }: { readonly from: number; readonly to: number }, window: RopeWindow, half: number): { from: number; to: number } {
  const middle = Math.min(window.to - half, Math.max(window.from + half, (from + to) / 2));
  return { from: middle, to: middle };
}

/** Width of a letter of the lane's small type, near enough to keep names apart. */
const LETTER = 5.7;

function namedMarks(landmarks: readonly Landmark[], window: RopeWindow, body: number) {
  const pixel = (position: number) => Math.min(body, Math.max(0, (percentOf(position, window) / 100) * body));
  const marks = landmarks.map((mark) => ({ mark, from: mark.from_m ?? mark.position_m ?? 0, to: mark.to_m ?? mark.position_m ?? 0 })).filter(({ from, to }) => inView(from, to, window)).sort((a, b) => a.from - b.from);
  let free = -Infinity;
  return marks.map((each, index) => {
    const room = each.mark.name.length * LETTER + 22;
    const left = pixel(each.from) + room > body;
    const start = left ? pixel(each.to) - room : pixel(each.from);
    const next = marks[index + 1];
    const fits = start >= free && (next === undefined || left || start + room <= Math.max(pixel(next.from), start + 1) || pixel(next.from) + next.mark.name.length * LETTER > body);
    if (fits) free = start + room;
    return { ...each, left, words: fits ? each.mark.name : '' };
  });
}

/** What each inspection saw of the rope: solid where it did, hatched where it did not. */
export function SeenLane({ window, inspections, colours }: Drawn & { readonly inspections: readonly InspectionView[]; readonly colours: ReadonlyMap<string, string> }) {
  return (
    <Lane title="Seen" height={Math.max(16, 6 * inspections.length + 4)}>
      {inspections.map((inspection, row) => (
        <div key={inspection.id} className="seen-row" style={{ top: 2 + 6 * row }} role="img" aria-label={`${dayOf(inspection.date)}: ${counted(inspection.covered.length, 'length')} seen`}>
          {inspection.covered.map((each) => {
            const bar = barOf(each.from, each.to, window, 0.1);
            return bar && <i key={each.from} style={{ ...bar, background: colours.get(inspection.id) }} />;
          })}
        </div>
      ))}
    </Lane>
  );
}
