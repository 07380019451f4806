import { powerOfTwoFrom } from '../signal/power-of-two.ts';
import { seekLine } from '../signal/seek-line.ts';
import { removeLine } from '../signal/remove-line.ts';
import type { LevelledFault } from './level-fault.ts';
import type { ConditionParameters } from './parameters.ts';

export interface StrandRemoval {
  /** LF without the strand pattern, same grid. */
  readonly values: Float64Array;
  /** Spacing found in the data, m; null where the trace shows no pattern. */
  readonly spacing: number | null;
}

/** A line must be this many times the band's median prominent: of some hundred averaged and smoothed bins of noise the most prominent seldom is. */
const leastRatio = (stretches: number): number => 1 + 5 / Math.sqrt(stretches);

/**
 * Finds the strand pattern near its nominal spacing (or in the usual range) and takes it and its harmonics off, following
 * their phase as it wanders. The pulses are bounded while the pattern is estimated, so that they are not eaten by it.
 */
export function removeStrandPattern(levelled: LevelledFault, mask: Uint8Array, step: number, nominal: number | null, parameters: ConditionParameters): StrandRemoval {
  const bounded = boundPulses(levelled, 3.5);
  const longest = nominal === null ? parameters.strandLongest : nominal * (1 + parameters.strandSearchShare);
  const shortest = nominal === null ? parameters.strandShortest : nominal * (1 - parameters.strandSearchShare);
  if (shortest < 2.1 * step) return { values: levelled.values, spacing: null };
  const size = Math.min(powerOfTwoFrom(60 * (nominal ?? 0.05) / step), 65536);
  const line = seekLine(bounded, mask, size, step / longest, step / shortest);
  const values = levelled.values.slice();
  let spacing: number | null = null;
  if (line && line.ratio > leastRatio(line.stretches)) {
    if (removeLine(values, bounded, mask, line.frequency)) spacing = step / line.frequency;
    for (let harmonic = 2; harmonic <= 3 && harmonic * line.frequency < 0.45; harmonic += 1) {
      const near = harmonic * line.frequency;
      const found = seekLine(bounded, mask, size, near * 0.97, near * 1.03);
      removeLine(values, bounded, mask, found && found.ratio > 3 ? found.frequency : near, 1 / line.frequency);
    }
  }
  return { values, spacing };
}

function boundPulses({ values, blockWidth, blockScale }: LevelledFault, bound: number): Float64Array {
  const bounded = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) {
    const limit = bound * blockScale[Math.floor(i / blockWidth)];
    const value = values[i];
    bounded[i] = value > limit ? limit : value < -limit ? -limit : value;
  }
  return bounded;
}
