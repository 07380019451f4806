import { medianAbsoluteDeviation, NORMAL_MAD } from '../signal/mad.ts';
import { medianInPlace } from '../signal/median.ts';
import type { Character } from './character.ts';

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
  /** Square of what the reference may change by within half a bin to either side, gain applied. */
  readonly within: Float64Array;
  /** Variance of the scatter at each bin of the scan: large where the rope has changed. */
  readonly variance: Float64Array;
  /** What fitting is worth over chance in a bin, twice nats. */
  readonly advantage: Float64Array;
  /** Mean square of the filtered reference. */
  readonly power: number;
  /** Bins that say one independent thing. */
  readonly independence: number;
}

/** Before any map is known: most of the texture repeats, and only after some length does it say something new. */
export function firstModels(scan: Character, reference: Character): ResidualModel[] {
  return bandsOf(scan, reference).map((band) => {
    const variance = new Float64Array(scan.length).fill(1 - FIRST_GAIN * FIRST_GAIN);
    return {
      gain: FIRST_GAIN, variance, scan: band.scan.values, scanSeen: band.scan.seen, reference: band.reference.values, referenceSeen: band.reference.seen, within: changeWithin(band.reference.values, FIRST_GAIN),
      advantage: variance.map((v) => Math.log(1 / v)), power: 1, independence: Math.max(1, band.independentLength / scan.bin),
    };
  });
}

const FIRST_GAIN = 0.6;
const ORDER = 6;

/**
 * Learns gain, colour and local size of the scatter where `shift` lays the scan on its reference, in two bands: fast
 * texture, and what is slow beside it. Wear and corrosion come slowly along the rope: where they grew, the slow band
 * scatters widely and says little, and the fast one still tells the place. Bands of which too little was seen are left out.
 */
export function residualModels(scan: Character, reference: Character, shift: (at: number) => number, around: boolean): ResidualModel[] {
  const places = Float64Array.from({ length: scan.length }, (_, i) => {
    const at = scan.start + i * scan.bin;
    return (at + shift(at) - reference.start) / reference.bin;
  });
  return bandsOf(scan, reference).flatMap((band) => modelOf(band, places, scan.bin, around) ?? []);
}

interface Laid { readonly values: Float64Array; readonly seen: Uint8Array }
interface Band { readonly scan: Laid; readonly reference: Laid; readonly whiten: boolean; readonly independentLength: number }

function bandsOf(scan: Character, reference: Character): Band[] {
  const [own, other] = [splitTexture(scan), splitTexture(reference)];
  return own.map((part, k) => ({ scan: part, reference: other[k], whiten: k === 0, independentLength: INDEPENDENT[k] }));
}

/** Lengths whose running medians part the bands, and what one independent length of each is taken for at first. Metres. */
const PARTED_AT = [1.2, 5] as const;
const INDEPENDENT = [0.1, 1, 4] as const;

function splitTexture({ texture, textureSeen: seen, bin }: Character): Laid[] {
  const slower = PARTED_AT.map((length) => slowPart(texture, seen, length, bin));
  const levels = [texture, ...slower, new Float64Array(texture.length)];
  return levels.slice(1).map((slow, k) => ({ values: levels[k].map((value, i) => (seen[i] === 1 ? value - slow[i] : 0)), seen }));
}

/** `places`: where each bin of the scan lies in the reference, in bins. */
function modelOf(band: Band, places: Float64Array, bin: number, around: boolean): ResidualModel | null {
  const raw = scatterOf(band.scan, layOn(places, around, band.reference));
  if (raw === null) return null;
  const filter = band.whiten ? whiteningFilter(raw.scatter, raw.both) : Float64Array.of(1);
  const own = filtered(band.scan, filter, false);
  const other = filtered(band.reference, filter, around);
  const matched = scatterOf(own, layOn(places, around, other));
  if (matched === null) return null;
  const { gain, power } = matched;
  const variance = localVariance(matched.scatter, matched.both, Math.max(8, Math.round(VARIANCE_LENGTH / bin)));
  return {
    gain, power, variance, scan: own.values, scanSeen: own.seen, reference: other.values, referenceSeen: other.seen, within: changeWithin(other.values, gain),
    advantage: variance.map((v) => Math.log((v + gain * gain * power) / v)),
    independence: leftCorrelation(matched.scatter, matched.both, Math.round((band.whiten ? 1 : 4) / bin)),
  };
}

