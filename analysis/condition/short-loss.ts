import type { LossProfile } from './loss-profile.ts';

/** A loss about as long as the instrument's averaging length: seen spread out and too small. Metres from the first sample of the trace. */
export interface ShortLoss {
  readonly from: number;
  readonly to: number;
  /** Bound of either end, 95 %. */
  readonly uncertainty: number;
  /** Mean loss over the extent, percent, and the range that the data allow (95 %). */
  readonly loss: number;
  readonly low: number;
  readonly high: number;
}

/** Shortest length tried, m, and the ratio of neighbouring ones. */
const SHORTEST = 0.01;
const RATIO = 1.08;
/** The averaging length itself is known this well: makers state it in round figures, and where none is stated it is common practice. */
const AVERAGING_FACTORS = [0.85, 0.92, 1, 1.08, 1.15] as const;
/** No instrument's window is a perfect rectangle: what is read may differ from the model by this share of its height, all along an edge alike. */
const MODEL_ERROR = 0.03;
/** Lengths to either side that are sound rope in this fit, in averaging lengths. */
const BESIDE = 3;

/**
 * Fits one even loss of unknown place, length and depth, read as its mean over the averaging length: a loss of p over a length
 * w shorter than the averaging length L is a trapezoid of base w + L and height p w / L. Short lengths look alike but for the
 * depth, so each length is tried where it fits best, and the depths that the data allow are the range.
 */
export function fitShortLoss(profile: LossProfile, centre: number, averaging: number): ShortLoss | null {
  const tried = AVERAGING_FACTORS.flatMap((factor) => fitEachLength(profile, centre, factor * averaging));
  if (tried.length === 0) return null;
  const height = profile.mean.reduce((most, each, cell) => (profile.weight[cell] > 0 ? Math.max(most, each) : most), 0);
  return weighed(tried, profile.longVariance + ((MODEL_ERROR * height) ** 2 * averaging) / profile.spacing);
}

interface Tried { readonly at: number; readonly width: number; readonly depth: number; readonly merit: number }

function fitEachLength(profile: LossProfile, centre: number, averaging: number): Tried[] {
  const longest = 3 * averaging;
  const tried: Tried[] = [];
  let at = centre;
  for (let width = longest; width >= SHORTEST; width /= RATIO) {
    let best = boxAt(profile, at, width, averaging);
    for (let hop = averaging / 3; hop > 0.004; hop /= 2) {
      for (let moves = 0; moves < 6; moves += 1) {
        const sides = [boxAt(profile, at - hop, width, averaging), boxAt(profile, at + hop, width, averaging)];
        const better = sides[0].merit > sides[1].merit ? 0 : 1;
        if (sides[better].merit <= best.merit) break;
        at += better === 0 ? -hop : hop;
        best = sides[better];
      }
    }
    if (best.depth > 0) tried.push({ at, width, ...best });
  }
  return tried;
}

function weighed(tried: readonly Tried[], variance: number): ShortLoss {
  const top = tried.reduce((most, each) => Math.max(most, each.merit), -Infinity);
  const likelihood = tried.map((each) => Math.exp((each.merit - top) / (2 * variance)));
  const mass = likelihood.reduce((sum, each) => sum + each, 0);
  const mean = (of: (each: Tried) => number) => tried.reduce((sum, each, i) => sum + likelihood[i] * of(each), 0) / mass;
  const at = mean((each) => each.at);
  const width = mean((each) => each.width);
  // Missing metal is known better than its length: depth times length hardly depends on the length tried.
  const metal = mean((each) => each.depth * each.width);
  // Within 3.84 variances of the best: the 95 % region of one parameter.
  const allowed = tried.filter((each) => each.merit >= top - 3.84 * variance);
  const widths = allowed.map((each) => each.width);
  const low = Math.min(...allowed.map((each) => each.depth));
  const high = Math.max(...allowed.map((each) => each.depth));
  return { from: at - width / 2, to: at + width / 2, uncertainty: Math.max(Math.max(...widths) - width, width - Math.min(...widths)) / 2 + 0.01, loss: Math.min(100, metal / width), low: Math.min(100, low), high: Math.min(100, high) };
}

/** Best depth of a box of `width` about `at`, and the sum of squares that it explains. */
function boxAt({ mean, weight, spacing, first }: LossProfile, at: number, width: number, averaging: number): { depth: number; merit: number } {
  const reach = (width + averaging) / 2 + BESIDE * averaging;
  const from = Math.max(0, Math.floor((at - reach) / spacing) - first);
  const end = Math.min(mean.length, Math.ceil((at + reach) / spacing) - first);
  let product = 0;
  let square = 0;
  for (let cell = from; cell < end; cell += 1) {
    const x = (first + cell + 0.5) * spacing;
    const shared = Math.min(at + width / 2, x + averaging / 2) - Math.max(at - width / 2, x - averaging / 2);
    if (shared <= 0) continue;
    const form = shared / averaging;
    product += weight[cell] * form * mean[cell];
    square += weight[cell] * form * form;
  }
  if (product <= 0) return { depth: 0, merit: 0 };
  return { depth: product / square, merit: (product * product) / square };
}
