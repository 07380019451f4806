import type { LossProfile } from './loss-profile.ts';
import { fitEdge } from './zone-edge.ts';
import type { EdgeFit } from './zone-edge.ts';

/** Extent of a zone in metres from the first sample of the trace, each end with its 95 % bound. */
export interface ZoneOutline {
  readonly from: number;
  readonly to: number;
  readonly fromUncertainty: number;
  readonly toUncertainty: number;
}

/** Sound rope looked at beyond an edge, m: enough to see where the loss begins, not so much that drift enters. */
export const OUTSIDE = 12;
/** A rise longer than this is no edge, m. */
const LONGEST_RISE = 40;

/**
 * Fits the two edges of a zone found between `from` and `to` (m). Each is looked at from OUTSIDE, or from the neighbouring zone at
 * `before` and `after`, to the middle of the zone.
 */
export function outlineZone(profile: LossProfile, from: number, to: number, before: number, after: number, averaging: number): ZoneOutline {
  const middle = (from + to) / 2;
  const start = Math.max(before, from - OUTSIDE);
  const end = Math.min(after, to + OUTSIDE);
  const left = edgeOf(profile, start, middle, averaging, 1);
  const right = edgeOf(profile, end, middle, averaging, -1);
  const first = left.foot;
  return { from: first, to: Math.max(right.foot, first + profile.spacing), fromUncertainty: left.uncertainty, toUncertainty: right.uncertainty };
}

/** One edge; data from `outside` to `middle`, whichever way that is. */
function edgeOf(profile: LossProfile, outside: number, middle: number, averaging: number, towards: 1 | -1): EdgeFit {
  const { spacing } = profile;
  const start = towards === 1 ? Math.floor(outside / spacing + 1e-9) : Math.ceil(outside / spacing - 1e-9);
  const count = Math.max(2, Math.round(Math.abs(middle / spacing - start)));
  const level = new Float64Array(count);
  const weight = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const cell = (towards === 1 ? start + i : start - 1 - i) - profile.first;
    if (cell < 0 || cell >= profile.mean.length) continue;
    level[i] = profile.mean[cell];
    weight[i] = profile.weight[cell];
  }
  const data = { level, weight, spacing, variance: profile.variance, longVariance: profile.longVariance };
  const fit = fitEdge(data, averaging, halfHeight(level, weight) * spacing, Math.min(LONGEST_RISE, 2 * count * spacing));
  return { foot: start * spacing + towards * fit.foot, uncertainty: fit.uncertainty };
}

/** Cells from the outer end at which a single step explains most. */
function halfHeight(level: Float64Array, weight: Float64Array): number {
  let sum = 0;
  let mass = 0;
  let best = 0;
  let at = level.length / 2;
  for (let i = level.length - 1; i >= 0; i -= 1) {
    sum += weight[i] * level[i];
    mass += weight[i];
    if (mass <= 0 || sum <= 0 || (sum * sum) / mass <= best) continue;
    best = (sum * sum) / mass;
    at = i;
  }
  return at;
}
