import type { Character } from './character.ts';
import { filtered, layOn, leftCorrelation, localVariance, scatterOf, whiteningFilter } from './scatter.ts';
import type { Scatter } from './scatter.ts';
import type { Band, Laid } from './texture-bands.ts';

/**
 * How a scan's texture follows its reference where they are laid on each other: scan = gain * reference + scatter. Both are
 * filtered so that the scatter is white: else neighbouring bins would be counted as several witnesses of one thing.
 */
export interface ResidualModel {
  readonly gain: number;
  readonly scan: Float64Array;
  readonly scanSeen: Uint8Array;
  readonly reference: Float64Array;
  readonly referenceSeen: Uint8Array;
  /** Variance of the scatter at each bin of the scan: large where the rope has changed. */
  readonly variance: Float64Array;
  /** The most that a misfit may cost in a bin: where the scan is steep, a shift of less than a bin is no damage. Squared deviations. */
  readonly most: Float64Array;
  /** What a bin costs where no reference tells it: its square over scatter and texture, capped, and what a fit is worth. Twice nats. */
  readonly alone: Float64Array;
  /** Bins that say one independent thing. */
  readonly independence: number;
}

/** Learns gain, colour and local size of the scatter of every band where `shift` lays the scan on its reference. Bands of which too little was seen are left out. */
export function residualModels(bands: readonly Band[], scan: Character, reference: Character, shift: (at: number) => number, around: boolean): ResidualModel[] {
  const places = new Float64Array(scan.length);
  for (let i = 0; i < places.length; i += 1) {
    const at = scan.start + i * scan.bin;
    places[i] = (at + shift(at) - reference.start) / reference.bin;
  }
  return bands.flatMap((band) => modelOf(band, places, scan.bin, around) ?? []);
}

/** `places`: where each bin of the scan lies in the reference, in bins. */
function modelOf(band: Band, places: Float64Array, bin: number, around: boolean): ResidualModel | null {
  const raw = scatterOf(band.scan, layOn(places, around, band.reference), band.eitherSign);
  if (raw === null) return null;
  return band.whiten ? whitened(band, raw, places, bin, around) : modelFrom(band.scan, band.reference, raw, bin, 4);
}

function whitened(band: Band, raw: Scatter, places: Float64Array, bin: number, around: boolean): ResidualModel | null {
  const filter = whiteningFilter(raw.scatter, raw.both);
  const own = filtered(band.scan, filter, false);
  const other = filtered(band.reference, filter, around);
  const matched = scatterOf(own, layOn(places, around, other), band.eitherSign);
  return matched === null ? null : modelFrom(own, other, matched, bin, 1);
}

/** `correlated`: length over which scatter may still hang together. Metres. */
function modelFrom(own: Laid, other: Laid, { gain, power, scatter, both }: Scatter, bin: number, correlated: number): ResidualModel {
  const variance = localVariance(scatter, both, Math.max(8, Math.round(VARIANCE_LENGTH / bin)));
  const most = mostOf(own.values, variance);
  return {
    gain, variance, scan: own.values, scanSeen: own.seen, reference: other.values, referenceSeen: other.seen,
    most, alone: aloneOf(own, variance, most, gain * gain * power),
    independence: leftCorrelation(scatter, both, Math.round(correlated / bin)),
  };
}

/** Scatter is taken as even over this length. Metres. */
const VARIANCE_LENGTH = 2.5;

/** Scatter beyond this many squared deviations counts no more: it is damage that one scan shows and the other does not. */
const CAPPED = 9;

/** From the slope at each bin: what it may change by within half a bin to either side is added to the cap. */
export function mostOf(values: Float64Array, variance: Float64Array): Float64Array {
  const last = values.length - 1;
  const most = new Float64Array(values.length);
  for (let i = 0; i <= last; i += 1) {
    const change = (values[i < last ? i + 1 : last] - values[i > 0 ? i - 1 : 0]) / 4;
    most[i] = CAPPED * (1 + (change * change) / variance[i]);
  }
  return most;
}

function aloneOf({ values }: Laid, variance: Float64Array, most: Float64Array, shared: number): Float64Array {
  const alone = new Float64Array(values.length);
  // The variance stays the same for many bins, and its logarithm with it.
  let [before, worth] = [Number.NaN, 0];
  for (let i = 0; i < values.length; i += 1) {
    if (variance[i] !== before) {
      before = variance[i];
      worth = Math.log((before + shared) / before);
    }
    alone[i] = Math.min(most[i], (values[i] * values[i]) / (before + shared)) + worth;
  }
  return alone;
}
