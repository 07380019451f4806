import type { References } from './align-inspections.ts';
import { capped, mirrored } from './character.ts';
import type { Character, ScanCharacter } from './character.ts';
import { allWindows, coarsePath } from './coarse-path.ts';
import type { CoarsePath } from './coarse-path.ts';
import type { Expectation } from './expectation.ts';
import type { AlignmentParameters } from './parameters.ts';
import { characterOfReference } from './reference-character.ts';
import { refineMap } from './refine-map.ts';
import { interpolate } from './rope-map.ts';
import type { ScanMap } from './scan-map.ts';
import { trackPath } from './track-path.ts';

export type Direction = 'forward' | 'reverse';

/** What matching one scan found. `map` is null where the rope showed too little character; positions are mirrored for `reverse`. */
export interface ScanResult {
  readonly direction: Direction;
  readonly map: ScanMap | null;
  /** By how many nats the chosen direction beats the other, and what its path holds over chance. */
  readonly margin: number;
  readonly evidence: number;
}

/** Evidence that a coarse path must hold beyond chance, and over the other direction, before it is believed. */
const LEAST_EVIDENCE = 12;
/** A search over few windows ends where its path is beyond doubt. */
const BEYOND_DOUBT = 3;
const FEW_WINDOWS = [8, 24] as const;

/** Direction, start, scale, local shifts and slips of one scan against what is known of the rope. */
export function alignScan(own: ScanCharacter, references: References, expectation: Expectation, loopLength: number | null, parameters: AlignmentParameters): ScanResult {
  const around = loopLength !== null;
  const reference = capped(characterOfReference(references.coarse), parameters.textureCap);
  const coarse = capped(own.coarse, parameters.textureCap);
  const { chosen, other, evidence, needed } = searchBothWays(coarse, reference, around, expectation, parameters);
  const margin = chosen.path.evidence - other.path.evidence;
  if (chosen.path.centres.length === 0 || evidence < needed || chosen.fit - other.fit < LEAST_EVIDENCE) return { direction: expectation.direction, map: null, margin, evidence };
  const path = trackPath(chosen.path, chosen.scan, reference, around, parameters);
  const fine = chosen.direction === 'forward' ? own.fine : mirrored(own.fine);
  const map = refineMap(fine, characterOfReference(references.fine), coarseShift(path, chosen.scan, reference), around, parameters);
  return { direction: chosen.direction, map, margin, evidence };
}

interface Way { readonly direction: Direction; readonly scan: Character; readonly path: CoarsePath; /** Evidence without what was expected. */ readonly fit: number }

/** A few windows first; more where they leave a doubt. */
function searchBothWays(coarse: Character, reference: Character, around: boolean, expectation: Expectation, parameters: AlignmentParameters): { chosen: Way; other: Way; evidence: number; needed: number } {
  const most = allWindows(coarse, parameters);
  for (const windows of [...FEW_WINDOWS.filter((few) => few < most), most]) {
    const ways = (['forward', 'reverse'] as const).map((direction) => searchOneWay(direction, coarse, reference, around, expectation, windows, parameters));
    ways.sort((a, b) => b.path.evidence - a.path.evidence);
    const [chosen, other] = ways;
    const needed = LEAST_EVIDENCE + chanceEvidence(chosen.path);
    if (windows === most || (chosen.fit > BEYOND_DOUBT * needed && chosen.fit - other.fit > BEYOND_DOUBT * LEAST_EVIDENCE)) return { chosen, other, evidence: chosen.fit, needed };
  }
  throw new Error('no window was looked at');
}

function searchOneWay(direction: Direction, coarse: Character, reference: Character, around: boolean, expectation: Expectation, windows: number, parameters: AlignmentParameters): Way {
  const scan = direction === 'forward' ? coarse : mirrored(coarse);
  const offset = scan.start - reference.start;
  const path = coarsePath(scan, reference, around, (lag) => expectation.prior(direction, lag - offset), windows, parameters);
  return { direction, scan, path, fit: path.evidence - expectation.prior(direction, path.lags[0] * scan.bin - offset) };
}

/** The best of thousands of lags gathers this much by chance: the logarithm of the number of lags, once, and a little a window. */
function chanceEvidence(path: CoarsePath): number {
  return 8 + 1.5 * path.centres.length;
}

/** Shift, in metres, along the scan as the windows of a path show it. */
function coarseShift(path: CoarsePath, scan: Character, reference: Character): (at: number) => number {
  const offset = scan.start - reference.start;
  const at = path.centres.map((centre) => scan.start + (centre - 0.5) * scan.bin);
  const shift = path.lags.map((lag) => lag * scan.bin - offset);
  return at.length > 1 ? (x) => interpolate(at, shift, clamp(x, at)) : () => shift[0];
}

/** Beyond the outer windows the shift is held: extending a coarse slope would throw the ends off. */
function clamp(x: number, at: readonly number[]): number {
  return Math.max(at[0], Math.min(at[at.length - 1], x));
}

