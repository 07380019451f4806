import type { Character } from './character.ts';
import { walkAlong } from './walk-along.ts';
import { modulo } from '../signal/modulo.ts';

/** What is known of the rope's own character from all scans aligned so far, on one grid of rope positions. */
export interface ReferenceSums {
  readonly start: number;
  readonly bin: number;
  readonly length: number;
  readonly texture: Float64Array;
  readonly events: Float64Array;
  readonly count: Float64Array;
  readonly fault: Float64Array;
  readonly faultCount: Float64Array;
  readonly around: boolean;
}

export function emptyReference(start: number, bin: number, length: number, around: boolean): ReferenceSums {
  return { start, bin, length, around, texture: new Float64Array(length), events: new Float64Array(length), count: new Float64Array(length), fault: new Float64Array(length), faultCount: new Float64Array(length) };
}

/** Adds one scan through its map; `knots` rise in both. Each reference bin takes the scan's value at the same rope position. */
export function addToReference(sums: ReferenceSums, scan: Character, knots: readonly { at: number; rope: number }[], withFault: boolean): void {
  const rope = knots.map((knot) => knot.rope);
  const stretchAt = walkAlong(rope.slice(1));
  const first = Math.ceil((rope[0] - sums.start) / sums.bin);
  const last = Math.floor((rope[rope.length - 1] - sums.start) / sums.bin);
  for (let k = first; k <= last; k += 1) {
    const j = sums.around ? modulo(k, sums.length) : k;
    if (j < 0 || j >= sums.length) continue;
    const here = sums.start + k * sums.bin;
    const knot = stretchAt(here);
    const at = knots[knot].at + ((here - rope[knot]) / (rope[knot + 1] - rope[knot])) * (knots[knot + 1].at - knots[knot].at);
    const place = (at - scan.start) / scan.bin;
    const low = Math.floor(place);
    if (low < 0 || low + 1 >= scan.length) continue;
    const part = place - low;
    if (withFault && scan.faultSeen[low] + scan.faultSeen[low + 1] === 2) {
      sums.fault[j] += scan.fault[low] + part * (scan.fault[low + 1] - scan.fault[low]);
      sums.faultCount[j] += 1;
    }
    if (scan.textureSeen[low] + scan.textureSeen[low + 1] < 1) continue;
    sums.texture[j] += scan.texture[low] + part * (scan.texture[low + 1] - scan.texture[low]);
    sums.events[j] += Math.max(scan.events[low], scan.events[low + 1]);
    sums.count[j] += 1;
  }
}

/** The mean of all scans so far. */
export function characterOfReference(sums: ReferenceSums): Character {
  const { start, bin, length, count, faultCount } = sums;
  return {
    start, bin, length, texture: meanOf(sums.texture, count), textureSeen: someIn(count), events: meanOf(sums.events, count),
    fault: meanOf(sums.fault, faultCount), faultSeen: someIn(faultCount),
  };
}

function meanOf(sums: Float64Array, counts: Float64Array): Float64Array {
  const mean = new Float64Array(sums.length);
  for (let i = 0; i < mean.length; i += 1) if (counts[i] > 0) mean[i] = sums[i] / counts[i];
  return mean;
}

function someIn(counts: Float64Array): Uint8Array {
  const some = new Uint8Array(counts.length);
  for (let i = 0; i < some.length; i += 1) some[i] = counts[i] > 0 ? 1 : 0;
  return some;
}
