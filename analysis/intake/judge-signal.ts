import { quantileInPlace } from '../signal/quantile.ts';
import type { Channel } from '../rope/trace.ts';
import type { EvenGrid } from './even-grid.ts';
import { finding, listed, metres } from './findings.ts';
import type { Finding } from './findings.ts';
import { stretches } from './judge-motion.ts';
import { THRESHOLDS } from './thresholds.ts';

const LISTED = 8;

/** A channel that the file has and that never shows anything: said once, and left out. */
export function judgeDead(grid: EvenGrid, written: Channel | null, used: Channel | null, name: string, other: string | null): Finding[] {
  if (written === null || used !== null) return [];
  return [finding('dead-channel', 'warning', grid.start, grid.start + (grid.length - 1) * grid.step, `${name} shows no live signal anywhere in this file (empty or constant) and is not used${other === null ? '' : `; only ${other} is judged`}. Check its connection and repeat the run.`)];
}

/** Lengths where a channel shows nothing although the head passed. */
export function judgeDropouts(grid: EvenGrid, channel: Channel, name: string): Finding[] {
  const at = (i: number) => grid.start + i * grid.step;
  const inGap = (from: number, to: number) => grid.gaps.some((gap) => gap.from <= from + 2 * grid.step && gap.to >= to - 2 * grid.step);
  const least = Math.max(2, Math.ceil(THRESHOLDS.gapLength.value / grid.step));
  const out = stretches(grid.length, (i) => channel.valid[i] === 0, least).filter(([a, b]) => !inGap(at(a - 0.5), at(b - 0.5)));
  return listed('dropout', 'warning', out, LISTED, ([a, b]) => [at(a - 0.5), at(b - 0.5)], ([a, b]) => `${name} shows no live signal over ${metres((b - a) * grid.step)} (empty, frozen or outside its range): not inspected. Repeat the run over this length.`);
}

/** Values that stay at the extreme of a channel: the instrument was at its limit, the true amplitude is larger. */
export function judgeSaturation(grid: EvenGrid, channel: Channel, name: string): Finding[] {
  const { values, valid } = channel;
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < values.length; i += 1) {
    if (valid[i] === 0) continue;
    if (values[i] < low) low = values[i];
    if (values[i] > high) high = values[i];
  }
  const middle = middleOf(channel);
  const at = (i: number) => grid.start + i * grid.step;
  const found: [number, number][] = [];
  for (const extreme of [low, high]) {
    // A quiet channel in coarse numbers touches its extremes all the time; a limit lies far beyond the noise.
    if (!(Math.abs(extreme - middle.median) > 12 * middle.sigma)) continue;
    found.push(...stretches(grid.length, (i) => valid[i] === 1 && values[i] === extreme, THRESHOLDS.saturationSamples.value).filter(([a, b]) => allEqual(values, a, b, extreme)));
  }
  found.sort((a, b) => a[0] - b[0]);
  return listed('saturation', 'warning', found, LISTED, ([a, b]) => [at(a), at(b)], ([a, b]) => `${name} stays at its limit of ${values[a].toPrecision(4)} for ${b - a} samples: the true amplitude is larger. Repeat with less gain, and look at the place.`);
}

function allEqual(values: Float64Array, from: number, to: number, value: number): boolean {
  let equal = 0;
  for (let i = from; i < to; i += 1) if (values[i] === value) equal += 1;
  return equal >= THRESHOLDS.saturationSamples.value && equal >= 0.75 * (to - from);
}

/** LMA over the run: drift between the ends, noise, and ramps at the ends that a socket makes. */
export function judgeLoss(grid: EvenGrid, loss: Channel): Finding[] {
  const end = grid.start + (grid.length - 1) * grid.step;
  const found: Finding[] = [];
  const span = end - grid.start;
  const noise = noiseOf(loss);
  if (noise > THRESHOLDS.noiseLoss.value) found.push(finding('noise', 'warning', grid.start, end, `Noise of LMA is ${noise.toFixed(2)} % (sample to sample): small losses are hidden. Check head guidance and cleaning of the rope.`));
  const edge = Math.min(THRESHOLDS.endRampLength.value, span / 10);
  const samples = Math.max(3, Math.round(edge / grid.step));
  if (grid.length > 12 * samples) {
    const quarter = grid.length >> 2;
    const head = meanOf(loss, samples, quarter);
    const tail = meanOf(loss, grid.length - quarter, grid.length - samples);
    const first = meanOf(loss, 0, samples >> 1);
    const last = meanOf(loss, grid.length - (samples >> 1), grid.length);
    if (head !== null && tail !== null && Math.abs(tail - head) > THRESHOLDS.driftLoss.value) found.push(finding('drift', 'info', grid.start, end, `Mean LMA differs by ${(tail - head).toFixed(2)} % between the first and the last quarter of the run: drift of the instrument or wear of one end. Compare with a run in the other direction.`));
    for (const [mean, reference, from, to, name] of [[first, head, grid.start, grid.start + edge, 'start'], [last, tail, end - edge, end, 'end']] as const) {
      if (mean !== null && reference !== null && Math.abs(mean - reference) > THRESHOLDS.endRampLoss.value) found.push(finding('end-ramp', 'info', from, to, `LMA leaves its level by ${(mean - reference).toFixed(1)} % at the ${name} of the run, as it does near a socket, or where the rope is damaged up to its end: judge loss here only beside an earlier run.`));
    }
  }
  return found;
}

function meanOf(channel: Channel, from: number, to: number): number | null {
  let sum = 0;
  let taken = 0;
  for (let i = Math.max(0, from); i < Math.min(to, channel.values.length); i += 1) {
    if (channel.valid[i] === 0) continue;
    sum += channel.values[i];
    taken += 1;
  }
  return taken === 0 ? null : sum / taken;
}

/** Robust sigma of the sample-to-sample noise. */
export function noiseOf(channel: Channel): number {
  const { values, valid } = channel;
  const stride = Math.max(1, Math.floor(values.length / 100_000));
  const scratch = new Float64Array(Math.floor(values.length / stride) + 1);
  let taken = 0;
  for (let i = 1; i < values.length && taken < scratch.length; i += stride) if (valid[i] === 1 && valid[i - 1] === 1) scratch[taken++] = Math.abs(values[i] - values[i - 1]);
  return taken === 0 ? 0 : quantileInPlace(scratch, 0.5, 0, taken) / 0.6745 / Math.SQRT2;
}

function middleOf(channel: Channel): { median: number; sigma: number } {
  const { values, valid } = channel;
  const stride = Math.max(1, Math.floor(values.length / 100_000));
  const scratch = new Float64Array(Math.floor(values.length / stride) + 1);
  let taken = 0;
  for (let i = 0; i < values.length && taken < scratch.length; i += stride) if (valid[i] === 1) scratch[taken++] = values[i];
  if (taken === 0) return { median: 0, sigma: 0 };
  const median = quantileInPlace(scratch, 0.5, 0, taken);
  for (let i = 0; i < taken; i += 1) scratch[i] = Math.abs(scratch[i] - median);
  return { median, sigma: quantileInPlace(scratch, 0.5, 0, taken) / 0.6745 };
}
