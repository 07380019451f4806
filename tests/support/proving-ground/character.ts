import type { Chance } from './chance.ts';

export type CharacterKind = 'first-order' | 'smooth' | 'steps' | 'none';

/** A permanent quantity along the rope, root mean square 1, on a grid; `at` reads it anywhere (linear), on a loop over the origin. */
export interface Character {
  at(position: number): number;
}

const GRID = 0.01;

/** A rope's own unevenness: first-order autoregression, a smooth second-order process, or steps of random length. `scale` in metres. */
export function characterOf(kind: CharacterKind, chance: Chance, length: number, scale: number, loop: boolean): Character {
  if (kind === 'none') return { at: () => 0 };
  const count = Math.ceil(length / GRID);
  const values = new Float64Array(count);
  const keep = Math.exp(-GRID / scale);
  let inner = chance.normal();
  let outer = chance.normal();
  for (let i = 0; i < count; i += 1) {
    if (kind === 'steps') {
      if (chance.uniform() < GRID / scale) outer = chance.normal();
    } else {
      inner = keep * inner + Math.sqrt(1 - keep * keep) * chance.normal();
      outer = kind === 'first-order' ? inner : keep * outer + (1 - keep) * inner;
    }
    values[i] = outer;
  }
  standardise(values);
  return {
    at(position) {
      const place = position / GRID;
      const low = Math.floor(place);
      const share = place - low;
      return (1 - share) * values[within(low, count, loop)] + share * values[within(low + 1, count, loop)];
    },
  };
}

function within(index: number, count: number, loop: boolean): number {
  return loop ? ((index % count) + count) % count : Math.min(Math.max(index, 0), count - 1);
}

function standardise(values: Float64Array): void {
  let sum = 0;
  let square = 0;
  for (const value of values) {
    sum += value;
    square += value * value;
  }
  const mean = sum / values.length;
  const size = Math.sqrt(Math.max(1e-12, square / values.length - mean * mean));
  for (let i = 0; i < values.length; i += 1) values[i] = (values[i] - mean) / size;
}

export type StrandShape = 'triangle' | 'rectified' | 'saw' | 'pulse';

/** One period of a strand pattern that is no sine, mean 0, root mean square about 1. `turn` counts strands. */
export function strandValue(shape: StrandShape, turn: number): number {
  const phase = turn - Math.floor(turn);
  if (shape === 'triangle') return Math.sqrt(3) * (4 * Math.abs(phase - 0.5) - 1);
  if (shape === 'rectified') return (Math.abs(Math.sin(Math.PI * phase)) - 2 / Math.PI) / 0.3078;
  if (shape === 'saw') return Math.sqrt(12) * (phase < 0.85 ? phase / 0.85 - 0.5 : (1 - phase) / 0.15 - 0.5);
  return (Math.exp(-0.5 * ((phase - 0.5) / 0.16) ** 2) - 0.4) / 0.36;
}
