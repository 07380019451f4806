import type { RopeMap } from '../alignment/rope-map.ts';
import { toRope, uncertaintyAt } from '../alignment/rope-map.ts';
import type { LoosePhoto } from '../intake/photos/read-photos.ts';
import { positionInName } from '../intake/photos/position-in-name.ts';
import { headAt } from '../intake/photos/scan-clock.ts';
import { cameraAheadOf, photoPlaceOf } from '../rope/journal.ts';
import type { JournalEntry } from '../rope/journal.ts';
import type { RopeExtent } from '../rope/rope-extent.ts';
import type { CombinedInspection } from './combine-inspections.ts';

/** A photo that no note names, and where on the rope it belongs. */
export interface PlacedPhoto extends LoosePhoto {
  /** Rope position in metres, or null: to be placed by hand. */
  readonly position: number | null;
  /** Half width of where it may be, metres: the camera's clock counts whole seconds, and the map has its bound. Null where a person or a name says. */
  readonly within: number | null;
  readonly by: 'hand' | 'name' | 'time' | 'nothing';
  readonly reason: string;
}

interface Scans {
  readonly combined: readonly CombinedInspection[];
  /** One map for each of `combined`. */
  readonly maps: readonly RopeMap[];
  readonly extent: RopeExtent;
  readonly journal: readonly JournalEntry[];
}

type Place = Pick<PlacedPhoto, 'position' | 'within' | 'by' | 'reason'>;

/**
 * Puts photos on the rope: where a person put them, else by the position in their name, else by their time against the clock
 * of the scan, which tells where the head stood. What fits nothing stays without a place; no place is ever guessed.
 */
export function placePhotos(photos: readonly LoosePhoto[], scans: Scans): PlacedPhoto[] {
  return photos.map((photo) => {
    const decided = photoPlaceOf(scans.journal, photo.file);
    if (decided === undefined) return { ...photo, ...placeOf(photo, scans) };
    const reason = decided.at_m === null ? `taken off the rope by ${decided.who}` : `placed by ${decided.who}`;
    return { ...photo, inspection: decided.inspection, position: decided.at_m, within: null, by: 'hand', reason };
  });
}

function placeOf(photo: LoosePhoto, scans: Scans): Place {
  if (photo.kind === null) return nowhere('this file is not an image');
  if (photo.inspection === null) return nowhere('neither its folder nor its time nor a day in its name says which inspection it belongs to');
  const named = positionInName(photo.file);
  if (named !== null) {
    return isOnRope(named.position, scans.extent) ? { position: named.position, within: null, by: 'name', reason: named.why } : nowhere(`${named.why}: ${named.position.toFixed(1)} m, which is off the rope`);
  }
  if (photo.taken === null) return nowhere('no note names it, its name holds no position, and it has no time');
  return placeByTime(photo.taken, photo.inspection, scans);
}

function nowhere(reason: string): Place {
  return { position: null, within: null, by: 'nothing', reason };
}

function isOnRope(position: number, { ropeLength, loopLength }: RopeExtent): boolean {
  const length = loopLength ?? ropeLength;
  return position >= 0 && (length === null || position <= length);
}

/** By the runs of the inspection that tell the time: the camera stands at the head, and counts whole seconds. */
function placeByTime(taken: string, inspection: string, { combined, maps, journal }: Scans): Place {
  const index = combined.findIndex((each) => each.id === inspection);
  const clocks = index < 0 ? [] : combined[index].frames.filter(({ run }) => run.clock !== undefined);
  if (clocks.length === 0) return nowhere('its name holds no position, and no scan of its inspection tells the time of day');
  const ahead = cameraAheadOf(journal, inspection);
  const second = Date.parse(`${taken}Z`) / 1000 - ahead;
  const clockWords = ahead === 0 ? '' : ` (camera clock ${Math.abs(ahead)} s ${ahead > 0 ? 'ahead' : 'behind'})`;
  let why = '';
  for (const { run, toInspection } of clocks) {
    const head = headAt(run.clock!, second, second + 1);
    if ('why' in head) {
      why ||= `taken ${taken.replace('T', ' ')}${clockWords}, ${head.why}`;
      continue;
    }
    const measured = toInspection(head.position);
    return {
      position: toRope(maps[index], measured), within: head.within + uncertaintyAt(maps[index], measured), by: 'time',
      reason: `taken ${taken.slice(11)}${clockWords}, when the head stood at ${head.position.toFixed(1)} m of ${run.file} (clock: ${run.clock!.basis})`,
    };
  }
  return nowhere(why);
}
