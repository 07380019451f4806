import { complexSignal, complexSpectrum } from '../signal/fft.ts';
import { powerOfTwoFrom } from '../signal/power-of-two.ts';
import type { Character } from './character.ts';
import { COARSE_BINS_ALIKE, textureEvidence } from './likelihood.ts';
import { modulo } from '../signal/modulo.ts';

/** A reference made ready for many windows of `width` bins: what does not depend on the window is worked out once. */
export interface CoarseReference {
  readonly character: Character;
  readonly around: boolean;
  readonly width: number;
  /** Texture; on a loop followed by its own beginning, so that a window may start anywhere. */
  readonly texture: Float64Array;
  /** Sum of the squares of `texture` before each bin. */
  readonly squares: Float64Array;
  /** Bins of the reference that hold an event: few. */
  readonly eventful: Int32Array;
  readonly spectrum: Float64Array; // of `texture`, interleaved
}

export function coarseReference(character: Character, width: number, around: boolean): CoarseReference {
  const size = character.length;
  const texture = new Float64Array(size + (around ? width : 0));
  for (let i = 0; i < texture.length; i += 1) texture[i] = character.texture[i % size];
  const squares = new Float64Array(texture.length + 1);
  for (let i = 0; i < texture.length; i += 1) squares[i + 1] = squares[i] + texture[i] * texture[i];
  const padded = new Float64Array(2 * powerOfTwoFrom(texture.length + width));
  for (let i = 0; i < texture.length; i += 1) padded[2 * i] = texture[i];
  return { character, around, width, texture, squares, eventful: eventfulBins(character.events, 0, size), spectrum: complexSpectrum(padded) };
}

function eventfulBins(events: Float64Array, from: number, end: number): Int32Array {
  const found: number[] = [];
  for (let i = from; i < end; i += 1) if (events[i] > 0) found.push(i);
  return Int32Array.from(found);
}

/** First bins of the reference at which a window may be laid: half of it at least meets the rope. */
export function placesOf({ character: { length }, around, width }: CoarseReference): { low: number; end: number } {
  return around ? { low: 0, end: length } : { low: -(width >> 1), end: length - ((width + 1) >> 1) + 1 };
}

/**
 * Evidence, in nats, of the windows of `scan` that begin at `starts`, for every place at which they may be laid. Two at a time
 * share two transforms, as real and imaginary part of one signal; the last of an odd number goes beside itself.
 */
export function evidenceOfWindows(scan: Character, reference: CoarseReference, starts: readonly number[]): Float64Array[] {
  const buffers: Buffers = [new Float64Array(reference.spectrum.length), new Float64Array(reference.spectrum.length)];
  const { low, end } = placesOf(reference);
  const evidence: Float64Array[] = [];
  for (let w = 0; w < starts.length; w += 2) {
    const pair = starts.slice(w, w + 2);
    const products = productsOfPair(scan.texture, reference, pair[0], pair[pair.length - 1], buffers);
    pair.forEach((start, part) => {
      const mine = new Float64Array(end - low);
      const sign = part === 0 ? 1 : -1;
      for (let at = low; at < end; at += 1) mine[at - low] = sign * products[2 * (at < 0 ? at + products.length / 2 : at) + part];
      evidence.push(evidenceFrom(mine, scan, reference, start, low));
    });
  }
  return evidence;
}

/** Room for a signal and its spectrum, used again for every pair. */
type Buffers = readonly [Float64Array, Float64Array];

/** Cross-correlation of two windows with the reference: the first's in the real parts, the second's, negated, in the imaginary ones. */
function productsOfPair(texture: Float64Array, { spectrum, width }: CoarseReference, first: number, second: number, [pair, product]: Buffers): Float64Array {
  pair.fill(0);
  for (let i = 0; i < width; i += 1) {
    pair[2 * i] = texture[first + i];
    pair[2 * i + 1] = texture[second + i];
  }
  complexSpectrum(pair, product);
  for (let k = 0; k < product.length; k += 2) {
    const re = product[k];
    const im = product[k + 1];
    product[k] = re * spectrum[k] + im * spectrum[k + 1];
    product[k + 1] = re * spectrum[k + 1] - im * spectrum[k];
  }
  return complexSignal(product, pair);
}

/** The same for `count` places from `low` on, one by one. */
export function evidenceNear(scan: Character, reference: CoarseReference, from: number, low: number, count: number): Float64Array {
  return evidenceFrom(productsNear(scan.texture, reference, from, low, count), scan, reference, from, low);
}

/** Four places at a time: each value of the reference is read once for all of them. */
function productsNear(own: Float64Array, { texture, width, around, character: { length } }: CoarseReference, from: number, low: number, count: number): Float64Array {
  const met = new Float64Array(width + count + 3);
  for (let k = 0; k < met.length; k += 1) {
    const j = around ? modulo(low + k, length) : low + k;
    if (j >= 0 && j < length) met[k] = texture[j];
  }
  const products = new Float64Array(count + 3);
  for (let l = 0; l < count; l += 4) {
    let a = 0, b = 0, c = 0, d = 0;
    let first = met[l], second = met[l + 1], third = met[l + 2];
    for (let i = 0; i < width; i += 1) {
      const value = own[from + i];
      const fourth = met[l + i + 3];
      a += value * first;
      b += value * second;
      c += value * third;
      d += value * fourth;
      first = second;
      second = third;
      third = fourth;
    }
    products[l] = a;
    products[l + 1] = b;
    products[l + 2] = c;
    products[l + 3] = d;
  }
  return products.subarray(0, count);
}

/** Turns products of texture, at places `low` and on, into evidence of texture and events. Places where less than half can be compared say nothing. */
function evidenceFrom(products: Float64Array, scan: Character, reference: CoarseReference, from: number, low: number): Float64Array {
  const { squares, width, around, character: { length } } = reference;
  let tt = 0;
  for (let i = from; i < from + width; i += 1) tt += scan.texture[i] * scan.texture[i];
  for (let l = 0, at = around ? modulo(low, length) : low; l < products.length; l += 1, at = around && at + 1 === length ? 0 : at + 1) {
    const met = at < 0 ? 0 : at;
    const end = at + width < squares.length ? at + width : squares.length - 1;
    products[l] = 2 * (end - met) < width ? 0 : textureEvidence(tt, squares[end] - squares[met], products[l], end - met) / COARSE_BINS_ALIKE;
  }
  addEvents(products, scan, reference, from, low);
  return products;
}

/** Evidence per squared deviation of an LF event in coarse bins, where two events meet by chance more easily. */
const COARSE_EVENT_WEIGHT = 0.05;

function addEvents(evidence: Float64Array, scan: Character, { character, eventful, around, width }: CoarseReference, from: number, low: number): void {
  for (const i of eventfulBins(scan.events, from, from + width)) {
    const own = COARSE_EVENT_WEIGHT * scan.events[i];
    for (const j of eventful) {
      const l = j - (i - from) - low;
      const at = around ? modulo(l, character.length) : l;
      if (at >= 0 && at < evidence.length) evidence[at] += own * character.events[j];
    }
  }
}
