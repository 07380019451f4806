import type { Trace } from '../rope/trace.ts';
import type { Bins, References } from './align-inspections.ts';
import { capped, characterOf, mirrored } from './character.ts';
import type { Character } from './character.ts';
import { coarsePath } from './coarse-path.ts';
import type { CoarsePath } from './coarse-path.ts';
import type { Expectation } from './expectation.ts';
import type { AlignmentParameters } from './parameters.ts';
import { interpolate } from './rope-map.ts';
import { characterOfReference } from './reference-character.ts';
import { refineMap } from './refine-map.ts';
import type { ScanMap } from './scan-map.ts';

export type Direction = 'forward' | 'reverse';

/** What matching one scan found. `map` is null where the rope showed too little character; positions are mirrored for `reverse`. */
export interface ScanResult {
  readonly direction: Direction;
  readonly map: ScanMap | null;
  /** By how many nats the chosen direction beats the other, and what its path holds over chance. */
  readonly margin: number;
  readonly evidence: number;
}

/** Evidence that a coarse path must hold per window, beyond chance, before it is believed. */
const LEAST_EVIDENCE = 12;

/** Direction, start, scale, local shifts and slips of one scan against what is known of the rope. */
export function alignScan(trace: Trace<'measured'>, references: References, bins: Bins, expectation: Expectation, loopLength: number | null, parameters: AlignmentParameters): ScanResult {
  const around = loopLength !== null;
  const coarseReference = capped(characterOfReference(references.coarse), parameters.textureCap);
  const coarse = capped(characterOf(trace, bins.coarse, parameters), parameters.textureCap);
  const paths = (['forward', 'reverse'] as const).map((direction) => {
    const scan = direction === 'forward' ? coarse : mirrored(coarse);
    const offset = scan.start - coarseReference.start;
    const path = coarsePath(scan, coarseReference, around, (lag) => expectation.prior(direction, lag - offset), parameters);
    return { direction, scan, path, chance: chanceEvidence(path) };
  });
  paths.sort((a, b) => b.path.evidence - a.path.evidence);
  const [chosen, other] = paths;
  const evidence = chosen.path.evidence - expectation.prior(chosen.direction, chosen.path.lags[0] * bins.coarse - (chosen.scan.start - coarseReference.start));
  const margin = chosen.path.evidence - other.path.evidence;
  if (chosen.path.centres.length === 0 || evidence < LEAST_EVIDENCE + chosen.chance) return { direction: expectation.direction, map: null, margin, evidence };
  const map = refine(trace, chosen.direction, chosen.path, chosen.scan, coarseReference, references, bins, around, parameters);
  return { direction: chosen.direction, map, margin, evidence };
}

/** The best of thousands of lags gathers this much by chance: the logarithm of the number of lags, once, and a little a window. */
function chanceEvidence(path: CoarsePath): number {
  return 8 + 1.5 * path.centres.length;
}

function refine(trace: Trace<'measured'>, direction: Direction, path: CoarsePath, coarse: Character, coarseReference: Character, references: References, bins: Bins, around: boolean, parameters: AlignmentParameters): ScanMap | null {
  const reference = characterOfReference(references.fine);
  const own = characterOf(trace, bins.fine, parameters);
  const scan = direction === 'forward' ? own : mirrored(own);
  const offset = coarse.start - coarseReference.start;
  const at = path.centres.map((centre) => coarse.start + (centre - 0.5) * coarse.bin);
  const shift = path.lags.map((lag) => lag * coarse.bin - offset);
  const predicted = at.length > 1 ? (x: number): number => interpolate(at, shift, clamp(x, at)) : (): number => shift[0];
  return refineMap(scan, reference, predicted, around, parameters);
}

/** Beyond the outer windows the shift is held: extending a coarse slope would throw the ends off. */
function clamp(x: number, at: readonly number[]): number {
  return Math.max(at[0], Math.min(at[at.length - 1], x));
}

