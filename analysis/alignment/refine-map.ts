import { blockEvidence } from './block-evidence.ts';
import type { Search } from './block-evidence.ts';
import type { Character } from './character.ts';
import { fitSegments, shiftOn } from './fit-segments.ts';
import type { Segment } from './fit-segments.ts';
import type { AlignmentParameters } from './parameters.ts';
import { residualModels } from './residual-model.ts';
import type { ResidualModel } from './residual-model.ts';
import { median } from '../signal/median.ts';
import { NORMAL_MAD } from '../signal/mad.ts';
import { scanMap } from './scan-map.ts';
import type { Look, ScanMap } from './scan-map.ts';
import { beliefsOf, boundAbout } from './shift-lattice.ts';
import type { Motion } from './shift-lattice.ts';
import { ASIDE, shiftPoints } from './shift-points.ts';
import type { Within } from './shift-points.ts';
import { bandsOf } from './texture-bands.ts';
import type { Band } from './texture-bands.ts';
import { walkAlong } from './walk-along.ts';

type Shift = (at: number) => number;

/** Where a scan lies as far as is known, and how far off it may be. Metres. */
export interface Course {
  readonly shift: Shift;
  readonly reach: (at: number) => number;
}

/**
 * From a coarse shift along the scan to a map finer than a bin, in closer and closer looks. A wide one finds which way through
 * slips the scan took. Straight lines through what it measured say the scale; where that is far off, a look about them, free of
 * scale errors within its blocks, corrects them; a last one, narrow and fine, gives the map and its bound. How the scan scatters
 * about its reference is learned again before each.
 */
export function refineMap(scan: Character, reference: Character, coarse: Course, around: boolean, parameters: AlignmentParameters): ScanMap | null {
  const look = (models: readonly ResidualModel[], search: Search, motions: readonly Motion[]): Look => {
    const lattice = blockEvidence(scan, reference, models, search, around, parameters);
    return { lattice, beliefs: beliefsOf(lattice, motions), steady: search.steady };
  };
  let bands: readonly Band[] = bandsOf(scan, reference);
  let explained = 0;
  const learn = (shift: Shift, excess: number): ResidualModel[] => {
    const learned = residualModels(bands, scan, reference, shift, around);
    bands = learned.map(({ band }) => band);
    explained = learned[0]?.explained ?? 0;
    return learned.map(({ model }) => ({ ...model, independence: model.independence * excess * excess }));
  };
  const wide: Search = { steady: coarse.shift, shift: coarse.shift, reach: coarse.reach, perBin: 1 };
  const models = learn(coarse.shift, 1);
  if (models.length === 0) return null;
  const better = look(models, wide, [looseMotion(scan.bin, parameters)]);
  const first = linesThrough(better, 'level', parameters);
  if (first === null) return null;
  let [seen, lines] = [better, first];
  if (smeared(first.segments, scan.bin, parameters)) {
    seen = look(learn(alongLines(first.segments), first.excess), searchAbout(first.segments, better, 1, (ASIDE + 2) * scan.bin, parameters), straightMotions(parameters));
    lines = linesThrough(seen, 'steady', parameters) ?? first;
  }
  const closest = look(learn(alongLines(lines.segments), lines.excess), searchAbout(lines.segments, seen, FINE, parameters.lineReach, parameters), straightMotions(parameters));
  return scanMap(closest, scan, doubtOf(explained), parameters);
}

/** True where some scale is so far off that the shift went by more than a bin within one measured length, which the wide look took as level. */
function smeared(segments: readonly Segment[], bin: number, parameters: AlignmentParameters): boolean {
  return segments.some((segment) => Math.abs(segment.slope) * parameters.pointLength > bin);
}

/** Where the reference explains less than this of the best band, gain, colour and scatter are learned from noise for the most part. */
const WELL_EXPLAINED = 0.25;
const MOST_DOUBT = 2.5;

/** How many times wider a bound is to be where little is explained. */
function doubtOf(explained: number): number {
  return Math.max(1, Math.min(MOST_DOUBT, Math.sqrt(WELL_EXPLAINED / Math.max(explained, 1e-9))));
}

/** Shifts told apart within a bin. */
const FINE = 4;

function slipChance(parameters: AlignmentParameters): number {
  return parameters.block / parameters.slipDistance;
}

