import { medianInPlace } from '../signal/median.ts';
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
  const slower = PARTED_AT.map((length) => slowPart(texture, seen, length, bin));
  const levels = [texture, ...slower, new Float64Array(texture.length)];
  return levels.slice(1).map((slow, k) => ({ values: levels[k].map((value, i) => (seen[i] === 1 ? value - slow[i] : 0)), seen }));
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
