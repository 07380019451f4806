import type { Character } from './character.ts';
import { filtered, layOn, leftCorrelation, localVariance, scatterOf, whiteningFilter } from './scatter.ts';
import { smoothReference } from './smooth-reference.ts';
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

/** A band with what was learned of it. */
export interface LearnedBand {
  /** Share of the band's power that its reference explains. */
  readonly explained: number;
  readonly band: Band;
  readonly model: ResidualModel;
  /** What a bin says on the mean of the shift: the inverse of a variance, in bins. */
  readonly worth: number;
}

/** A band that says less than this share of what the best one says is not worth its time. */
const WORTH_A_LOOK = 0.001;

/**
 * Learns gain, colour and local size of the scatter of every band where `shift` lays the scan on its reference. Bands of which
 * too little was seen, and such as say next to nothing of the shift beside the others, are left out. The one that says most comes first.
 */
export function residualModels(bands: readonly Band[], scan: Character, reference: Character, shift: (at: number) => number, around: boolean): LearnedBand[] {
  const places = placesOf(scan, reference, shift);
  const learned = bands.flatMap((band) => learn(band, places, scan.bin, around) ?? []);
  const most = learned.reduce((top, { worth }) => Math.max(top, worth), 0);
  return learned.filter(({ worth }) => worth >= WORTH_A_LOOK * most).sort((a, b) => b.worth - a.worth);
}

/** Bins between two places at which the shift is asked; straight between them. */
const ASKED_EVERY = 5;

/** Where each bin of the scan lies in the reference, in bins. */
function placesOf(scan: Character, reference: Character, shift: (at: number) => number): Float64Array {
  const places = new Float64Array(scan.length);
  const placeOf = (i: number): number => {
    const at = scan.start + i * scan.bin;
    return (at + shift(at) - reference.start) / reference.bin;
  };
  let here = placeOf(0);
  for (let from = 0; from < places.length; from += ASKED_EVERY) {
    const next = placeOf(from + ASKED_EVERY);
    const rise = (next - here) / ASKED_EVERY;
    for (let k = 0; k < ASKED_EVERY && from + k < places.length; k += 1) places[from + k] = here + k * rise;
    here = next;
  }
  return places;
}

/** `places`: where each bin of the scan lies in the reference, in bins. */
function learn(band: Band, places: Float64Array, bin: number, around: boolean): LearnedBand | null {
  const raw = scatterOf(band.scan, layOn(places, around, band.reference), band.eitherSign);
  if (raw === null) return null;
  if (!band.whiten) return learnedFrom(band, band.scan, band.reference, raw, bin, 4);
  const filter = whiteningFilter(raw.scatter, raw.both);
  if (filter === null) return null;
  const own = filtered(band.scan, filter, false);
  const other = filtered(band.reference, filter, around);
  const expected = smoothReference(own, other, places, around, band.eitherSign);
  if (expected === null) return null;
  const matched = scatterOf(own, layOn(places, around, expected), band.eitherSign);
  return matched === null ? null : learnedFrom(band, own, expected, matched, bin, 1);
}

/** `correlated`: length over which scatter may still hang together. Metres. */
function learnedFrom(band: Band, own: Laid, other: Laid, { gain, power, scatter, both }: Scatter, bin: number, correlated: number): LearnedBand {
  const variance = localVariance(scatter, both, Math.max(8, Math.round(VARIANCE_LENGTH / bin)));
  const most = mostOf(own.values, variance);
  const alone = aloneOf(own, variance, most, gain * gain * power);
  const independence = leftCorrelation(scatter, both, Math.round(correlated / bin));
  const model = { gain, variance, scan: own.values, scanSeen: own.seen, reference: other.values, referenceSeen: other.seen, most, alone, independence };
  const shared = gain * gain * power;
  return { band, model, explained: shared / (shared + meanSquare(scatter, both)), worth: (gain * gain * steepness(other)) / (independence * meanOf(variance)) };
}

function meanSquare(values: Float64Array, seen: Uint8Array): number {
  let sum = 0, count = 0;
  for (let i = 0; i < values.length; i += 1) {
    if (seen[i] === 0) continue;
    sum += values[i] * values[i];
    count += 1;
  }
  return count > 0 ? sum / count : 0;
}

/** Mean square of what a signal changes by from bin to bin. */
function steepness({ values, seen }: Laid): number {
  let sum = 0, count = 0;
  for (let i = 1; i < values.length; i += 1) {
    if (seen[i] === 0 || seen[i - 1] === 0) continue;
    sum += (values[i] - values[i - 1]) * (values[i] - values[i - 1]);
    count += 1;
  }
  return count > 0 ? sum / count : 0;
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i];
  return sum / values.length;
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
