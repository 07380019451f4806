/** Grids and prior weights of the growth model. They are stated once, here, and were set on simulated ropes (tests/bench). */

export interface Shape {
  readonly shape: number;
  readonly prior: number;
}

/** How growth may bend: see growth-law.ts. Straight growth and exponential growth are the trade's own two, hence their weight. */
export const SHAPES: readonly Shape[] = [
  { shape: 1, prior: 0.38 },
  { shape: 0, prior: 0.17 },
  { shape: 0.75, prior: 0.05 },
  { shape: 0.5, prior: 0.08 },
  { shape: 0.25, prior: 0.05 },
  { shape: -0.35, prior: 0.05 },
  { shape: -0.7, prior: 0.04 },
  { shape: -1.1, prior: 0.035 },
  { shape: -1.5, prior: 0.03 },
  { shape: -1.9, prior: 0.025 },
  { shape: -2.5, prior: 0.015 },
  { shape: -3.2, prior: 0.01 },
  { shape: 1.4, prior: 0.03 },
  { shape: 2, prior: 0.02 },
  { shape: 3, prior: 0.01 },
  { shape: 6, prior: 0.005 },
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
  { scale: 0.25, prior: 0.2 },
  { scale: 0.5, prior: 0.3 },
  { scale: 1, prior: 0.3 },
  { scale: 2, prior: 0.1 },
];

/** Irregular growth: standard deviation of operational time over the span of the readings, as a share of that span. */
export const IRREGULARITIES = [
  { share: 0, prior: 0.55 },
  { share: 0.06, prior: 0.15 },
  { share: 0.12, prior: 0.12 },
  { share: 0.25, prior: 0.1 },
  { share: 0.5, prior: 0.08 },
];

/** Spread of log growth rates between the places of a rope. */
export const RATE_SPREADS = [
  { spread: 0.12, prior: 0.12 },
  { spread: 0.25, prior: 0.2 },
  { spread: 0.45, prior: 0.25 },
  { spread: 0.7, prior: 0.2 },
  { spread: 1, prior: 0.15 },
  { spread: 1.5, prior: 0.08 },
];

/** Standard deviation of the prior of the rope's mean log rate about its rough estimate. */
export const MEAN_RATE_SPREAD = 1.2;

/** Chance, before looking, that a place does not grow at all. */
export const NO_GROWTH_PRIOR = 0.1;

/** log rate in units of (reference level) per (span of the readings). */
export const LOG_RATE = { from: -5.5, to: 3.5, step: 0.06 };

export const DRAWS = 3000;
