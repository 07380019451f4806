import { describe, expect, it } from 'vitest';
import { parabolicOffset } from '../../analysis/signal/parabolic-offset.ts';
import { fillGaps } from '../../analysis/signal/fill-gaps.ts';
import { findPeaks } from '../../analysis/signal/find-peaks.ts';
import { median } from '../../analysis/signal/median.ts';
import { quantile } from '../../analysis/signal/quantile.ts';
import { savitzkyGolay } from '../../analysis/signal/savitzky-golay.ts';
import { slidingMean } from '../../analysis/signal/sliding-mean.ts';
import { slidingMedian } from '../../analysis/signal/sliding-median.ts';
import { labRandom } from '../support/lab-random.ts';

/** Random signals with random gaps; what stands in a gap is nonsense. */
function* drawn(times: number): Generator<{ values: Float64Array; valid: Uint8Array; width: number; random: ReturnType<typeof labRandom> }> {
  for (let seed = 1; seed <= times; seed += 1) {
    const random = labRandom(seed);
    const count = 1 + Math.floor(random.uniform() * 120);
    const valid = Uint8Array.from({ length: count }, () => (random.uniform() < 0.8 ? 1 : 0));
    const from = Math.floor(random.uniform() * count);
    valid.fill(0, from, from + Math.floor(random.uniform() * 40));
    yield { values: Float64Array.from({ length: count }, (_, i) => (valid[i] === 1 ? Math.round(random.normal() * 20) / 4 : random.pick([NaN, 1e300, -1e9]))), valid, width: 1 + 2 * Math.floor(random.uniform() * 12), random };
  }
}

const windowOf = (values: Float64Array, valid: Uint8Array, at: number, width: number): number[] => [...values].filter((_, i) => valid[i] === 1 && Math.abs(i - at) <= (width - 1) / 2);

describe('sliding filters against windows written out one by one', () => {
  it('a window without valid samples stays a gap, and no nonsense leaks out of gaps', () => {
    for (const { values, valid, width } of drawn(150)) {
      const byMedian = slidingMedian(values, valid, width);
      const byMean = slidingMean(values, valid, width);
      for (let i = 0; i < values.length; i += 1) {
        const members = windowOf(values, valid, i, width);
        expect(byMedian.valid[i]).toBe(members.length > 0 ? 1 : 0);
        expect(byMean.valid[i]).toBe(members.length > 0 ? 1 : 0);
        if (members.length === 0) continue;
        expect(byMedian.values[i]).toBeCloseTo(median(members), 12);
        expect(byMean.values[i]).toBeCloseTo(members.reduce((sum, value) => sum + value, 0) / members.length, 9);
      }
    }
  });
  it('inputs are left as they are', () => {
    for (const { values, valid, width } of drawn(10)) {
      const before = [values.slice(), valid.slice()];
      slidingMedian(values, valid, width);
      slidingMean(values, valid, width);
      fillGaps(values, valid);
      expect([values, valid]).toEqual(before);
    }
  });
  it('bridged gaps lie on the line between their shores, and measured samples are untouched', () => {
    for (const { values, valid } of drawn(80)) {
      const filled = fillGaps(values, valid);
      for (let i = 0; i < values.length; i += 1) {
        if (valid[i] === 1) expect(filled[i]).toBe(values[i]);
        else expect(Number.isFinite(filled[i]) && Math.abs(filled[i]) < 1e6).toBe(true);
        if (i > 0 && i + 1 < values.length && valid[i - 1] + valid[i] + valid[i + 1] === 0) expect(filled[i]).toBeCloseTo((filled[i - 1] + filled[i + 1]) / 2, 9);
      }
    }
  });
});

describe('order statistics', () => {
  it('are those of sorting', () => {
    for (const { random } of drawn(80)) {
      const values = Array.from({ length: 1 + Math.floor(random.uniform() * 60) }, () => Math.round(random.normal() * 3));
      const sorted = [...values].sort((a, b) => a - b);
      const share = random.uniform();
      const rank = share * (values.length - 1);
      const below = Math.floor(rank);
      expect(quantile(values, share)).toBeCloseTo(sorted[below] + (rank - below) * ((sorted[below + 1] ?? sorted[below]) - sorted[below]), 9);
    }
  });
  it('refuse an empty list', () => expect(() => median([])).toThrow(RangeError));
});

describe('summits', () => {
  it('the summit of a parabola lies where calculus puts it', () => {
    for (const summit of [-0.45, -0.1, 0, 0.3]) expect(parabolicOffset(-((-1 - summit) ** 2), -(summit ** 2), -((1 - summit) ** 2))).toBeCloseTo(summit, 12);
    expect(parabolicOffset(1, 1, 1)).toBe(0);
  });
});

describe('smoothing and peaks', () => {
  it('Savitzky-Golay leaves a polynomial of its degree as it is, ends and all', () => {
    const cubic = Float64Array.from({ length: 40 }, (_, i) => 0.001 * i ** 3 - 0.03 * i * i + i - 5);
    savitzkyGolay(cubic, 11, 3).forEach((value, i) => expect(value).toBeCloseTo(cubic[i], 9));
    expect(() => savitzkyGolay(cubic, 10, 3)).toThrow(RangeError);
    expect(() => savitzkyGolay(cubic.subarray(0, 5), 11, 3)).toThrow(RangeError);
  });
  it('a peak is no more prominent than it is high over the least value, and moves and scales with the signal', () => {
    for (const { random } of drawn(60)) {
      const values = Array.from({ length: 80 }, () => Math.round(random.normal() * 4));
      const peaks = findPeaks(values);
      const least = Math.min(...values);
      peaks.forEach((peak) => {
        expect(peak.prominence).toBeGreaterThan(0);
        expect(peak.prominence).toBeLessThanOrEqual(values[peak.index] - least);
        expect(peak.width).toBeGreaterThan(0);
      });
      const moved = findPeaks(values.map((value) => 3 * value - 7));
      expect(moved.map((peak) => [peak.index, peak.prominence / 3])).toEqual(peaks.map((peak) => [peak.index, peak.prominence]));
      expect(findPeaks(values, 5).map((peak) => peak.index)).toEqual(peaks.filter((peak) => peak.prominence >= 5).map((peak) => peak.index));
    }
  });
  it('nothing rises from a level or a slope', () => {
    expect(findPeaks([1, 1, 1, 1])).toEqual([]);
    expect(findPeaks([1, 2, 3, 4])).toEqual([]);
    expect(findPeaks([])).toEqual([]);
  });
});
