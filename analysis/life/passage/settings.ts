/** Grids and prior weights of the growth model. They are stated once, here, and were set on simulated ropes (tests/bench). */

export interface Shape {
  readonly shape: number;
  readonly prior: number;
}

/** How growth may bend: see growth-law.ts. Straight growth and exponential growth are the trade's own two, hence their weight. */
export const SHAPES: readonly Shape[] = [
  { shape: 1, prior: 0.36 },
  { shape: 0, prior: 0.15 },
  { shape: 0.75, prior: 0.04 },
  { shape: 0.5, prior: 0.06 },
  { shape: 0.25, prior: 0.05 },
  { shape: -0.35, prior: 0.035 },
  { shape: -0.7, prior: 0.035 },
  { shape: -1.1, prior: 0.045 },
  { shape: -1.5, prior: 0.045 },
  { shape: -1.9, prior: 0.045 },
  { shape: -2.5, prior: 0.02 },
  { shape: -3.2, prior: 0.01 },
  { shape: 1.4, prior: 0.035 },
  { shape: 2, prior: 0.03 },
  { shape: 3, prior: 0.025 },
  { shape: 5, prior: 0.015 },
];

/** How far the shape of one place may stand from that of the rope. */
export const SHAPE_SPREADS = [
  { spread: 0, prior: 0.6 },
  { spread: 0.35, prior: 0.4 },
];

/** True noise as a multiple of the stated uncertainty. Stated uncertainty is often a default of common practice. */
export const NOISE_SCALES = [
  { scale: 0.4, prior: 0.1 },
  { scale: 0.65, prior: 0.2 },
  { scale: 1, prior: 0.4 },
  { scale: 1.6, prior: 0.2 },
  { scale: 2.6, prior: 0.1 },
];

/** Noise as a multiple of a rough estimate from the readings, where no uncertainty is stated. */
export const UNSTATED_NOISE_SCALES = [
  { scale: 0.1, prior: 0.1 },
  { scale: 0.25, prior: 0.15 },
  { scale: 0.45, prior: 0.2 },
  { scale: 0.7, prior: 0.25 },
  { scale: 1, prior: 0.2 },
  { scale: 1.8, prior: 0.1 },
];

/**
 * Irregular growth: standard deviation of operational time over the span of the readings, as a share of that span. Never quite zero: no
 * rope is loaded as evenly as a clock, and a law fitted as if it were would take chance for curvature.
 */
export const IRREGULARITIES = [
  { share: 0.045, prior: 0.4 },
  { share: 0.08, prior: 0.24 },
  { share: 0.14, prior: 0.17 },
  { share: 0.22, prior: 0.1 },
  { share: 0.34, prior: 0.06 },
  { share: 0.5, prior: 0.03 },
];

/** Spread of log growth rates between the places of a rope. */
export const RATE_SPREADS = [
  { spread: 0.12, prior: 0.15 },
  { spread: 0.25, prior: 0.25 },
  { spread: 0.45, prior: 0.28 },
  { spread: 0.7, prior: 0.2 },
  { spread: 1, prior: 0.09 },
  { spread: 1.5, prior: 0.03 },
];

/**
 * How pace goes with level from place to place: not at all (wear of one kind everywhere), in proportion (one age), or as the law of
 * growth itself has it (null: places that differ in the constant of one law only).
 */
export const LEVEL_EXPONENTS: readonly { readonly exponent: number | null; readonly prior: number }[] = [
  { exponent: 0, prior: 0.25 },
  { exponent: 0.5, prior: 0.15 },
  { exponent: 1, prior: 0.35 },
  { exponent: null, prior: 0.25 },
];

/** Standard deviation of the prior of the rope's mean log rate about its rough estimate. */
export const MEAN_RATE_SPREAD = 1.2;

/** Chance, before looking, that growth of a place sets in only after its first reading: a first reading of zero would else fit any later onset exactly. */
export const LATE_ONSET_PRIOR = 0.15;

/** Chance, before looking, that a place does not grow at all. */
export const NO_GROWTH_PRIOR = 0.1;

/** Log of the rate of growth at a place's own level, in reference levels per span of the readings. */
export const LOG_PACE = { from: -5.5, to: 3.5, step: 0.09 };

/** A law learned so far need not hold further on: standard deviation of the shape ahead about the shape learned, where the way ahead is as long as the way seen. */
export const LAW_DRIFT = 0.5;

export const DRAWS = 3000;
