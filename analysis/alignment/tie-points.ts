import { measuredPosition, ropePosition } from '../rope/units.ts';
import type { RopeMap } from './rope-map.ts';
import { interpolate, uncertaintyAt } from './rope-map.ts';

/** Bound at a place that a person pinned: as well as a mark can be set on a strip. Metres. */
const PINNED_BOUND = 0.02;

/**
 * A map that passes through every tie point set by hand: what each point adds to the map is spread straight to its
 * neighbours and held beyond the outer ones. A point that the signal contradicts is kept and remarked on.
 */
export function honourTiePoints(map: RopeMap, tiePoints: readonly { readonly measured: number; readonly rope: number }[]): RopeMap {
  if (tiePoints.length === 0) return map;
  const ties = [...tiePoints].sort((a, b) => a.measured - b.measured);
  const measured = map.knots.map((knot) => knot.measured as number);
  const rope = map.knots.map((knot) => knot.rope as number);
  const additions = ties.map((tie) => tie.rope - interpolate(measured, rope, tie.measured));
  const at = ties.map((tie) => tie.measured);
  const addition = (x: number): number => (ties.length === 1 || x <= at[0] ? additions[0] : x >= at[at.length - 1] ? additions[additions.length - 1] : interpolate(at, additions, x));
  const places = [...new Set([...measured, ...at])].sort((a, b) => a - b);
  const knots = places.map((x) => ({ measured: measuredPosition(x), rope: ropePosition(interpolate(measured, rope, x) + addition(x)) }));
  const sign = map.reversed ? -1 : 1;
  if (knots.some((knot, i) => i > 0 && sign * (knot.rope - knots[i - 1].rope) <= 0)) {
    return { ...map, remarks: [...map.remarks, 'the tie points set by hand contradict each other (the rope would run backwards between them): none is used until one is removed'] };
  }
  const contradicted = ties.filter((tie, i) => Math.abs(additions[i]) > 2 * Math.max(PINNED_BOUND, uncertaintyAt(map, measuredPosition(tie.measured))));
  return {
    ...map, knots,
    uncertainty: [...map.uncertainty.filter((point) => !at.includes(point.measured)), ...at.map((x) => ({ measured: measuredPosition(x), value: PINNED_BOUND }))].sort((a, b) => a.measured - b.measured),
    basis: `${map.basis}; ${ties.length} tie point${ties.length === 1 ? '' : 's'} set by hand`,
    remarks: [...map.remarks, ...contradicted.map((tie) => `the tie point at ${tie.measured.toFixed(2)} m of the file is kept, but the signal says otherwise`)],
  };
}
