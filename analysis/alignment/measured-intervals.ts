import { unionOf } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import type { RopeMap } from './rope-map.ts';
import { interpolate, toMeasured } from './rope-map.ts';

/** Where the given lengths of a file lie on the rope: sorted, disjoint; on a loop wrapped into [0, loop length), so that one may become two. */
export function intervalsOnRope(intervals: readonly Interval<'measured'>[], map: RopeMap): Interval<'rope'>[] {
  const measured = map.knots.map((knot) => knot.measured);
  const rope = map.knots.map((knot) => knot.rope);
  return unionOf(intervals.flatMap((each) => {
    const a = interpolate(measured, rope, each.from);
    const b = interpolate(measured, rope, each.to);
    return wrapped(Math.min(a, b), Math.max(a, b), map.loopLength);
  }));
}

/** Where the given lengths of rope lie in a file. On a loop a length may show more than once in a file that goes round more than once. */
export function intervalsOnFile(intervals: readonly Interval<'rope'>[], map: RopeMap): Interval<'measured'>[] {
  return unionOf(intervals.flatMap((each) => turnsOf(map).map((shift) => {
    const a = toMeasured(map, ropePosition(each.from + shift));
    const b = toMeasured(map, ropePosition(each.to + shift));
    return a < b ? { from: a, to: b } : { from: b, to: a };
  })));
}

function wrapped(from: number, to: number, loopLength: number | null): Interval<'rope'>[] {
  if (loopLength === null) return [{ from: ropePosition(from), to: ropePosition(to) }];
  if (to - from >= loopLength) return [{ from: ropePosition(0), to: ropePosition(loopLength) }];
  const turn = Math.floor(from / loopLength) * loopLength;
  const start = from - turn;
  const end = to - turn;
  if (end <= loopLength) return [{ from: ropePosition(start), to: ropePosition(end) }];
  return [{ from: ropePosition(start), to: ropePosition(loopLength) }, { from: ropePosition(0), to: ropePosition(end - loopLength) }];
}

/** The whole turns by which a rope position may be shifted and still lie in the map's own, unwrapped reach. */
function turnsOf(map: RopeMap): number[] {
  if (map.loopLength === null) return [0];
  const ends = [map.knots[0].rope, map.knots[map.knots.length - 1].rope];
  const first = Math.floor(Math.min(...ends) / map.loopLength);
  const last = Math.floor(Math.max(...ends) / map.loopLength);
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * map.loopLength!);
}
