import type { Trace } from '../rope/trace.ts';
import { measuredPosition } from '../rope/units.ts';
import type { Condition } from './condition.ts';
import { baselineAt } from './fit-baseline.ts';
import type { ZoneSearch } from './find-zones.ts';

/** A reference length shorter than this is not a length to count from, m. */
const LEAST_REFERENCE = 5;

/** What losses are counted from: the longest sound length, and the level removed along the rope. */
export function baselineOf(trace: Trace<'measured'>, { blocks, segmentation }: ZoneSearch): Condition<'measured'>['baseline'] {
  const { segments, baseline } = segmentation;
  const sound = segments.filter((segment) => segment.sound && (segment.end - segment.from) * blocks.length >= LEAST_REFERENCE);
  const longest = sound.reduce<(typeof sound)[number] | null>((best, each) => (!best || each.end - each.from > best.end - best.from ? each : best), null);
  const place = (block: number) => measuredPosition(trace.start + block * blocks.length);
  const positions = [];
  const values = [];
  const every = Math.max(1, Math.round(1 / blocks.length));
  for (let block = 0; block < blocks.mean.length; block += every) {
    positions.push(place(block + 0.5));
    values.push(baselineAt(baseline, block));
  }
  const level = { positions, values };
  if (!longest) return { where: null, level, basis: 'no sound length of 5 m or more: losses are counted from the least loss of this run, which is no sound rope' };
  const where = { from: place(longest.from), to: place(longest.end) };
  return { where, level, basis: `sound lengths of this run, the longest from ${where.from.toFixed(1)} to ${where.to.toFixed(1)} m of the file's own position; a slow drift is removed` };
}
