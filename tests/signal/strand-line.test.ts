import { describe, expect, it } from 'vitest';
import { removeLine } from '../../analysis/signal/remove-line.ts';
import { seekLine } from '../../analysis/signal/seek-line.ts';
import { flickerNoise, labRandom } from '../support/lab-random.ts';

const COUNT = 40_000;
const PERIOD = 43.3 / 5; // samples: strands 43.3 mm apart, every 5 mm

/** A line whose phase wanders by `wander` radians over the root of a sample, in noise of one. */
function wandering(seed: number, height: number, wander: number): { clean: Float64Array; dirty: Float64Array; valid: Uint8Array } {
  const random = labRandom(seed);
  let phase = random.between(0, 6);
  const clean = Float64Array.from({ length: COUNT }, () => random.normal());
  const dirty = clean.map((value) => value + height * Math.sin((phase += (2 * Math.PI) / PERIOD + wander * random.normal())));
  return { clean, dirty, valid: new Uint8Array(COUNT).fill(1) };
}

const power = (values: Float64Array) => values.reduce((sum, value) => sum + value * value, 0) / values.length;

describe('strand pattern', () => {
  it.each([[1, 0], [2, 0.01], [3, 0.025]])('seed %i, phase wandering by %f a sample: found within half a percent and nine tenths of its power taken off', (seed, wander) => {
    const { clean, dirty, valid } = wandering(seed, 1.5, wander);
    const line = seekLine(dirty, valid, 1024, 1 / (1.15 * PERIOD), 1 / (0.85 * PERIOD))!;
    expect(Math.abs(line.frequency * PERIOD - 1)).toBeLessThan(0.005);
    const cleaned = dirty.slice();
    expect(removeLine(cleaned, dirty, valid, line.frequency)).toBe(true);
    const left = power(cleaned.map((value, i) => value - clean[i]));
    expect(left).toBeLessThan(0.1 * (1.5 ** 2 / 2));
  });

  it('gaps are no pattern: what stands in them changes neither the line nor what is taken off beside them', () => {
    const { dirty, valid } = wandering(4, 1.5, 0.01);
    const spoilt = dirty.slice();
    for (const [from, end] of [[5000, 5030], [20_000, 22_000]]) {
      valid.fill(0, from, end);
      spoilt.fill(1e6, from, end);
    }
    const band = [1 / (1.15 * PERIOD), 1 / (0.85 * PERIOD)] as const;
    const found = seekLine(spoilt, valid, 1024, ...band)!;
    expect(found.frequency).toBe(seekLine(dirty, valid, 1024, ...band)!.frequency);
    const a = dirty.slice();
    const b = dirty.slice();
    removeLine(a, dirty, valid, found.frequency);
    removeLine(b, spoilt, valid, found.frequency);
    for (let i = 0; i < COUNT; i += 7) if (valid[i] === 1) expect(b[i]).toBeCloseTo(a[i], 9);
  });

  it('in noise alone, white or rising to low frequencies, no line is prominent and next to nothing is taken off', () => {
    for (let seed = 10; seed < 16; seed += 1) {
      const random = labRandom(seed);
      const white = Float64Array.from({ length: COUNT }, () => random.normal());
      const noise = seed % 2 === 0 ? white : white.map((value, i) => value + 2 * flicker[i]);
      const valid = new Uint8Array(COUNT).fill(1);
      const line = seekLine(noise, valid, 1024, 1 / (1.15 * PERIOD), 1 / (0.85 * PERIOD));
      expect(line === null || line.ratio < 1 + 5 / Math.sqrt(line.stretches)).toBe(true);
      const cleaned = noise.slice();
      removeLine(cleaned, noise, valid, 1 / PERIOD);
      expect(power(cleaned) / power(noise)).toBeGreaterThan(0.96);
    }
  });
});

const flicker = flickerNoise(labRandom(99), COUNT, 4000);
