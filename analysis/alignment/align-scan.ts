import type { References } from './align-inspections.ts';
import { capped, mirrored, negated } from './character.ts';
import type { Character, ScanCharacter } from './character.ts';
import { allWindows, coarsePath, coarseWidth } from './coarse-path.ts';
import type { CoarsePath } from './coarse-path.ts';
import { coarseReference } from './coarse-reference.ts';
import type { CoarseReference } from './coarse-reference.ts';
import type { Expectation } from './expectation.ts';
import type { AlignmentParameters } from './parameters.ts';
import { characterOfReference } from './reference-character.ts';
import { refineMap } from './refine-map.ts';
import type { Course } from './refine-map.ts';
import type { ScanMap } from './scan-map.ts';
import { trackPath } from './track-path.ts';
import { walkAlong } from './walk-along.ts';
import { modulo } from '../signal/modulo.ts';

export type Direction = 'forward' | 'reverse';

/** What matching one scan found. `map` is null where the rope showed too little character; positions are mirrored for `reverse`. */
export interface ScanResult {
  readonly direction: Direction;
  readonly map: ScanMap | null;
  /** The scan's LMA rises where that of the scans before falls: loss points the other way in it. */
  readonly opposed: boolean;
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
  const known = capped(characterOfReference(references.coarse), parameters.textureCap);
  const reference = coarseReference(known, coarseWidth(own.coarse, parameters), around);
  const search = (opposed: boolean): Search => searchBothWays(capped(opposed ? negated(own.coarse) : own.coarse, parameters.textureCap), reference, expectation, parameters);
  const asWritten = search(false);
  const turned = asWritten.believed && !anticorrelated(asWritten.chosen, known) ? null : search(true);
  const opposed = turned !== null && turned.believed && turned.chosen.fit > asWritten.chosen.fit;
  const { chosen, other, believed } = opposed ? turned : asWritten;
  const margin = chosen.path.evidence - other.path.evidence;
  if (!believed) return { direction: expectation.direction, map: null, opposed: false, margin, evidence: chosen.fit };
  const path = trackPath(chosen.path, chosen.scan, reference, parameters);
  const signed = opposed ? negated(own.fine) : own.fine;
  const fine = chosen.direction === 'forward' ? signed : mirrored(signed);
  const map = refineMap(fine, characterOfReference(references.fine), coarseCourse(path, chosen.scan, known, parameters), around, parameters);
  return { direction: chosen.direction, map, opposed, margin, evidence: chosen.fit };
}

/** True where a path that LF events found lays LMA on its own negative. */
function anticorrelated({ path, scan }: Way, reference: Character): boolean {
  let [products, squares, others] = [0, 0, 0];
  const half = Math.round(scan.length / (2 * Math.max(1, path.centres.length)));
  path.centres.forEach((centre, w) => {
    for (let i = Math.max(0, Math.round(centre) - half); i < Math.min(scan.length, Math.round(centre) + half); i += 1) {
      const j = i + path.lags[w];
      const at = reference.length > 0 ? modulo(j, reference.length) : 0;
      products += scan.texture[i] * reference.texture[at];
      squares += scan.texture[i] ** 2;
      others += reference.texture[at] ** 2;
    }
  });
  return products < -0.1 * Math.sqrt(squares * others);
}

interface Way { readonly direction: Direction; readonly scan: Character; readonly path: CoarsePath; /** Evidence without what was expected. */ readonly fit: number }

interface Search { readonly chosen: Way; readonly other: Way; readonly believed: boolean }

/** A few windows first; more where they leave a doubt. */
function searchBothWays(coarse: Character, reference: CoarseReference, expectation: Expectation, parameters: AlignmentParameters): Search {
  const most = allWindows(coarse, parameters);
  for (const windows of [...FEW_WINDOWS.filter((few) => few < most), most]) {
    const ways = (['forward', 'reverse'] as const).map((direction) => searchOneWay(direction, coarse, reference, expectation, windows, parameters));
    ways.sort((a, b) => b.path.evidence - a.path.evidence);
    const [chosen, other] = ways;
    const needed = LEAST_EVIDENCE + chanceEvidence(chosen.path);
    if (windows === most || (chosen.fit > BEYOND_DOUBT * needed && chosen.fit - other.fit > BEYOND_DOUBT * LEAST_EVIDENCE)) return { chosen, other, believed: chosen.path.centres.length > 0 && chosen.fit >= needed && chosen.fit - other.fit >= LEAST_EVIDENCE };
  }
  throw new Error('no window was looked at');
}

function searchOneWay(direction: Direction, coarse: Character, reference: CoarseReference, expectation: Expectation, windows: number, parameters: AlignmentParameters): Way {
  const scan = direction === 'forward' ? coarse : mirrored(coarse);
  const offset = scan.start - reference.character.start;
  const path = coarsePath(scan, reference, (lag) => expectation.prior(direction, lag - offset), windows, parameters);
  return { direction, scan, path, fit: path.evidence - expectation.prior(direction, path.lags[0] * scan.bin - offset) };
}

/** The best of thousands of lags gathers this much by chance: the logarithm of the number of lags, once, and a little a window. */
function chanceEvidence(path: CoarsePath): number {
  return 8 + 1.5 * path.centres.length;
}

/** Shift, in metres, along the scan as the windows of a path show it, and how far the scan may lie off it. */
function coarseCourse(path: CoarsePath, scan: Character, reference: Character, { fineReach }: AlignmentParameters): Course {
  const offset = scan.start - reference.start;
  const at = path.centres.map((centre) => scan.start + (centre - 0.5) * scan.bin);
  const shift = path.lags.map((lag) => lag * scan.bin - offset);
  if (at.length < 2) return { shift: () => shift[0], reach: () => fineReach };
  const indexAt = walkAlong(at.slice(1));
  const change = at.map((_, k) => Math.max(0, ...[k - 1, k, k + 1].map((i) => Math.abs(shift[i + 1] - shift[i])).filter(Number.isFinite)));
  return {
    // Beyond the outer windows the shift is held: extending a coarse slope would throw the ends off.
    shift: (x) => {
      const held = Math.max(at[0], Math.min(at[at.length - 1], x));
      const k = indexAt(held);
      return shift[k] + ((held - at[k]) / (at[k + 1] - at[k])) * (shift[k + 1] - shift[k]);
    },
    // Beyond them no window shows a slip either.
    reach: (x) => (x < at[0] || x > at[at.length - 1] ? fineReach : Math.min(fineReach, CALM * fineReach + change[indexAt(x)])),
  };
}

/** Where neighbouring windows agree, this share of the usual reach holds the largest slip that two of them may have passed over. */
const CALM = 5 / 8;
