/**
 * Positions in two frames that must never be mixed: what an inspection file measured, and where on the rope that is.
 * Only a rope map (alignment/rope-map.ts) turns one into the other.
 */
declare const frame: unique symbol;
export type Frame = 'measured' | 'rope';
export type Position<F extends Frame> = number & { readonly [frame]: F };
export type MeasuredPosition = Position<'measured'>;
export type RopePosition = Position<'rope'>;

export const measuredPosition = (metres: number): MeasuredPosition => metres as MeasuredPosition;
export const ropePosition = (metres: number): RopePosition => metres as RopePosition;

/** Exact by definition: international yard and pound agreement, 1959. */
export const METRES_PER_FOOT = 0.3048;
