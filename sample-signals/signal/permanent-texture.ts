import type { Random } from './random.ts';
import { emptyGrid } from './rope-grid.ts';
import type { RopeGrid } from './rope-grid.ts';

/**
 * The rope's own small unevenness, the same in every scan: noise smoothed twice over `scale` metres, root mean square 1.
 * `loop` joins end to start.
 */
export function permanentTexture(random: Random, length: number, step: number, scale: number, loop: boolean): RopeGrid {
  const grid = emptyGrid(length, step);
  const { values } = grid;
  for (let i = 0; i < values.length; i += 1) values[i] = random.normal();
  const width = Math.max(1, Math.round(scale / step));
  const smooth = slidingMean(slidingMean(values, width, loop), width, loop);
  let power = 0;
  for (const value of smooth) power += value * value;
  const size = Math.sqrt(power / smooth.length);
  for (let i = 0; i < values.length; i += 1) values[i] = smooth[i] / size;
  return grid;
}

function slidingMean(values: Float64Array, width: number, loop: boolean): Float64Array {
  const count = values.length;
  const at = (i: number): number => (loop ? values[((i % count) + count) % count] : values[Math.min(Math.max(i, 0), count - 1)]);
  const before = Math.floor(width / 2);
  let sum = 0;
  for (let i = -before; i < width - before; i += 1) sum += at(i);
  const out = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    out[i] = sum / width;
    sum += at(i + width - before) - at(i - before);
  }
  return out;
}

/** Phase of the strand pattern along the rope, radians: the nominal spacing with a slowly wandering lay. */
export function strandPhase(random: Random, length: number, step: number, spacing: number): RopeGrid {
  const grid = emptyGrid(length, step);
  let phase = random.between(0, 2 * Math.PI);
  let stretch = 0;
  for (let i = 0; i < grid.values.length; i += 1) {
    grid.values[i] = phase;
    stretch = 0.9995 * stretch + 0.0003 * random.normal();
    phase += ((2 * Math.PI * step) / spacing) * (1 + stretch);
  }
  return grid;
}
