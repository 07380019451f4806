import type { Character } from './character.ts';
import type { ShiftPoint } from './fine-path.ts';
import { fitSegments, shiftOn } from './fit-segments.ts';
import type { Segment } from './fit-segments.ts';
import { locateSlip } from './locate-slip.ts';
import type { AlignmentParameters } from './parameters.ts';

/** A map from scan position to reference position, in the direction of the scan character it was made from. Metres. */
export interface ScanMap {
  readonly knots: readonly { readonly at: number; readonly rope: number }[];
  readonly bounds: readonly { readonly at: number; readonly value: number }[];
  readonly slips: readonly { readonly at: number; readonly size: number }[];
  /** Share of windows that measured a shift. */
  readonly informed: number;
}

/** Lines through the measured shifts, slips between them, and the 95 % bound everywhere. Null where too few windows measured anything. */
export function scanMap(points: readonly ShiftPoint[], scan: Character, reference: Character, around: boolean, parameters: AlignmentParameters): ScanMap | null {
  const measured = honestSigmas(withoutOutliers(points.filter((point) => Number.isFinite(point.sigma))), Math.ceil(parameters.fineWindow / parameters.fineHop));
  if (measured.length < 3) return null;
  const rough = fitSegments(measured, 0, parameters.maxSlope, parameters);
  const slope = medianSlope(rough);
  const segments = fitSegments(measured, slope, parameters.slopeSpread, parameters);
  const [first, last] = [scan.start - scan.bin / 2, scan.start + (scan.length - 0.5) * scan.bin];
  const joints = segments.slice(1).map((segment, i) => joint(segments[i], segment, measured, scan, reference, around, parameters));
  return {
    knots: knotsOf(segments, joints, first, last),
    bounds: boundsOf(segments, joints, measured, first, last, parameters),
    slips: joints.filter((each) => each.slip).map((each) => ({ at: each.at, size: each.jump })),
    informed: measured.length / Math.max(1, points.length),
  };
}

/** Drops points that stand off the median of their neighbourhood by far more than they claim. */
function withoutOutliers(points: readonly ShiftPoint[]): ShiftPoint[] {
  return points.filter((point, i) => {
    const near = points.slice(Math.max(0, i - 3), i + 4).map((each) => each.shift).sort((a, b) => a - b);
    return near.length < 5 || Math.abs(point.shift - near[near.length >> 1]) < Math.max(0.75, 6 * point.sigma);
  });
}

/**
 * Windows claim too little where neighbouring bins are not independent or the reference is noisy itself. How far each
 * stands off the middle of its neighbours that share no sample with it tells by how much; claims are only ever widened.
 */
function honestSigmas(points: readonly ShiftPoint[], apart: number): ShiftPoint[] {
  const bends = points.slice(2 * apart).map((after, i) => {
    const [before, here] = [points[i], points[i + apart]];
    const share = (here.at - before.at) / (after.at - before.at);
    return Math.abs(here.shift - before.shift - share * (after.shift - before.shift)) / Math.hypot(here.sigma, (1 - share) * before.sigma, share * after.sigma);
  });
  const widen = bends.length < 8 ? FEW_POINTS : Math.max(1, lowerThird(bends) / NORMAL_LOWER_THIRD);
  return points.map((point) => ({ ...point, sigma: point.sigma * widen }));
}

/** Widening where there are too few windows to tell how far they scatter. */
const FEW_POINTS = 2;

/** The lower third, not the middle: windows across a change of scale or a slip bend for a good reason. */
function lowerThird(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 3)];
}

/** A third of all draws of a standard normal are nearer to 0 than this. */
const NORMAL_LOWER_THIRD = 0.4307;

function medianSlope(segments: readonly Segment[]): number {
  const weighted = segments.flatMap((segment) => Array.from({ length: segment.end - segment.first }, () => segment.slope)).sort((a, b) => a - b);
  return weighted[weighted.length >> 1];
}

interface Joint {
  readonly at: number;
  readonly low: number;
  readonly high: number;
  readonly jump: number;
  readonly slip: boolean;
}

