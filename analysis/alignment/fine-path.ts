import type { Character } from './character.ts';
import { evidenceByLag } from './likelihood.ts';
import type { AlignmentParameters } from './parameters.ts';

/** One measured shift: at a position of the scan, reference position minus scan position. Metres. */
export interface ShiftPoint {
  readonly at: number;
  readonly shift: number;
  readonly sigma: number; // one sigma; infinite where the window says nothing
}

/**
 * Local shifts to below the bin, within `parameters.fineReach` of a prediction. Windows overlap by half; a path over them
 * pays for leaving the predicted slope and for slips, so that growth or new damage in one window cannot pull it away.
 */
export function finePath(scan: Character, reference: Character, predicted: (at: number) => number, around: boolean, parameters: AlignmentParameters): ShiftPoint[] {
  const { bin } = scan;
  const width = Math.min(scan.length, Math.max(16, Math.round(parameters.fineWindow / bin)));
  const hop = Math.max(1, Math.min(width, Math.round(parameters.fineHop / bin)));
  const reach = Math.max(2, Math.ceil(parameters.fineReach / bin));
  const offset = scan.start - reference.start;
  const windows: { at: number; first: number; evidence: Float64Array }[] = [];
  for (let from = 0; from + width <= scan.length; from += hop) {
    const at = scan.start + (from + (width - 1) / 2) * bin;
    const first = Math.round((predicted(at) + offset) / bin) - reach;
    windows.push({ at, first, evidence: evidenceByLag(scan, reference, from, from + width, first, 2 * reach + 1, around, parameters) });
  }
  const chosen = bestPath(windows, predicted, bin, parameters);
  return windows.map((window, w) => shiftPoint(window, chosen[w], bin, offset, parameters, width / hop));
}

/** Viterbi path over windows: small departures from the predicted change cost their square, large ones a slip. */
function bestPath(windows: readonly { at: number; first: number; evidence: Float64Array }[], predicted: (at: number) => number, bin: number, parameters: AlignmentParameters): number[] {
  if (windows.length === 0) return [];
  const from: Int32Array[] = [];
  let best = Float64Array.from(windows[0].evidence);
  for (let w = 1; w < windows.length; w += 1) {
    const change = (predicted(windows[w].at) - predicted(windows[w - 1].at)) / bin;
    const loose = Math.max(1.5, ((windows[w].at - windows[w - 1].at) * parameters.maxSlope) / 2 / bin);
    const { evidence, first } = windows[w];
    const count = evidence.length;
    const index = new Int32Array(count);
    const next = new Float64Array(count);
    for (let l = 0; l < count; l += 1) {
      let most = Number.NEGATIVE_INFINITY;
      for (let k = 0; k < count; k += 1) {
        const departure = (first + l - windows[w - 1].first - k - change) / loose;
        const candidate = best[k] - Math.min(parameters.slipCost, 0.5 * departure * departure);
        if (candidate > most) {
          most = candidate;
          index[l] = k;
        }
      }
      next[l] = most + evidence[l];
    }
    from.push(index);
    best = next;
  }
  const chosen = new Array<number>(windows.length);
  let at = indexOfMost(best);
  for (let w = windows.length - 1; w >= 0; w -= 1) {
    chosen[w] = at;
    if (w > 0) at = from[w - 1][at];
  }
  return chosen;
}

function indexOfMost(values: Float64Array): number {
  let at = 0;
  for (let i = 1; i < values.length; i += 1) if (values[i] > values[at]) at = i;
  return at;
}

function shiftPoint(window: { at: number; first: number; evidence: Float64Array }, chosen: number, bin: number, offset: number, parameters: AlignmentParameters, overlap: number): ShiftPoint {
  const { evidence, first, at } = window;
  const last = evidence.length - 1;
  const shiftOf = (l: number): number => (first + l) * bin - offset;
  if (chosen <= 0 || chosen >= last) return { at, shift: shiftOf(chosen), sigma: Number.POSITIVE_INFINITY };
  const [before, here, after] = [evidence[chosen - 1], evidence[chosen], evidence[chosen + 1]];
  const curvature = before - 2 * here + after;
  const prominence = here - typicalEvidence(evidence);
  if (!(curvature < 0) || prominence < parameters.informative) return { at, shift: shiftOf(chosen), sigma: Number.POSITIVE_INFINITY };
  const fraction = Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / curvature));
  // Overlapping windows share samples: together they say no more than windows side by side.
  return { at, shift: shiftOf(chosen + fraction), sigma: (bin / Math.sqrt(-curvature)) * Math.sqrt(overlap) };
}

/** Median of the evidence over all lags looked at: what chance gives. */
function typicalEvidence(evidence: Float64Array): number {
  const finite = evidence.filter(Number.isFinite).sort();
  return finite.length === 0 ? Number.POSITIVE_INFINITY : finite[finite.length >> 1];
}
