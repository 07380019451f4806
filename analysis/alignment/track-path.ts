import type { Character } from './character.ts';
import { allWindows, lagChange, windowStarts } from './coarse-path.ts';
import type { CoarsePath } from './coarse-path.ts';
import { evidenceNear } from './coarse-reference.ts';
import type { CoarseReference } from './coarse-reference.ts';
import type { AlignmentParameters } from './parameters.ts';
import { interpolate } from './rope-map.ts';

/**
 * Fills the lengths between the windows of a coarse path: windows half over half, each looked at only where the path can
 * have gone between its neighbours. Linear in the scan times the band.
 */
export function trackPath(path: CoarsePath, scan: Character, reference: CoarseReference, parameters: AlignmentParameters): CoarsePath {
  const windows = allWindows(scan, parameters);
  if (windows <= path.centres.length || path.centres.length < 2) return path;
  const { width } = reference;
  const starts = windowStarts(scan.length, width, windows);
  const apart = (path.centres[1] - path.centres[0]) * scan.bin;
  const reach = lagChange(apart / 2, scan.bin, parameters).slip;
  const firsts = starts.map((start) => Math.round(interpolate(path.centres, path.lags, start + width / 2)) - reach);
  const evidence = starts.map((start, w) => evidenceNear(scan, reference, start, start + firsts[w], 2 * reach + 1));
  const step = lagChange((starts[1] - starts[0]) * scan.bin, scan.bin, parameters);
  const lags = bandedPath(evidence, firsts, step, parameters.slipCost);
  return { centres: starts.map((start) => start + width / 2), lags, evidence: path.evidence };
}

/** Best path through rows of evidence that start at lags `firsts`; changes beyond `free` cost a slip, none exceeds `slip`. */
function bandedPath(evidence: readonly Float64Array[], firsts: readonly number[], { free, slip }: { free: number; slip: number }, cost: number): number[] {
  const from: Int32Array[] = [];
  let best = Float64Array.from(evidence[0]);
  for (let w = 1; w < evidence.length; w += 1) {
    const next = new Float64Array(evidence[w].length).fill(Number.NEGATIVE_INFINITY);
    const index = new Int32Array(next.length);
    const moved = firsts[w] - firsts[w - 1];
    for (let l = 0; l < next.length; l += 1) {
      for (let k = Math.max(0, l + moved - slip); k <= Math.min(best.length - 1, l + moved + slip); k += 1) {
        const change = Math.abs(l + moved - k);
        const candidate = best[k] - (change > free ? cost : 0) - 0.05 * change;
        if (candidate > next[l]) {
          next[l] = candidate;
          index[l] = k;
        }
      }
      next[l] += evidence[w][l];
    }
    from.push(index);
    best = next;
  }
  const lags = new Array<number>(evidence.length);
  let at = best.reduce((top, value, l) => (value > best[top] ? l : top), 0);
  for (let w = evidence.length - 1; w >= 0; w -= 1) {
    lags[w] = firsts[w] + at;
    if (w > 0) at = from[w - 1][at];
  }
  return lags;
}
