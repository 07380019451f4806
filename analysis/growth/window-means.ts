import type { Channel } from '../rope/trace.ts';

/** Running sums of a channel, so that the mean over any length of rope costs the same. */
export interface RunningSums {
  readonly start: number;
  readonly step: number;
  readonly sums: Float64Array; // length + 1
  readonly counts: Float64Array; // length + 1
}

export function runningSums(channel: Channel, start: number, step: number): RunningSums {
  const length = channel.values.length;
  const sums = new Float64Array(length + 1);
  const counts = new Float64Array(length + 1);
  for (let i = 0; i < length; i += 1) {
    const good = channel.valid[i];
    sums[i + 1] = sums[i] + (good === 1 ? channel.values[i] : 0);
    counts[i + 1] = counts[i] + good;
  }
  return { start, step, sums, counts };
}

/** Mean of the valid samples in [from, to) and the share of the length that is valid; mean NaN where nothing is. Metres. */
export function meanOver(running: RunningSums, from: number, to: number): { mean: number; share: number } {
  const last = running.sums.length - 1;
  const first = Math.ceil((from - running.start) / running.step - 1e-9);
  const end = Math.max(first + 1, Math.ceil((to - running.start) / running.step - 1e-9));
  const a = Math.min(last, Math.max(0, first));
  const b = Math.min(last, Math.max(0, end));
  const count = running.counts[b] - running.counts[a];
  return { mean: count > 0 ? (running.sums[b] - running.sums[a]) / count : Number.NaN, share: count / (end - first) };
}
