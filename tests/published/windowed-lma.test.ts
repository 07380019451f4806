import { describe, expect, it } from 'vitest';
import { measureLoss } from '../../analysis/condition/zone-loss.ts';
import { assessLab, quietRope, zoneAt } from '../support/quiet-rope.ts';

/**
 * LMA is the mean of the true loss over the averaging length (ASTM E1571: a loss must be as long as it to read in full), so
 * 10 % over 100 mm reads 3.33 % through 300 mm, as a trapezoid of base 0.4 m and top 0.2 m, and one wire of 1.71 % with a gap of
 * 5 mm reads 0.0285 %. Worked from that definition by hand.
 */
const AVERAGING = 0.3;
const step = 0.001;
const reading = (loss: number, width: number) => Float64Array.from({ length: 4000 }, (_, i) => (loss * Math.max(0, Math.min(2 + width / 2, i * step + AVERAGING / 2) - Math.max(2 - width / 2, i * step - AVERAGING / 2))) / AVERAGING);
const whole = new Uint8Array(4000).fill(1);

describe('loss of one length through an averaging length of 300 mm', () => {
  it.each([[10, 0.1, 3.333], [1.71, 0.005, 0.0285], [10, 0.3, 10], [10, 1, 10]])('%f %% over %f m reads %f %% at most', (loss, width, peak) => {
    const values = reading(loss, width);
    expect(Math.max(...values)).toBeCloseTo(peak, 3);
    const found = measureLoss(values, whole, step, 2 - width / 2, 2 + width / 2, AVERAGING)!;
    // However it is spread, what is missing is all counted.
    expect(found.total / (loss * width)).toBeCloseTo(1, 2);
    expect(found.mean / loss).toBeCloseTo(1, 2);
    expect(found.peak).toBeLessThanOrEqual(peak + 1e-9);
  });
});

describe('a loss shorter than the averaging length', () => {
  it.each([[0.1, 10, 1], [0.15, 8, 2], [0.2, 10, 3], [0.12, 25, 4]])('over %f m, %f %% deep, is reported as a range that holds the true loss, never as what was read', async (width, depth, seed) => {
    const { zones } = await assessLab(quietRope({ seed, length: 80, lossNoise: 0.05, zones: [zoneAt(40.03, 40.03 + width, depth, { edge: 'step' })] }));
    expect(zones).toHaveLength(1);
    const [zone] = zones;
    expect(zone.lossRangePercent).not.toBeNull();
    const { low, high } = zone.lossRangePercent!;
    expect(low).toBeLessThanOrEqual(depth);
    expect(high).toBeGreaterThanOrEqual(depth);
    expect(high / low).toBeGreaterThan(1.02);
    expect(zone.meanLossPercent).toBeGreaterThanOrEqual(low);
    expect(zone.meanLossPercent).toBeLessThanOrEqual(high);
    expect(zone.where.from).toBeCloseTo(40.03, 1);
    expect(zone.where.to).toBeCloseTo(40.03 + width, 1);
  });
  it('a loss several averaging lengths long has no range', async () => {
    const { zones } = await assessLab(quietRope({ length: 80, zones: [zoneAt(40, 42, 5, { edge: 'step' })] }));
    expect(zones).toHaveLength(1);
    expect(zones[0].lossRangePercent).toBeNull();
    expect(Math.abs(zones[0].meanLossPercent - 5)).toBeLessThan(0.3);
  });
});
