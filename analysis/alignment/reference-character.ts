import type { Character } from './character.ts';
import { interpolate } from './rope-map.ts';

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
  const at = knots.map((knot) => knot.at);
  const rope = knots.map((knot) => knot.rope);
  const first = Math.ceil((rope[0] - sums.start) / sums.bin);
  const last = Math.floor((rope[rope.length - 1] - sums.start) / sums.bin);
  for (let k = first; k <= last; k += 1) {
    const j = sums.around ? ((k % sums.length) + sums.length) % sums.length : k;
    if (j < 0 || j >= sums.length) continue;
    const place = (interpolate(rope, at, sums.start + k * sums.bin) - scan.start) / scan.bin;
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
  const texture = sums.texture.map((value, i) => (sums.count[i] > 0 ? value / sums.count[i] : 0));
  const events = sums.events.map((value, i) => (sums.count[i] > 0 ? value / sums.count[i] : 0));
  return { start: sums.start, bin: sums.bin, length: sums.length, texture, textureSeen: Uint8Array.from(sums.count, (value) => (value > 0 ? 1 : 0)), events, fault: sums.fault.map((value, i) => (sums.faultCount[i] > 0 ? value / sums.faultCount[i] : 0)), faultSeen: Uint8Array.from(sums.faultCount, (value) => (value > 0 ? 1 : 0)) };
}
