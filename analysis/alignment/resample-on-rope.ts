import type { Channel, Trace } from '../rope/trace.ts';
import { positionAt } from '../rope/trace.ts';
import { ropePosition } from '../rope/units.ts';
import type { RopeMap } from './rope-map.ts';
import { interpolate } from './rope-map.ts';

/** The even grid of rope positions that all inspections share. */
export interface RopeAxis {
  readonly start: number;
  readonly step: number;
  readonly length: number;
}

/**
 * A grid as fine as the finest trace, reaching over all of them and the rope's length on record. Open ropes keep the first
 * trace's own samples on the grid, so that the first inspection is not interpolated. Metres.
 */
export function ropeAxis(traces: readonly Trace<'measured'>[], maps: readonly RopeMap[], ropeLength: number | null, loopLength: number | null): RopeAxis {
  const step = Math.min(...traces.map((trace) => trace.step));
  if (loopLength !== null) return { start: 0, step, length: Math.max(1, Math.round(loopLength / step)) };
  const ends = traces.flatMap((trace, i) => {
    const [measured, rope] = [maps[i].knots.map((k) => k.measured), maps[i].knots.map((k) => k.rope)];
    return [interpolate(measured, rope, trace.start), interpolate(measured, rope, positionAt(trace, trace.length - 1))];
  });
  const low = Math.min(...ends, 0);
  const high = Math.max(...ends, ropeLength ?? Number.NEGATIVE_INFINITY);
  const start = ends[0] - Math.ceil((ends[0] - low) / step - 1e-6) * step;
  return { start, step, length: Math.floor((high - start) / step + 1e-6) + 1 };
}

/** A trace by rope position. Gaps stay gaps: a grid point between a valid and an invalid sample takes the nearer one's state. */
export function resampleOnRope(trace: Trace<'measured'>, map: RopeMap, axis: RopeAxis): Trace<'rope'> {
  const places = fileIndexOf(trace, map, axis);
  return {
    start: ropePosition(axis.start), step: axis.step, length: axis.length, faultUnit: trace.faultUnit, averagingLength: trace.averagingLength,
    loss: trace.loss && resample(trace.loss, places, false),
    fault: trace.fault && resample(trace.fault, places, true),
    speed: trace.speed && resample(trace.speed, places, false),
  };
}

/** For every grid point the trace's index, with its fraction, that shows it; NaN where the file does not reach. Linear time. */
function fileIndexOf(trace: Trace<'measured'>, map: RopeMap, axis: RopeAxis): Float64Array {
  const places = new Float64Array(axis.length).fill(Number.NaN);
  const knots = map.reversed ? [...map.knots].reverse() : map.knots;
  const rope = Float64Array.from(knots, (k) => k.rope);
  const index = Float64Array.from(knots, (k) => (k.measured - trace.start) / trace.step);
  const last = trace.length - 0.5;
  for (const shift of turns(rope, map.loopLength)) {
    let segment = 0;
    for (let i = 0; i < axis.length; i += 1) {
      if (!Number.isNaN(places[i])) continue;
      const at = axis.start + i * axis.step + shift;
      while (segment < rope.length - 2 && rope[segment + 1] <= at) segment += 1;
      const place = index[segment] + ((at - rope[segment]) / (rope[segment + 1] - rope[segment])) * (index[segment + 1] - index[segment]);
      // Whole numbers up to rounding are the file's own samples and stay so.
      const near = Math.round(place);
      const settled = Math.abs(place - near) < 1e-6 ? near : place;
      if (settled >= -0.5 && settled <= last) places[i] = settled;
    }
  }
  return places;
}

function turns(rope: Float64Array, loopLength: number | null): number[] {
  if (loopLength === null) return [0];
  const first = Math.floor(rope[0] / loopLength) - 1;
  const last = Math.floor(rope[rope.length - 1] / loopLength) + 1;
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * loopLength);
}

function resample(channel: Channel, places: Float64Array, cubic: boolean): Channel {
  const { values, valid } = channel;
  const out = { values: new Float64Array(places.length), valid: new Uint8Array(places.length) };
  const top = values.length - 1;
  for (let i = 0; i < places.length; i += 1) {
    const place = places[i];
    if (Number.isNaN(place)) continue;
    const low = Math.min(top, Math.max(0, Math.floor(place)));
    const high = Math.min(top, low + 1);
    const share = Math.min(1, Math.max(0, place - low));
    const nearest = share < 0.5 ? low : high;
    if (valid[nearest] !== 1) continue;
    out.valid[i] = 1;
    if (share === 0 || low === high || valid[low] !== 1 || valid[high] !== 1) out.values[i] = values[nearest];
    else if (cubic && low > 0 && high < top && valid[low - 1] === 1 && valid[high + 1] === 1) out.values[i] = catmullRom(values[low - 1], values[low], values[high], values[high + 1], share);
    else out.values[i] = values[low] + share * (values[high] - values[low]);
  }
  return out;
}

/** Cubic through b and c at shares 0 and 1, with slopes from their neighbours (Catmull and Rom 1974): keeps the height of pulses. */
function catmullRom(a: number, b: number, c: number, d: number, share: number): number {
  return b + 0.5 * share * (c - a + share * (2 * a - 5 * b + 4 * c - d + share * (3 * (b - c) + d - a)));
}
