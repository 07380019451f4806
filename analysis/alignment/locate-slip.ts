import type { Character } from './character.ts';

/** Where in the scan the shift changes from one line to the next: the likeliest place and the 95 % range. Metres. */
export interface SlipPlace {
  readonly at: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Splits [from, to] where the scan stops agreeing with the reference under the shift `before` and starts to under `after`:
 * posterior of the split over all bins, from squared differences of texture and events. Linear.
 */
export function locateSlip(scan: Character, reference: Character, from: number, to: number, before: (at: number) => number, after: (at: number) => number, around: boolean): SlipPlace {
  const first = Math.max(0, Math.ceil((from - scan.start) / scan.bin));
  const end = Math.min(scan.length, Math.floor((to - scan.start) / scan.bin) + 1);
  const gains = new Float64Array(Math.max(1, end - first + 1));
  let squares = 0;
  for (let i = first; i < end; i += 1) {
    const at = scan.start + i * scan.bin;
    const early = mismatch(scan, reference, i, at + before(at), around);
    const late = mismatch(scan, reference, i, at + after(at), around);
    squares += Math.min(early, late);
    gains[i - first + 1] = gains[i - first] + late - early;
  }
  const variance = Math.max(0.05, squares / Math.max(1, end - first));
  return posterior(gains, variance * CORRELATED_BINS, scan.start + (first - 0.5) * scan.bin, scan.bin);
}

/** Neighbouring bins share the channel's averaging: about this many of them say one independent thing. */
const CORRELATED_BINS = 6;

/** `gains[k]` is how much better the early line is over the first k bins, in squared mismatch. */
function posterior(gains: Float64Array, variance: number, origin: number, bin: number): SlipPlace {
  const most = gains.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const weights = gains.map((gain) => Math.exp((gain - most) / (2 * variance)));
  const total = weights.reduce((a, b) => a + b, 0);
  let running = 0;
  let low = 0, middle = 0, high = 0;
  weights.forEach((weight, k) => {
    const before = running;
    running += weight / total;
    if (before < 0.025) low = k;
    if (before < 0.5) middle = k;
    if (before < 0.975) high = k;
  });
  return { at: origin + middle * bin, low: origin + low * bin, high: origin + high * bin };
}

function mismatch(scan: Character, reference: Character, i: number, rope: number, around: boolean): number {
  const place = (rope - reference.start) / reference.bin;
  let low = Math.floor(place);
  let high = low + 1;
  const share = place - low;
  const size = reference.length;
  if (around) {
    low = ((low % size) + size) % size;
    high = ((high % size) + size) % size;
  } else if (low < 0 || high >= size) return 0;
  if (scan.textureSeen[i] === 0 || reference.textureSeen[low] === 0 || reference.textureSeen[high] === 0) return 0;
  const expected = reference.texture[low] + share * (reference.texture[high] - reference.texture[low]);
  const event = Math.max(reference.events[low], reference.events[high]);
  return (scan.texture[i] - expected) ** 2 + 0.2 * (scan.events[i] - event) ** 2;
}
