import { describe, expect, it } from 'vitest';
import { lossDifference } from '../../analysis/display/difference.ts';
import { readingAt } from '../../analysis/display/reading.ts';
import type { Trace } from '../../analysis/rope/trace.ts';
import { ropePosition } from '../../analysis/rope/units.ts';

const trace = (values: number[], valid: number[]): Trace<'rope'> => ({
  start: ropePosition(10), step: 0.5, length: values.length, loss: { values: Float64Array.from(values), valid: Uint8Array.from(valid) },
  fault: null, faultUnit: 'mV', speed: null, averagingLength: 0.3,
});

describe('difference of two inspections', () => {
  it('is later minus earlier, and only where both have seen the rope', () => {
    const difference = lossDifference(trace([1, 1, 1, 1], [1, 0, 1, 1]), trace([2, 3, 4, 5], [1, 1, 1, 0]), 0);
    expect([...(difference?.valid ?? [])]).toEqual([1, 0, 1, 0]);
    expect(difference?.values[0]).toBe(1);
    expect(difference?.values[2]).toBe(3);
  });
  it('averages both over the same length', () => {
    const difference = lossDifference(trace([0, 0, 3, 0, 0], [1, 1, 1, 1, 1]), trace([0, 0, 0, 0, 0], [1, 1, 1, 1, 1]), 1);
    expect([...(difference?.values ?? [])].map((v) => v + 0)).toEqual([0, -1, -1, -1, 0]);
  });
});

describe('cursor reading', () => {
  it('gives the nearest sample, and null where nothing was measured', () => {
    const one = trace([1, 2, 3], [1, 0, 1]);
    expect(readingAt(one, 11.1)).toEqual({ loss: 3, fault: null });
    expect(readingAt(one, 10.5).loss).toBeNull();
    expect(readingAt(one, 9).loss).toBeNull();
  });
});
