import { describe, expect, it } from 'vitest';
import { adjustedPValues } from '../../analysis/growth/false-discovery.ts';
import { newestAgainstEarlier, twoSidedP, weightedTrend } from '../../analysis/growth/weighted-trend.ts';
import reference from './data/growth/false_discovery_reference.json';

describe('growth statistics against outside references', () => {
  it(`adjusts p-values as ${reference.source}`, () => {
    for (const { p, adjusted } of reference.cases) {
      adjustedPValues(p).forEach((value, i) => expect(value).toBeCloseTo(adjusted[i], 12));
    }
  });

  it('gives the two-sided normal p-value of scipy.stats.norm within 2e-7', () => {
    for (const { z, p } of reference.two_sided) expect(Math.abs(twoSidedP(z) - p)).toBeLessThan(2e-7);
  });

  it('calls a change between two runs of 0.5 % each significant from 1.386 % on (GUM: root of the sum of squares, 1.96 sigma)', () => {
    const p = (change: number) => newestAgainstEarlier([{ t: 0, value: 0, uncertainty: 0.5 }, { t: 1, value: change, uncertainty: 0.5 }])!.pValue;
    expect(p(1.387)).toBeLessThan(0.05);
    expect(p(1.385)).toBeGreaterThan(0.05);
  });

  it('finds the slope of the worked trend 1.0, 1.8, 3.1, 4.2 % at 2, 4, 6, 8 years: 0.545 % a year, standard error 0.0343 from its scatter', () => {
    const trend = weightedTrend([[2, 1.0], [4, 1.8], [6, 3.1], [8, 4.2]].map(([t, value]) => ({ t, value, uncertainty: 0.001 })))!;
    expect(trend.slope).toBeCloseTo(0.545, 10);
    expect(trend.slopeUncertainty).toBeCloseTo(0.0343, 4);
  });
});
