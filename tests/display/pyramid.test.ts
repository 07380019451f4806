import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPyramid } from '../../analysis/display/pyramid.ts';
import { displayWindow } from '../../analysis/display/display-window.ts';

/** The slow, obvious twin: scans every sample that a drawn point says it stands for. */
function extremes(values: number[], valid: number[], position: number, samples: number, step: number, start: number) {
  const centre = (position - start) / step;
  const inside = values.map((value, i) => ({ value, good: valid[i] === 1, i })).filter(({ i }) => Math.abs(i - centre) <= (samples - 1) / 2 + 1e-6);
  const good = inside.filter((each) => each.good).map((each) => each.value);
  return { low: Math.min(...good), high: Math.max(...good), seen: good.length === 0 ? 0 : good.length === inside.length ? 2 : 1 };
}

describe('display pyramid', () => {
  it('gives at every zoom what a scan of all samples gives', () => {
    fc.assert(fc.property(
      fc.array(fc.record({ value: fc.integer({ min: -500, max: 500 }), valid: fc.integer({ min: 0, max: 1 }) }), { minLength: 1, maxLength: 300 }),
      fc.integer({ min: 1, max: 60 }), fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }),
      (samples, pixels, a, b) => {
        const values = samples.map((s) => s.value);
        const valid = samples.map((s) => s.valid);
        const start = -2;
        const step = 0.25;
        const pyramid = buildPyramid({ values: Float64Array.from(values), valid: Uint8Array.from(valid) }, start, step);
        const reach = values.length * step;
        const from = start + Math.min(a, b) * reach;
        const to = start + Math.max(a, b) * reach;
        const drawn = displayWindow(pyramid, from, to, pixels);
        expect(drawn.seen.length).toBeLessThanOrEqual(pixels + 1);
        for (let p = 0; p < drawn.seen.length; p += 1) {
          const last = p === drawn.seen.length - 1;
          const width = last ? 2 * (values.length - 1 - (drawn.positions[p] - start) / step) + 1 : drawn.samplesPerPoint;
          const twin = extremes(values, valid, drawn.positions[p], Math.min(width, drawn.samplesPerPoint), step, start);
          expect(drawn.seen[p]).toBe(twin.seen);
          if (twin.seen > 0) expect([drawn.low[p], drawn.high[p]]).toEqual([twin.low, twin.high]);
        }
      },
    ), { numRuns: 300 });
  });

  it('keeps a single broken wire and a single missing sample of a million in view of the whole rope', () => {
    const values = new Float64Array(1_000_000);
    const valid = new Uint8Array(1_000_000).fill(1);
    values[654_321] = -7;
    valid[123_456] = 0;
    const drawn = displayWindow(buildPyramid({ values, valid }, 0, 0.001), 0, 1000, 1000);
    expect(Math.min(...drawn.low)).toBe(-7);
    expect([...drawn.seen].filter((each) => each === 1)).toHaveLength(1);
    expect(drawn.seen.length).toBeGreaterThan(480);
  });

  it('shows the samples themselves when there are fewer of them than pixels', () => {
    const values = Float64Array.from({ length: 1000 }, (_, i) => i);
    const drawn = displayWindow(buildPyramid({ values, valid: new Uint8Array(1000).fill(1) }, 0, 0.01), 2, 2.1, 400);
    expect(drawn.samplesPerPoint).toBe(1);
    expect(drawn.low).toEqual(drawn.high);
    expect(drawn.positions[0]).toBeLessThanOrEqual(2);
  });

  it('draws nothing where there is nothing', () => {
    const pyramid = buildPyramid({ values: new Float64Array(0), valid: new Uint8Array(0) }, 0, 1);
    expect(displayWindow(pyramid, 0, 10, 100).seen).toHaveLength(0);
    const far = buildPyramid({ values: Float64Array.of(1, 2), valid: Uint8Array.of(1, 1) }, 0, 1);
    expect(displayWindow(far, 50, 60, 100).seen).toHaveLength(0);
  });
});
