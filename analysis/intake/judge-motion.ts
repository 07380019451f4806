import { quantile } from '../signal/quantile.ts';
import type { OrderedSamples } from './order-samples.ts';
import type { EvenGrid } from './even-grid.ts';
import { finding, listed, metres } from './findings.ts';
import type { Finding } from './findings.ts';
import { THRESHOLDS } from './thresholds.ts';

const LISTED = 8;

/** Findings on how the head moved along the rope: stops, ways back, repeated positions, leaps, gaps. */
export function judgeMotion(samples: OrderedSamples, grid: EvenGrid): Finding[] {
  const end = grid.start + (grid.length - 1) * grid.step;
  const found: Finding[] = [
    ...listed('stops', 'info', samples.stops, LISTED, (stop) => [stop.from, stop.to], (stop) => `The rope stood at ${metres(stop.from)} for ${stop.samples} samples; they are merged into one by their mean.`),
    ...listed('backward', 'warning', samples.backward, LISTED, (back) => [back.from, back.to], (back) => `The rope ran back from ${metres(back.to)} to ${metres(back.from)} and on again; the first pass is used, the other ${back.samples} samples are not. Look for slip of the encoder here.`),
  ];
  const loose = samples.passedAgain - samples.backward.reduce((sum, each) => sum + each.samples, 0);
  if (loose > 0) found.push(finding('backward', 'info', grid.start, end, `Samples behind the one before by no more than two sample steps: ${loose} (rocking of the rope or of the encoder); they are left out.`));
  const merged = samples.duplicates - samples.stops.reduce((sum, each) => sum + each.samples - 1, 0);
  if (merged > 0) found.push(finding('duplicate-positions', merged > 0.2 * samples.count ? 'warning' : 'info', grid.start, end, `Samples that repeat the position before them, merged by their mean: ${merged}${merged > 0.2 * samples.count ? '; the positions are written more coarsely than the signal is sampled, so use more decimals when exporting' : ''}.`));
  if (samples.spikes > 0) found.push(finding('encoder-jump', 'warning', grid.start, end, `Samples with a position far off their neighbours, left out: ${samples.spikes}. Check the encoder and its cable.`));
  if (grid.offGrid > 0) found.push(finding('encoder-jump', 'info', grid.start, end, `Samples beside the even steps of all others, left out as damaged: ${grid.offGrid}.`));
  for (const jump of samples.jumps.slice(0, LISTED)) {
    found.push(jump.size > 0
      ? finding('encoder-jump', 'warning', jump.at, jump.at + jump.size, `Positions leap by ${metres(jump.size)} between two samples: a hole in the file or a leap of the encoder. The length between is not inspected; repeat the run over it.`)
      : finding('encoder-jump', 'warning', jump.at + jump.size, jump.at, `Positions fall back by ${metres(-jump.size)} between two samples: a leap of the encoder, or a second pass. What follows is used only where it goes beyond ${metres(jump.at)}; split the file or repeat the run.`));
  }
  const gaps = grid.gaps.filter((gap) => !samples.jumps.some((jump) => Math.abs(jump.at - gap.from) < 0.5));
  found.push(...listed('gap', 'warning', gaps, LISTED, (gap) => [gap.from, gap.to], (gap) => `No samples for ${metres(gap.to - gap.from)}: not inspected. Repeat the run over this length.`));
  return found;
}

/** A run round a loop may overlap by this share of its length before its scale is doubted, percent. */
const OVERLAP_SHARE = 130;

