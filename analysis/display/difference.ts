import type { Channel, Trace } from '../rope/trace.ts';
import { slidingMean } from '../signal/sliding-mean.ts';

/**
 * Later minus earlier loss of metallic area on the rope axis that both traces share, for the compare strip, each first
 * averaged over `window` metres so that both have the same averaging length. Valid only where both are.
 * Growth itself is judged in growth/ by a model; this is for the eye. Null where a trace has no LMA. Linear time.
 */
export function lossDifference(earlier: Trace<'rope'>, later: Trace<'rope'>, window: number): Channel | null {
  if (earlier.loss === null || later.loss === null || earlier.length !== later.length) return null;
  const width = 2 * Math.max(0, Math.round(window / earlier.step / 2)) + 1;
  const a = slidingMean(earlier.loss.values, earlier.loss.valid, width);
  const b = slidingMean(later.loss.values, later.loss.valid, width);
  const values = new Float64Array(earlier.length);
  const valid = new Uint8Array(earlier.length);
  for (let i = 0; i < earlier.length; i += 1) {
    if (earlier.loss.valid[i] !== 1 || later.loss.valid[i] !== 1) continue;
    values[i] = b.values[i] - a.values[i];
    valid[i] = 1;
  }
  return { values, valid };
}