/** From the slope at each bin: that much of a misfit is no misfit, but a shift of less than a bin. */
export function changeWithin(reference: Float64Array, gain: number): Float64Array {
  const last = reference.length - 1;
  return reference.map((_, j) => ((gain * (reference[Math.min(last, j + 1)] - reference[Math.max(0, j - 1)])) / 4) ** 2);
}

/** Scatter is taken as even over this length. Metres. */
const VARIANCE_LENGTH = 2.5;

/** A reference signal as the scan's bins meet it. */
function layOn(places: Float64Array, around: boolean, { values, seen }: Laid): Laid {
  const out = { values: new Float64Array(places.length), seen: new Uint8Array(places.length) };
  const size = values.length;
  for (let i = 0; i < places.length; i += 1) {
    let low = Math.floor(places[i]);
    const share = places[i] - low;
    let high = low + 1;
    if (around) {
      low = ((low % size) + size) % size;
      high = (low + 1) % size;
    } else if (low < 0 || high >= size) continue;
    if (seen[low] === 0 || seen[high] === 0) continue;
    out.values[i] = values[low] + share * (values[high] - values[low]);
    out.seen[i] = 1;
  }
  return out;
}

function scatterOf({ values: own, seen }: Laid, laid: Laid): { gain: number; power: number; scatter: Float64Array; both: Uint8Array } | null {
  const both = seen.map((value, i) => value & laid.seen[i]);
  let products = 0, squares = 0, count = 0;
  for (let i = 0; i < own.length; i += 1) {
    if (both[i] === 0) continue;
    products += own[i] * laid.values[i];
    squares += laid.values[i] ** 2;
    count += 1;
  }
  if (count < 50 || !(squares > 0)) return null;
  const gain = Math.max(0, products / squares);
  const scatter = own.map((value, i) => (both[i] === 1 ? value - gain * laid.values[i] : 0));
  return { gain, power: squares / count, scatter, both };
}

/** The running median is taken over means of this length. Metres. */
const MEAN_LENGTH = 0.125;

/** Running median of short means, straight between them: a median follows the edge of a worn length and leaves none of it in the fast band. */
function slowPart(texture: Float64Array, seenBins: Uint8Array, length: number, bin: number): Float64Array {
  const width = Math.max(1, Math.round(MEAN_LENGTH / bin));
  const count = Math.max(1, Math.ceil(texture.length / width));
  const means = new Float64Array(count).fill(Number.NaN);
  for (let m = 0; m < count; m += 1) {
    let sum = 0, seen = 0;
    for (let i = m * width; i < Math.min(texture.length, (m + 1) * width); i += 1) {
      if (seenBins[i] === 0) continue;
      sum += texture[i];
      seen += 1;
    }
    if (seen > 0) means[m] = sum / seen;
  }
  const half = Math.max(1, Math.round(length / (2 * width * bin)));
  const scratch = new Float64Array(2 * half + 1);
  const slow = means.map((_, m) => {
    let known = 0;
    for (let k = Math.max(0, m - half); k <= Math.min(count - 1, m + half); k += 1) if (!Number.isNaN(means[k])) scratch[known++] = means[k];
    return known > 0 ? medianInPlace(scratch, 0, known) : 0;
  });
  return texture.map((_, i) => {
    const place = Math.max(0, Math.min(count - 1, (i + 0.5) / width - 0.5));
    const low = Math.min(count - 1, Math.floor(place));
    return slow[low] + (place - low) * (slow[Math.min(count - 1, low + 1)] - slow[low]);
  });
}

