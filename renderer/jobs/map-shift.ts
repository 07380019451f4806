import { toRope, uncertaintyAt } from '../../analysis/alignment/rope-map.ts';
import type { RopeMap } from '../../analysis/alignment/rope-map.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';

export interface MapShift {
  /** Rope positions, rising. */
  readonly positions: number[];
  /** How far the map departs there from one even scale over the whole file, metres. */
  readonly shift: number[];
  /** Claimed 95 % bound there, metres. */
  readonly bound: number[];
  readonly slips: { readonly at: number; readonly size: number }[];
  /** What was taken out: metres of rope for a metre of the file, and rope position of the file's zero. */
  readonly scale: number;
  readonly offset: number;
}

/** The local shifts of a map: what is left of it after one straight scale from its first knot to its last. For drawing. */
export function mapShift(map: RopeMap): MapShift {
  const first = map.knots[0];
  const last = map.knots[map.knots.length - 1];
  const scale = map.knots.length < 2 ? 1 : (last.rope - first.rope) / (last.measured - first.measured);
  const offset = first === undefined ? 0 : first.rope - scale * first.measured;
  const measured = [...new Set([...map.knots.map((knot) => knot.measured), ...map.uncertainty.map((point) => point.measured)])]
    .filter((at) => first !== undefined && at >= first.measured && at <= last.measured).sort((a, b) => a - b);
  const points = measured.map((at) => {
    const straight = offset + scale * at;
    const wrapped = toRope(map, measuredPosition(at));
    // On a loop the shift is small beside the loop: bring both to the same turn.
    const turns = map.loopLength === null ? 0 : Math.round((straight - wrapped) / map.loopLength) * map.loopLength;
    return { at: wrapped, shift: wrapped + turns - straight, bound: uncertaintyAt(map, measuredPosition(at)) };
  }).sort((a, b) => a.at - b.at);
  return {
    positions: points.map((point) => point.at), shift: points.map((point) => point.shift), bound: points.map((point) => point.bound),
    slips: map.slips.map((slip) => ({ at: toRope(map, slip.measured), size: slip.size })), scale, offset,
  };
}
