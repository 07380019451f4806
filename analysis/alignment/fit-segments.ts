import type { AlignmentParameters } from './parameters.ts';
import type { ShiftPoint } from './shift-points.ts';

/** A stretch of the scan over which the shift is a straight line: shift = level + slope (x - middle). */
export interface Segment {
  readonly first: number; // index of its first point
  readonly end: number; // index after its last point
  /** Position half way to the next segment's first point; infinite for the last segment. */
  readonly to: number;
  readonly middle: number;
  readonly level: number;
  readonly slope: number;
}

/**
 * Best straight segments through the shift points: exact optimal partition, each further segment paid for with
 * `breakCost` nats; slopes are drawn to `slope` with spread `slopeSpread`. Points are ordered and all informative.
 * Quadratic in the number of points, at most `longest` points a segment.
 */
export function fitSegments(points: readonly ShiftPoint[], slope: number, slopeSpread: number, parameters: AlignmentParameters): Segment[] {
  const n = points.length;
  const sums = runningSums(points);
  const best = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(n + 1);
  const prior = 1 / slopeSpread ** 2;
  best[0] = -parameters.breakCost;
  for (let end = 1; end <= n; end += 1) {
    for (let first = Math.max(0, end - LONGEST); first < end; first += 1) {
      // A break needs more than one point of evidence, but for the ends of the scan.
      if (end - first < 2 && n > 2) continue;
      const cost = best[first] + parameters.breakCost + lineCost(sums, first, end, slope, prior);
      if (cost < best[end]) {
        best[end] = cost;
        from[end] = first;
      }
    }
  }
  const segments: Segment[] = [];
  for (let end = n; end > 0; end = from[end]) segments.unshift(lineOver(points, sums, from[end], end, slope, prior));
  return segments;
}

/** Keeps the partition quadratic only up to this many points; longer even stretches become joined segments. */
const LONGEST = 300;

type Sums = { w: Float64Array; x: Float64Array; y: Float64Array; xx: Float64Array; xy: Float64Array; yy: Float64Array; origin: number };

function runningSums(points: readonly ShiftPoint[]): Sums {
  const make = () => new Float64Array(points.length + 1);
  const sums = { w: make(), x: make(), y: make(), xx: make(), xy: make(), yy: make(), origin: points.length > 0 ? points[0].at : 0 };
  const level = points.length > 0 ? points[0].shift : 0;
  points.forEach(({ at, shift, sigma }, i) => {
    const w = 1 / sigma ** 2;
    const x = at - sums.origin;
    const y = shift - level;
    sums.w[i + 1] = sums.w[i] + w;
    sums.x[i + 1] = sums.x[i] + w * x;
    sums.y[i + 1] = sums.y[i] + w * y;
    sums.xx[i + 1] = sums.xx[i] + w * x * x;
    sums.xy[i + 1] = sums.xy[i] + w * x * y;
    sums.yy[i + 1] = sums.yy[i] + w * y * y;
  });
  return sums;
}

/** Half of chi-square of the best line through points [first, end), its slope drawn to `slope`. */
function lineCost(sums: Sums, first: number, end: number, slope: number, prior: number): number {
  const w = 1 / (sums.w[end] - sums.w[first]);
  const x = sums.x[end] - sums.x[first];
  const y = sums.y[end] - sums.y[first];
  const xx = sums.xx[end] - sums.xx[first] - x * x * w;
  const xy = sums.xy[end] - sums.xy[first] - x * y * w;
  const yy = sums.yy[end] - sums.yy[first] - y * y * w;
  const fitted = (xy + prior * slope) / (xx + prior);
  const misfit = yy - 2 * fitted * xy + fitted * fitted * xx;
  const off = fitted - slope;
  return ((misfit > 0 ? misfit : 0) + prior * off * off) / 2;
}

function lineOver(points: readonly ShiftPoint[], sums: Sums, first: number, end: number, slope: number, prior: number): Segment {
  const w = sums.w[end] - sums.w[first];
  const x = sums.x[end] - sums.x[first];
  const y = sums.y[end] - sums.y[first];
  const xx = Math.max(0, sums.xx[end] - sums.xx[first] - (x * x) / w);
  const xy = sums.xy[end] - sums.xy[first] - (x * y) / w;
  const fitted = (xy + prior * slope) / (xx + prior);
  return { first, end, to: end < points.length ? (points[end - 1].at + points[end].at) / 2 : Number.POSITIVE_INFINITY, middle: sums.origin + x / w, level: points[0].shift + y / w, slope: fitted };
}

/** Shift of a segment's line at a position of the scan. */
export function shiftOn(segment: Segment, at: number): number {
  return segment.level + segment.slope * (at - segment.middle);
}
