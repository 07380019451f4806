import type { Interval } from '../rope/interval.ts';
import type { Channel, Trace } from '../rope/trace.ts';

/** The channel's mask without the lengths given: what is left may be judged. */
export function judgedMask(trace: Trace<'measured'>, channel: Channel, without: readonly Interval<'measured'>[]): Uint8Array {
  const mask = new Uint8Array(trace.length);
  const { valid, values } = channel;
  // A difference of a number with itself is 0, of infinity or what is no number it is not.
  for (let i = 0; i < mask.length; i += 1) mask[i] = valid[i] === 1 && values[i] - values[i] === 0 ? 1 : 0;
  for (const { from, to } of without) {
    const first = Math.max(0, Math.ceil((from - trace.start) / trace.step - 1e-9));
    const end = Math.min(trace.length, Math.ceil((to - trace.start) / trace.step - 1e-9));
    if (end > first) mask.fill(0, first, end);
  }
  return mask;
}