interface Lines { readonly segments: Segment[]; /** How many times farther than they claim the measured shifts scatter about the lines, 1 at least. */ readonly excess: number }

function linesThrough({ lattice, beliefs, steady }: Look, within: Within, parameters: AlignmentParameters): Lines | null {
  const points = shiftPoints(lattice, beliefs, steady, within, parameters);
  if (points.length < 3) return null;
  const rough = fitSegments(points, 0, parameters.maxSlope, parameters);
  const segments = fitSegments(points, medianSlope(rough), parameters.slopeSpread, parameters);
  const off = segments.flatMap((segment) => points.slice(segment.first, segment.end).map((point) => Math.abs(point.shift - shiftOn(segment, point.at)) / point.sigma));
  const excess = off.length < FEW_POINTS ? DOUBT_OF_FEW : Math.max(1, NORMAL_MAD * median(off));
  return { segments, excess };
}

/** From so few points no scatter can be told; then their claims are taken with a doubt. */
const FEW_POINTS = 10;
const DOUBT_OF_FEW = 1.5;

function medianSlope(segments: readonly Segment[]): number {
  const weighted = segments.flatMap((segment) => Array.from({ length: segment.end - segment.first }, () => segment.slope)).sort((a, b) => a - b);
  return weighted[weighted.length >> 1];
}

/** Each line up to the middle between it and the next. The last one reaches on without end. */
function alongLines(segments: readonly Segment[]): Shift {
  const indexAt = walkAlong(segments.map((segment) => segment.to));
  return (x) => shiftOn(segments[indexAt(x)], x);
}

/** The slopes of the lines without the jumps between them: shifts are counted from here, so that a slip costs once, wherever it is. */
function withoutJumps(segments: readonly Segment[]): Shift {
  const indexAt = walkAlong(segments.map((segment) => segment.to));
  const starts = [shiftOn(segments[0], segments[0].middle)];
  const at = segments.map((segment, i) => (i === 0 ? segment.middle : segments[i - 1].to));
  for (let i = 1; i < segments.length; i += 1) starts.push(starts[i - 1] + segments[i - 1].slope * (at[i] - at[i - 1]));
  return (x) => {
    const i = indexAt(x);
    return starts[i] + segments[i].slope * (x - at[i]);
  };
}

/** About lines: what the look before left open, and beside a jump between two lines both of them; elsewhere only what a line may be off by. */
function searchAbout(segments: readonly Segment[], { lattice, beliefs, steady }: Look, perBin: number, least: number, parameters: AlignmentParameters): Search {
  const jumps = segments.slice(1).map((segment, i) => ({ at: segments[i].to, size: Math.abs(shiftOn(segment, segments[i].to) - shiftOn(segments[i], segments[i].to)) }));
  const shift = alongLines(segments);
  const open = beliefs.map((belief, b) => Math.abs(steady(lattice.at[b]) + belief.middle - shift(lattice.at[b])) + boundAbout(belief, belief.middle));
  const reach = (x: number): number => {
    let jump = 0;
    for (const each of jumps) if (Math.abs(x - each.at) < SLIP_DOUBT && each.size > jump) jump = each.size;
    const b = Math.round((x - lattice.at[0]) / ((lattice.at[1] ?? 1) - lattice.at[0]));
    return Math.min(Math.max(parameters.fineReach, least), Math.max(least + jump, open[Math.max(0, Math.min(open.length - 1, b))]));
  };
  return { steady: withoutJumps(segments), shift, reach, perBin };
}

/** How far from where two lines part the slip between them may be. Metres. */
const SLIP_DOUBT = 12;

/** A scale error moves the shift on by one bin every so many blocks: as often must the lattice let it. */
function looseMotion(bin: number, parameters: AlignmentParameters): Motion {
  return { drift: Math.sqrt(parameters.maxSlope * parameters.block * bin), slipChance: slipChance(parameters), largestSlip: parameters.maxSlip };
}

/** Some drifts about the lines, from very straight to wandering. */
function straightMotions(parameters: AlignmentParameters): Motion[] {
  return DRIFTS.map((share) => ({ drift: share * parameters.wander * Math.sqrt(parameters.block), slipChance: slipChance(parameters), largestSlip: parameters.maxSlip }));
}

/** Multiples of the usual wander that are tried. */
const DRIFTS = [1 / 3, 1, 8 / 3] as const;
