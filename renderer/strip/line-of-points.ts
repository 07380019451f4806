import type { DisplayPoints } from '../../analysis/display/display-points.ts';

/** The pen's path through display points: down to the lowest and up to the highest under each pixel, lifted at every gap. */
export function lineOfPoints(points: DisplayPoints): { x: Float64Array; y: Float64Array } {
  const { positions, low, high, seen, samplesPerPoint } = points;
  const both = samplesPerPoint > 1;
  const room = positions.length * (both ? 3 : 2);
  const x = new Float64Array(room);
  const y = new Float64Array(room);
  let used = 0;
  const put = (position: number, value: number) => { x[used] = position; y[used] = value; used += 1; };
  let falling = false;
  for (let i = 0; i < positions.length; i += 1) {
    if (seen[i] === 0) {
      // The chart reads a missing number as a lifted pen; it never leaves this drawing.
      if (used > 0 && !Number.isNaN(y[used - 1])) put(positions[i], NaN);
      continue;
    }
    if (both) {
      put(positions[i], falling ? high[i] : low[i]);
      put(positions[i], falling ? low[i] : high[i]);
      falling = !falling;
    } else put(positions[i], low[i]);
    if (seen[i] === 1) put(positions[i], NaN);
  }
  return { x: x.subarray(0, used), y: y.subarray(0, used) };
}

/** Lowest and highest value drawn, or null where nothing is. */
export function extremesOf(drawn: readonly (DisplayPoints | null)[], from: number, to: number): { low: number; high: number } | null {
  let low = Infinity;
  let high = -Infinity;
  for (const points of drawn) {
    if (points === null) continue;
    for (let i = 0; i < points.positions.length; i += 1) {
      if (points.seen[i] === 0 || points.positions[i] < from || points.positions[i] > to) continue;
      if (points.low[i] < low) low = points.low[i];
      if (points.high[i] > high) high = points.high[i];
    }
  }
  return low <= high ? { low, high } : null;
}
