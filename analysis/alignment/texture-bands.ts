import { slidingMedian } from '../signal/sliding-median.ts';
import type { Character } from './character.ts';

/** A signal in bins, and which of them were seen. */
export interface Laid {
  readonly values: Float64Array;
  readonly seen: Uint8Array;
}

/** One band of the texture of a scan and of its reference. */
export interface Band {
  readonly scan: Laid;
  readonly reference: Laid;
  /** Neighbouring bins of this band may be told from each other once its scatter is made white. */
  readonly whiten: boolean;
  /** Its sign may turn between two scans. */
  readonly eitherSign: boolean;
}

/**
 * Texture in a fast, a middle and a slow band. Wear and corrosion come slowly along the rope: where they grew, the slow
 * bands scatter widely and say little, and the fast one still tells the place. Bands go with `scan` and `reference` bin for bin.
 */
export function bandsOf(scan: Character, reference: Character): Band[] {
  const [own, other] = [splitTexture(scan), splitTexture(reference)];
  const fault = ({ fault: values, faultSeen: seen }: Character): Laid => ({ values, seen });
  return [...own.map((part, k) => ({ scan: part, reference: other[k], whiten: k === 0, eitherSign: false })), { scan: fault(scan), reference: fault(reference), whiten: true, eitherSign: true }];
}

/** Lengths whose running medians part the bands. Metres. */
const PARTED_AT = [1.2, 5] as const;

function splitTexture({ texture, textureSeen: seen, bin }: Character): Laid[] {
  const width = Math.max(1, Math.round(MEAN_LENGTH / bin));
  const means = shortMeans(texture, seen, width);
  const slower = PARTED_AT.map((length) => slowPart(means, texture.length, length, width, bin));
  const levels = [texture, ...slower, new Float64Array(texture.length)];
  return levels.slice(1).map((slow, k) => ({ values: difference(levels[k], slow, seen), seen }));
}

function difference(faster: Float64Array, slower: Float64Array, seen: Uint8Array): Float64Array {
  const out = new Float64Array(faster.length);
  for (let i = 0; i < out.length; i += 1) if (seen[i] === 1) out[i] = faster[i] - slower[i];
  return out;
}

/** The running median is taken over means of this length. Metres. */
const MEAN_LENGTH = 0.125;

/** Means over `width` bins each, and which of them were seen. */
function shortMeans(texture: Float64Array, seenBins: Uint8Array, width: number): Laid {
  const count = Math.max(1, Math.ceil(texture.length / width));
  const out = { values: new Float64Array(count), seen: new Uint8Array(count) };
  for (let m = 0; m < count; m += 1) {
    let sum = 0, seen = 0;
    for (let i = m * width; i < Math.min(texture.length, (m + 1) * width); i += 1) {
      if (seenBins[i] === 0) continue;
      sum += texture[i];
      seen += 1;
    }
    if (seen === 0) continue;
    out.values[m] = sum / seen;
    out.seen[m] = 1;
  }
  return out;
}

/** Running median of short means, straight between them: a median follows the edge of a worn length and leaves none of it in the fast band. */
function slowPart(means: Laid, bins: number, length: number, width: number, bin: number): Float64Array {
  const half = Math.max(1, Math.round(length / (2 * width * bin)));
  const { values: slow } = slidingMedian(means.values, means.seen, 2 * half + 1);
  const out = new Float64Array(bins);
  const top = slow.length - 1;
  for (let i = 0; i < bins; i += 1) {
    const place = Math.max(0, Math.min(top, (i + 0.5) / width - 0.5));
    const low = Math.floor(place);
    out[i] = slow[low] + (place - low) * (slow[Math.min(top, low + 1)] - slow[low]);
  }
  return out;
}
