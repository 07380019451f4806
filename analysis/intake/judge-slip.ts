import { quantile } from '../signal/quantile.ts';
import type { Channel } from '../rope/trace.ts';
import type { EvenGrid } from './even-grid.ts';
import { finding, listed } from './findings.ts';
import type { Finding } from './findings.ts';
import type { OrderedSamples } from './order-samples.ts';
import { THRESHOLDS } from './thresholds.ts';

const LISTED = 8;
/** Length over which the two ways are compared, metres: long enough for rounding of clock and speed to average out. */
const WINDOW = 1;

/**
 * Slip suspects: lengths where the way by the file's own speed and clock differs from the way by its positions. The median
 * ratio of the two is the scale of the speed and no slip. A speed worked out from the positions themselves shows none, and a
 * speed that never changes is a setting, not a measurement. Linear time.
 */
export function judgeSlip(grid: EvenGrid, samples: OrderedSamples, speed: Channel | null, time: Channel | null, seconds: number): Finding[] {
  if (!speed || !time || isConstant(speed)) return [];
  const size = Math.max(4, Math.round(WINDOW / grid.step));
  // Where the rope stood or ran back, merged samples have no way of their own.
  const disturbed = [...samples.stops, ...samples.backward];
  const places: { from: number; ratio: number }[] = [];
  for (let first = 0; first + size < grid.length; first += size) {
    if (disturbed.some((each) => each.to > grid.start + (first - 1) * grid.step && each.from < grid.start + (first + size + 1) * grid.step)) continue;
    const way = wayBySpeed(speed, time, first, first + size, seconds);
    if (way !== null) places.push({ from: first, ratio: way / (size * grid.step) });
  }
  if (places.length < 10) return [];
  const scale = quantile(places.map((each) => each.ratio), 0.5);
  if (!(scale > 0)) return [];
  const sigma = quantile(places.map((each) => Math.abs(each.ratio / scale - 1)), 0.5) / 0.6745;
  const limit = Math.max(THRESHOLDS.slipShare.value, THRESHOLDS.slipSigma.value * sigma);
  const suspects = places.filter((each) => Math.abs(each.ratio / scale - 1) > limit);
  // Where much of a run disagrees, the two columns do not belong together, and nothing is known of slip.
  if (suspects.length > 0.2 * places.length) return [finding('slip-suspect', 'info', grid.start, grid.start + (grid.length - 1) * grid.step, 'Speed and time do not add up to the positions over much of the run: they cannot show slip here.')];
  const at = (i: number) => grid.start + i * grid.step;
  return listed('slip-suspect', 'warning', suspects, LISTED, (each) => [at(each.from), at(each.from + size)], (each) => `By speed and time the rope moved ${((each.ratio / scale - 1) * WINDOW * 1000).toFixed(0)} mm further here than the encoder says in ${WINDOW} m: a slip suspect. Tie the scan to marks on both sides.`);
}

/** Metres run between two samples by speed and clock, or null where either is missing on the way. */
function wayBySpeed(speed: Channel, time: Channel, from: number, to: number, seconds: number): number | null {
  let way = 0;
  for (let i = from; i < to; i += 1) {
    if (speed.valid[i] === 0 || speed.valid[i + 1] === 0 || time.valid[i] === 0 || time.valid[i + 1] === 0) return null;
    way += ((Math.abs(speed.values[i]) + Math.abs(speed.values[i + 1])) / 2) * Math.abs(time.values[i + 1] - time.values[i]) * seconds;
  }
  return way;
}

function isConstant(channel: Channel): boolean {
  let first = NaN;
  for (let i = 0; i < channel.values.length; i += 1) {
    if (channel.valid[i] === 0) continue;
    if (Number.isNaN(first)) first = channel.values[i];
    else if (channel.values[i] !== first) return false;
  }
  return true;
}
