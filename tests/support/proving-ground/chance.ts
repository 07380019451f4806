import { labRandom } from '../lab-random.ts';
import type { LabRandom } from '../lab-random.ts';

export type Chance = LabRandom;
export type NoiseKind = 'normal' | 'laplace' | 'pink' | 'heavy';

export const chanceFrom = (seed: number, stream = 0): Chance => labRandom(Math.imul(seed + 1, 2654435761) ^ Math.imul(stream + 17, 40503));
export const happens = (chance: Chance, share: number): boolean => chance.uniform() < share;
export const whole = (chance: Chance, low: number, high: number): number => low + Math.floor(chance.uniform() * (high - low + 1));

/** Noise of root mean square 1, one value a sample. `pink` is half white, half one over frequency from a sum of first-order processes. */
export function noiseOf(kind: NoiseKind, chance: Chance, count: number): Float64Array {
  const out = new Float64Array(count);
  if (kind === 'pink') return pink(chance, out);
  for (let i = 0; i < count; i += 1) out[i] = kind === 'normal' ? chance.normal() : kind === 'laplace' ? laplace(chance) : heavy(chance);
  return out;
}

function laplace(chance: Chance): number {
  const u = chance.uniform() - 0.5;
  return (-Math.sign(u) * Math.log(1 - 2 * Math.abs(u) + 1e-300)) / Math.SQRT2;
}

/** Normal with a varying spread: one value in ten comes from a distribution twice as wide. */
function heavy(chance: Chance): number {
  return (chance.normal() * (happens(chance, 0.1) ? 2 : 1)) / Math.sqrt(1.3);
}

function pink(chance: Chance, out: Float64Array): Float64Array {
  const memories = [0.5, 0.9, 0.98, 0.996];
  const states = memories.map(() => chance.normal());
  for (let i = 0; i < out.length; i += 1) {
    let sum = 0;
    memories.forEach((memory, k) => {
      states[k] = memory * states[k] + Math.sqrt(1 - memory * memory) * chance.normal();
      sum += states[k];
    });
    out[i] = Math.SQRT1_2 * chance.normal() + (Math.SQRT1_2 * sum) / 2;
  }
  return out;
}
