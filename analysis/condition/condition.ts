import type { Interval } from '../rope/interval.ts';
import type { Frame, Position } from '../rope/units.ts';

/** A local fault found in the LF trace. Depth is unknown: LF cannot tell an inner break from an outer one. */
export interface Fault<F extends Frame> {
  readonly id: string;
  readonly position: Position<F>;
  /** Equivalent loss in percent of metallic area, or null where LF is not calibrated. */
  readonly lossPercent: number | null;
  readonly lossCalibration: 'known-wire' | 'visual-breaks' | 'uncalibrated';
  /** Peak in the LF trace's own unit, signed as in the file. */
  readonly amplitude: number;
  /** Peak over root mean square of the noise with the strand pattern, before filtering. */
  readonly snr: number;
  readonly width: number; // m, full width at half height
  readonly positionUncertainty: number; // m, 95 %, of the file's own position
  /** How many breaks the indication may hold; 1..1 only where its width shows that it is one. */
  readonly count: { readonly low: number; readonly estimate: number; readonly high: number };
  /** How often noise alone gives so strong an indication in 100 m of this rope; left out: not known. */
  readonly falseCallsPer100m?: number;
  readonly shape: 'single' | 'positive-negative' | 'negative-positive';
}

export interface Zone<F extends Frame> {
  readonly id: string;
  readonly where: Interval<F>;
  readonly edgeUncertainty: number; // m, 95 %
  readonly kind: 'corrosion' | 'wear' | 'loss';
  readonly meanLossPercent: number;
  readonly peakLossPercent: number;
  readonly textureRatio: number;
  readonly uncertaintyPercent: number; // 95 %, of the mean
  /** For a loss shorter than the averaging length: the true loss lies between these. */
  readonly lossRangePercent: { readonly low: number; readonly high: number } | null;
}

/** A value by position, piecewise linear, coarse (about one point per metre). */
export interface Profile<F extends Frame> {
  readonly positions: readonly Position<F>[];
  readonly values: readonly number[];
}

export interface Condition<F extends Frame> {
  readonly faults: readonly Fault<F>[];
  readonly zones: readonly Zone<F>[];
  /** Root mean square of LF noise, in the LF unit. */
  readonly faultNoise: Profile<F>;
  /** Smallest distributed loss (percent) and smallest LF pulse that would have been found with 90 % probability. */
  readonly smallestZoneLoss: Profile<F>;
  readonly smallestFaultAmplitude: Profile<F>;
  /** What the loss is counted from: the reference length of the rope and the level removed from the trace. */
  readonly baseline: { readonly where: Interval<F> | null; readonly level: Profile<F>; readonly basis: string };
  /** Loss with the baseline removed, same grid as the trace; masked as the trace is. */
  readonly lossFromBaseline: { readonly values: Float64Array; readonly valid: Uint8Array } | null;
  /** LF texture ratio (root mean square over the rope's own baseline), coarse. */
  readonly texture: Profile<F>;
  readonly noiseOfLoss: number; // percent, root mean square of the sample noise of LMA about its local level
  readonly strandSpacing: number | null; // m, as found in the data
  readonly parameters: Readonly<Record<string, number>>;
}
