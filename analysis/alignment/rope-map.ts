import type { MeasuredPosition, RopePosition } from '../rope/units.ts';

/** A piecewise-linear, monotone map from a file's own position to rope position. Metres. */
export interface RopeMap {
  /** `measured` strictly increasing; `rope` strictly increasing, or strictly decreasing where `reversed`. Unwrapped on a loop. */
  readonly knots: readonly { readonly measured: MeasuredPosition; readonly rope: RopePosition }[];
  readonly reversed: boolean;
  /** Claimed 95 % bound of the map relative to the first inspection's, piecewise linear by measured position. */
  readonly uncertainty: readonly { readonly measured: MeasuredPosition; readonly value: number }[];
  /** 0: nothing known, 1: as sure as the data can make it. */
  readonly confidence: number;
  /** In words: what the map rests on. */
  readonly basis: string;
  /** Length of an endless rope, where positions wrap; null for an open one. */
  readonly loopLength: number | null;
  /** Local slips found in the encoder: where (measured) and how much (metres). */
  readonly slips: readonly { readonly measured: MeasuredPosition; readonly size: number }[];
  /** True where the scan's LMA rises at places where the first inspection's falls: one of them was read with the wrong sign of loss. */
  readonly opposed?: boolean;
  /** What the user should know: an unrecorded cut, a tie point that contradicts the signal. */
  readonly remarks: readonly string[];
}

/** Piecewise-linear value at x of points sorted by x; the end segments go on beyond the ends. Needs two points or more. */
export function interpolate(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  let low = 0;
  let high = xs.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle] <= x) low = middle;
    else high = middle;
  }
  const share = (x - xs[low]) / (xs[high] - xs[low]);
  return ys[low] + share * (ys[high] - ys[low]);
}

/** Rope position of a measured position. On a loop the result is wrapped into [0, loopLength). */
export function toRope(map: RopeMap, measured: MeasuredPosition): RopePosition {
  const unwrapped = interpolate(map.knots.map((k) => k.measured), map.knots.map((k) => k.rope), measured);
  return wrap(unwrapped, map.loopLength) as RopePosition;
}

/** Measured position that shows the given rope position (unwrapped on a loop). The inverse of the map without wrapping. */
export function toMeasured(map: RopeMap, rope: RopePosition): MeasuredPosition {
  const knots = map.reversed ? [...map.knots].reverse() : map.knots;
  return interpolate(knots.map((k) => k.rope), knots.map((k) => k.measured), rope) as MeasuredPosition;
}

/** Claimed 95 % bound at a measured position, held constant beyond the ends. */
export function uncertaintyAt(map: RopeMap, measured: MeasuredPosition): number {
  const points = map.uncertainty;
  if (points.length === 0) return 0;
  if (points.length === 1 || measured <= points[0].measured) return points[0].value;
  const last = points[points.length - 1];
  if (measured >= last.measured) return last.value;
  return interpolate(points.map((p) => p.measured), points.map((p) => p.value), measured);
}

export function wrap(position: number, loopLength: number | null): number {
  if (loopLength === null) return position;
  return position - Math.floor(position / loopLength) * loopLength;
}
