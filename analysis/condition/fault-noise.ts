import { slidingMedian } from '../signal/sliding-median.ts';
import { fillGaps } from '../signal/fill-gaps.ts';
import type { LevelledFault } from './level-fault.ts';

/** Root mean square of LF with its strand pattern by block: the median over eleven blocks, so that a pulse does not count as noise. */
export function faultNoise(levelled: LevelledFault, mask: Uint8Array): Float64Array {
  const { blockWidth, values } = levelled;
  const count = levelled.blockScale.length;
  const rms = new Float64Array(count);
  const valid = new Uint8Array(count);
  for (let block = 0; block < count; block += 1) {
    let sum = 0;
    let members = 0;
    const end = Math.min(values.length, (block + 1) * blockWidth);
    for (let i = block * blockWidth; i < end; i += 1) {
      if (mask[i] !== 1) continue;
      sum += values[i] * values[i];
      members += 1;
    }
    if (members < 8) continue;
    rms[block] = Math.sqrt(sum / members);
    valid[block] = 1;
  }
  const typical = slidingMedian(rms, valid, 11);
  return fillGaps(typical.values, typical.valid);
}
