/** A quantity along the rope on an even grid from rope position 0. */
export interface RopeGrid {
  readonly step: number;
  readonly values: Float64Array;
}

export function emptyGrid(length: number, step: number): RopeGrid {
  return { step, values: new Float64Array(Math.ceil(length / step) + 2) };
}

/** Linear between grid points, held beyond the ends. */
export function valueAt({ step, values }: RopeGrid, position: number): number {
  const at = Math.min(Math.max(position / step, 0), values.length - 1.000001);
  const low = Math.floor(at);
  return values[low] + (at - low) * (values[low + 1] - values[low]);
}

/**
 * What an LMA channel makes of the true loss: its mean over the averaging length about each point. On an endless rope the
 * window goes over the origin; on an open one the rope beyond its ends counts as its end value.
 */
export function averaged({ step, values }: RopeGrid, averagingLength: number, loop: boolean): RopeGrid {
  const count = values.length;
  const half = averagingLength / 2 / step;
  const sums = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) sums[i + 1] = sums[i] + values[i];
  const total = sums[count];
  // The integral up to a real-valued place, each sample standing for one step about its point.
  const integral = (at: number): number => {
    const place = at + 0.5;
    if (loop) {
      const turns = Math.floor(place / count);
      return turns * total + inside(sums, values, place - turns * count);
    }
    if (place < 0) return place * values[0];
    if (place >= count) return total + (place - count) * values[count - 1];
    return inside(sums, values, place);
  };
  const out = new Float64Array(count);
  for (let i = 0; i < count; i += 1) out[i] = (integral(i + half) - integral(i - half)) / (2 * half);
  return { step, values: out };
}

function inside(sums: Float64Array, values: Float64Array, place: number): number {
  const whole = Math.min(Math.floor(place), values.length - 1);
  return sums[whole] + (place - whole) * values[whole];
}