/** Coefficients of the prediction of a bin from those before it (Levinson's recursion on the robust autocorrelation). */
function whiteningFilter(scatter: Float64Array, both: Uint8Array): Float64Array {
  const correlation = autocorrelation(scatter, both, ORDER);
  const a = new Float64Array(ORDER + 1);
  a[0] = 1;
  let error = correlation[0] * 1.001;
  for (let m = 1; m <= ORDER; m += 1) {
    let reflection = correlation[m];
    for (let k = 1; k < m; k += 1) reflection += a[k] * correlation[m - k];
    reflection /= -error;
    const before = a.slice();
    for (let k = 1; k < m; k += 1) a[k] = before[k] + reflection * before[m - k];
    a[m] = reflection;
    error *= 1 - reflection * reflection;
    if (!(error > 1e-9)) break;
  }
  return a;
}

/** At lags 0, `every`, 2 `every`, ... `lags` of them after the first, large scatter bounded. */
function autocorrelation(scatter: Float64Array, both: Uint8Array, lags: number, every = 1): Float64Array {
  const size = 3 * NORMAL_MAD * medianAbsoluteDeviation(scatter.filter((_, i) => both[i] === 1)) || 1;
  const bounded = scatter.map((value) => Math.max(-size, Math.min(size, value)));
  const out = new Float64Array(lags + 1);
  for (let k = 0; k <= lags; k += 1) {
    let sum = 0, count = 0;
    for (let i = k * every; i < bounded.length; i += 1) {
      sum += bounded[i] * bounded[i - k * every];
      count += both[i] & both[i - k * every];
    }
    out[k] = count > 0 ? sum / count : 0;
  }
  return out;
}

/** A filtered bin counts as seen where all bins that it is made of are. */
function filtered({ values, seen }: Laid, filter: Float64Array, around: boolean): Laid {
  const size = values.length;
  const out = { values: new Float64Array(size), seen: new Uint8Array(size) };
  for (let i = 0; i < size; i += 1) {
    let sum = 0;
    let all = 1;
    for (let k = 0; k < filter.length; k += 1) {
      const j = i - k < 0 ? (around ? i - k + size : -1) : i - k;
      if (j < 0 || seen[j] === 0) {
        all = 0;
        break;
      }
      sum += filter[k] * values[j];
    }
    if (all === 1) out.values[i] = sum;
    out.seen[i] = all;
  }
  return out;
}

/** Square of the robust scale over `width` bins, drawn between blocks, never far below the rope's usual one. */
function localVariance(scatter: Float64Array, both: Uint8Array, width: number): Float64Array {
  const blocks = Math.max(1, Math.ceil(scatter.length / width));
  const scales = new Float64Array(blocks).fill(Number.NaN);
  const scratch = new Float64Array(width);
  for (let b = 0; b < blocks; b += 1) {
    let count = 0;
    for (let i = b * width; i < Math.min(scatter.length, (b + 1) * width); i += 1) if (both[i] === 1) scratch[count++] = Math.abs(scatter[i]);
    if (count >= width / 4) scales[b] = NORMAL_MAD * medianInPlace(scratch, 0, count);
  }
  const known = scales.filter((value) => value > 0);
  const usual = known.length > 0 ? medianInPlace(known.slice(), 0, known.length) : 1;
  const level = scales.map((value) => (value > 0 ? value : usual));
  const out = new Float64Array(scatter.length);
  for (let i = 0; i < out.length; i += 1) {
    const place = i / width - 0.5;
    out[i] = Math.max(0.7 * usual, level[Math.max(0, Math.floor(place))], level[Math.min(blocks - 1, Math.floor(place + 1))]) ** 2;
  }
  return out;
}

/** Sum of all correlation that is left over `bins` to either side: so many bins say one independent thing. */
function leftCorrelation(scatter: Float64Array, both: Uint8Array, bins: number): number {
  const every = Math.max(1, Math.floor(bins / LAGS));
  const correlation = autocorrelation(scatter, both, Math.floor(bins / every), every);
  let sum = 1;
  // Between the lags that are looked at the correlation is taken as straight.
  for (let k = 1; k < correlation.length; k += 1) sum += (2 * every * correlation[k]) / (correlation[0] || 1);
  return Math.max(1, sum + (every - 1));
}

/** So many lags show the course of a correlation well enough. */
const LAGS = 20;