/** Where two neighbouring segments meet: where their lines cross nearby (the scale changed), else at a slip where they are apart. */
function joint(left: Segment, right: Segment, points: readonly ShiftPoint[], scan: Character, reference: Character, around: boolean, parameters: AlignmentParameters): Joint {
  const half = parameters.fineWindow / 2;
  const from = points[left.end - 1].at;
  const to = points[right.first].at;
  const middle = (from + to) / 2;
  const jump = shiftOn(right, middle) - shiftOn(left, middle);
  const doubt = 3 * Math.hypot(left.levelSigma * Math.max(1, left.misfit), right.levelSigma * Math.max(1, right.misfit)) + scan.bin / 2;
  const crossing = middle + jump / (left.slope - right.slope);
  const kink = crossing > from - 2 * half && crossing < to + 2 * half && Math.abs(left.slope - right.slope) > 3 * Math.hypot(left.slopeSigma, right.slopeSigma);
  if (kink || Math.abs(jump) < doubt) return { at: kink ? crossing : middle, low: from, high: to, jump, slip: false };
  const place = locateSlip(scan, reference, from - half, to + half, (at) => shiftOn(left, at), (at) => shiftOn(right, at), around);
  return { ...place, jump, slip: true };
}

function knotsOf(segments: readonly Segment[], joints: readonly Joint[], first: number, last: number): { at: number; rope: number }[] {
  const knots = [{ at: first, rope: first + shiftOn(segments[0], first) }];
  joints.forEach((each, i) => {
    const [left, right] = [segments[i], segments[i + 1]];
    if (!each.slip) {
      knots.push({ at: each.at, rope: each.at + (shiftOn(left, each.at) + shiftOn(right, each.at)) / 2 });
      return;
    }
    // The wheel turned while the rope stood: the file runs on over a length of its own that shows one place of the rope.
    const half = Math.max(0.0005, (-each.jump / 2) * 1.02);
    knots.push({ at: each.at - half, rope: each.at - half + shiftOn(left, each.at - half) }, { at: each.at + half, rope: each.at + half + shiftOn(right, each.at + half) });
  });
  knots.push({ at: last, rope: last + shiftOn(segments[segments.length - 1], last) });
  return monotone(knots);
}

/** Keeps the knots that rise in both, so that the map can always be inverted. */
function monotone(knots: readonly { at: number; rope: number }[]): { at: number; rope: number }[] {
  const kept: { at: number; rope: number }[] = [];
  for (const knot of knots) {
    const last = kept[kept.length - 1];
    if (!last || (knot.at > last.at + 1e-9 && knot.rope > last.rope + 1e-9)) kept.push(knot);
  }
  return kept;
}

/** 97.5 % point of Student's t for few points is larger than the normal's; this covers it and correlated windows. */
const COVER = 2.6;
/** Growth of the bound per metre away from the nearest measurement: unseen slips and a scale that wanders. */
const DRIFT = 0.003;

function boundsOf(segments: readonly Segment[], joints: readonly Joint[], points: readonly ShiftPoint[], first: number, last: number, parameters: AlignmentParameters): { at: number; value: number }[] {
  const bounds: { at: number; value: number }[] = [];
  const half = parameters.fineWindow / 2;
  const slips = joints.filter((each) => each.slip);
  const count = Math.max(2, Math.ceil((last - first) / 2.5));
  const places = Array.from({ length: count + 1 }, (_, i) => first + ((last - first) * i) / count);
  for (const each of slips) places.push(each.low - 0.1, each.low, each.at, each.high, each.high + 0.1);
  let near = 0;
  for (const at of places.filter((place) => place >= first && place <= last).sort((a, b) => a - b)) {
    while (near < points.length - 1 && Math.abs(points[near + 1].at - at) <= Math.abs(points[near].at - at)) near += 1;
    const segment = segments.find((each) => near >= each.first && near < each.end)!;
    const line = Math.hypot(segment.levelSigma, segment.slopeSigma * (at - segment.middle)) * Math.max(1, segment.misfit);
    const away = Math.max(0, Math.abs(points[near].at - at) - half);
    const slip = slips.find((each) => at >= each.low - 1e-9 && at <= each.high + 1e-9);
    bounds.push({ at, value: parameters.smallestBound + COVER * line + DRIFT * away + (slip ? Math.abs(slip.jump) : 0) });
  }
  return bounds;
}
