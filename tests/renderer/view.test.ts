import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { assess } from '../../analysis/assess.ts';
import type { Analysis } from '../../analysis/assess.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { nodeHasher } from '../../main/hasher.ts';
import { openRopeFolder } from '../../main/folder/rope-folder.ts';
import { byUrgency } from '../../renderer/jobs/urgency.ts';
import { chanceAt } from '../../renderer/strip/chance-at.ts';
import { mapShift } from '../../renderer/jobs/map-shift.ts';
import { answerer } from '../../renderer/workers/answer.ts';
import { viewOf } from '../../renderer/workers/analysis-view.ts';
import type { AnalysisView } from '../../renderer/workers/analysis-view.ts';

/** What the page gets of an analysis: enough to draw and decide, and never the samples. */
let analysis: Analysis;
let view: AnalysisView;
beforeAll(async () => {
  const folder = await openRopeFolder(join(import.meta.dirname, '../../sample-signals/parted-rope'));
  analysis = await assess(folder, { generated: '2025-05-01T00:00:00Z', product: 'test', createHash: nodeHasher, checkpoint: noCheckpoint, journal: [] });
  view = viewOf(analysis);
});

test('a view can be posted to the page and holds no samples', () => {
  const posted = structuredClone(view);
  expect(posted.inspections.map((each) => each.date)).toEqual(['2022-04-26', '2023-10-10', '2025-04-15']);
  const samples = analysis.surveys[0].rope.length;
  const longest = (value: unknown): number => {
    if (ArrayBuffer.isView(value)) return value.byteLength;
    if (Array.isArray(value)) return Math.max(value.length, ...value.slice(0, 3).map(longest), 0);
    return typeof value === 'object' && value !== null ? Math.max(0, ...Object.values(value).map(longest)) : 0;
  };
  expect(samples).toBeGreaterThan(10_000);
  expect(Math.max(...posted.inspections.map(longest), ...posted.runs.map(longest))).toBeLessThan(samples / 5);
});

test('the rope is drawn over its recorded length, with what was never inspected on it', () => {
  expect(view.extent.from).toBeLessThanOrEqual(0);
  expect(view.extent.to).toBeGreaterThanOrEqual(320);
  expect(view.loopLength).toBeNull();
  const hidden = view.assessment.not_inspected.reduce((sum, each) => sum + each.to_m - each.from_m, 0);
  expect(hidden).toBeGreaterThan(7.6);
});

test('every place stands once in the order of urgency, a reached criterion first', () => {
  const ordered = byUrgency(view);
  expect([...ordered].map((each) => each.place.id).sort()).toEqual(view.places.map((each) => each.id).sort());
  const rank = { reached: 0, 'may-be-reached': 1, 'not-reached': 2 } as const;
  const ranks = ordered.map((each) => rank[each.criterion?.verdict ?? 'not-reached']);
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
});

test('the shift of a map is what its knots leave over one straight scale', () => {
  for (const { map } of view.inspections) {
    const { positions, shift, bound, scale, offset } = mapShift(map);
    expect(positions).toEqual([...positions].sort((a, b) => a - b));
    expect(Math.abs(shift[0])).toBeLessThan(1e-9);
    expect(Math.abs(shift[shift.length - 1])).toBeLessThan(1e-9);
    expect(Math.min(...bound)).toBeGreaterThanOrEqual(0);
    for (const knot of map.knots.slice(1, -1)) {
      const at = positions.findIndex((position) => Math.abs(position - knot.rope) < 1e-9);
      expect(at).toBeGreaterThan(-1);
      expect(positions.flatMap((position, i) => (Math.abs(position - knot.rope) < 1e-9 ? [shift[i]] : []))).toContainEqual(expect.closeTo(knot.rope - offset - scale * knot.measured, 6));
    }
  }
});

test('the worker answers with the samples themselves where they fit, and with NOT INSPECTED as null', async () => {
  const answer = answerer(analysis);
  const near = (await answer('reading', { at: 150 })).value as { loss: number | null }[];
  const hidden = (await answer('reading', { at: 317 })).value as { loss: number | null; fault: number | null }[];
  expect(near.every((each) => each.loss !== null)).toBe(true);
  expect(hidden.every((each) => each.loss === null && each.fault === null)).toBe(true);
  const strips = await answer('strips', { from: 150, to: 150.5, pixels: 1000 });
  const [first] = strips.value as { loss: { low: Float64Array; positions: Float64Array; samplesPerPoint: number } }[];
  expect(first.loss.samplesPerPoint).toBe(1);
  const { rope } = analysis.surveys[0];
  const index = Math.round((first.loss.positions[5] - rope.start) / rope.step);
  // A drawing holds single precision: seven digits, far beyond any pixel.
  expect(first.loss.low[5]).toBe(Math.fround(rope.loss!.values[index]));
  expect(strips.transfer.length).toBe(24);
});

test('the probability of a date rises with time and is that of the stated 10, 50 and 90 % dates', () => {
  const dated = view.life.forecasts.filter((each) => each.date.low !== null && each.date.median !== null && each.chance.length > 0);
  expect(dated.length).toBeGreaterThan(0);
  for (const each of dated) {
    const shares = each.chance.map((point) => point.share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    // The table knows whole days and steps of 2 %, and a count may be likely to rise on one day.
    expect(Math.abs(chanceAt(each, each.date.low!)! - 0.1)).toBeLessThan(0.04);
    expect(Math.abs(chanceAt(each, each.date.median!)! - 0.5)).toBeLessThan(0.04);
    expect(chanceAt(each, '2000-01-01')).toBe(0);
  }
});