/** Sampling too coarse to show a broken wire, and a length that is not the rope's. */
export function judgeExtent(grid: EvenGrid, ropeLength: number | null, hasFault: boolean, loop = false): Finding[] {
  const end = grid.start + (grid.length - 1) * grid.step;
  const found: Finding[] = [];
  if (hasFault && grid.step > THRESHOLDS.coarseStep.value) found.push(finding('coarse-sampling', 'warning', grid.start, end, `One sample every ${(grid.step * 1000).toFixed(1)} mm: a single broken wire may fall between two samples. Sample every 5 mm or closer.`));
  const span = end - grid.start;
  if (ropeLength !== null && Math.abs(span - ropeLength) > THRESHOLDS.lengthDisagrees.value * ropeLength) {
    const share = (100 * span) / ropeLength;
    // An endless rope is run past its own start on purpose, so that no length is missed.
    if (loop && share > 100 && share < OVERLAP_SHARE) {
      found.push(finding('runs-past-start', 'info', grid.start, end, `The run spans ${metres(span)} of an endless rope of ${metres(ropeLength)}: the last ${metres(span - ropeLength)} were seen twice.`));
      return found;
    }
    found.push(finding('length-disagrees', share > 102 ? 'warning' : 'info', grid.start, end, `The run spans ${metres(span)}, ${share.toFixed(1)} % of the ${metres(ropeLength)} in the record. ${share > 102 ? 'Check the unit and scale of the positions, or whether an endless rope was run more than once round.' : 'The rest was not run over by this file, or the positions are scaled wrongly.'}`));
  }
  return found;
}

/** Speed outside the range of the method, and quick changes of it. */
export function judgeSpeed(grid: EvenGrid, speed: { values: Float64Array; valid: Uint8Array } | null): Finding[] {
  if (!speed) return [];
  const { slowSpeed, fastSpeed, speedChange } = THRESHOLDS;
  const found: Finding[] = [];
  const at = (i: number) => grid.start + i * grid.step;
  const outside = stretches(grid.length, (i) => speed.valid[i] === 1 && (Math.abs(speed.values[i]) < slowSpeed.value || Math.abs(speed.values[i]) > fastSpeed.value), Math.max(5, Math.ceil(0.2 / grid.step)));
  found.push(...listed('speed-range', 'warning', outside, LISTED, ([a, b]) => [at(a), at(b)], ([a]) => `Speed of ${Math.abs(speed.values[a]).toFixed(2)} m/s is outside ${slowSpeed.value} to ${fastSpeed.value} m/s: amplitudes here are not comparable. Repeat at an even speed.`));
  // Over half a metre: a difference between two samples would only show the rounding of the speed column.
  const reach = Math.max(1, Math.round(0.25 / grid.step));
  const quick = stretches(grid.length, (i) => {
    if (i < reach || i + reach >= grid.length || speed.valid[i - reach] === 0 || speed.valid[i + reach] === 0) return false;
    const a = speed.values[i - reach];
    const b = speed.values[i + reach];
    return Math.abs(b * b - a * a) / (4 * reach * grid.step) > speedChange.value;
  }, Math.max(3, reach >> 1));
  found.push(...listed('speed-change', 'info', quick, LISTED, ([a, b]) => [at(a), at(b)], () => 'Speed changes quickly here: the encoder may slip and a coil signal shifts. Judge amplitudes with care.'));
  return found;
}

/** Runs of indices [first, end) where a condition holds, at least `least` long; holes shorter than `least` are bridged. */
export function stretches(length: number, holds: (index: number) => boolean, least: number): [number, number][] {
  const found: [number, number][] = [];
  for (let i = 0; i < length; i += 1) {
    if (!holds(i)) continue;
    const last = found.at(-1);
    if (last && i - last[1] <= least) last[1] = i + 1;
    else found.push([i, i + 1]);
  }
  return found.filter(([a, b]) => b - a >= least);
}

/** Typical absolute value of valid samples, for messages. */
export function typical(values: Float64Array, valid: Uint8Array): number {
  const some: number[] = [];
  const stride = Math.max(1, Math.floor(values.length / 10_000));
  for (let i = 0; i < values.length; i += stride) if (valid[i] === 1) some.push(Math.abs(values[i]));
  return some.length === 0 ? 0 : quantile(some, 0.5);
}
