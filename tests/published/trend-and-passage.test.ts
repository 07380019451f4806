import { describe, expect, it } from 'vitest';
import { nextInspection } from '../../analysis/life/index.ts';
import { timeToReach } from '../../analysis/life/passage/growth-law.ts';
import { drawInverseGaussian, seededRandom } from '../../analysis/life/statistics/random.ts';
import { crossingOf, straightLine } from '../../analysis/life/statistics/straight-line.ts';
import { studentQuantile } from '../../analysis/life/statistics/student-t.ts';
import { dateOfYear, yearOfDate } from '../../analysis/life/dates.ts';
import { bareEvidence, boundedPlace } from '../support/life-parts.ts';

/** Worked example of a loss trend (least squares by hand): 1.0, 1.8, 3.1, 4.2 % at 2, 4, 6, 8 years, limit 10 %. */
const TREND = [[2, 1.0], [4, 1.8], [6, 3.1], [8, 4.2]].map(([t, value]) => ({ t, value }));

describe('worked trend', () => {
  const line = straightLine(TREND)!;

  it('has slope 0.545 % a year, intercept -0.200 %, scatter 0.1533 %, standard error 0.0343', () => {
    expect(line.slope).toBeCloseTo(0.545, 12);
    expect(line.meanValue - line.slope * line.meanT).toBeCloseTo(-0.2, 12);
    expect(line.residualSd).toBeCloseTo(0.1533, 4);
    expect(line.slopeError).toBeCloseTo(0.0343, 4);
  });

  it('crosses 10 % at 18.716 years, 10.716 after the last reading', () => {
    expect(crossingOf(line, 10, 0.8).at).toBeCloseTo(18.716, 2);
    expect(crossingOf(line, 10, 0.8).at! - 8).toBeCloseTo(10.716, 2);
  });

  it('has 95 % of its slope within 0.1475, and 8.375 years left from the last value at the steep end 0.6925', () => {
    const half = studentQuantile(0.95, 2) * line.slopeError;
    expect(studentQuantile(0.95, 2)).toBeCloseTo(4.303, 3);
    expect(half).toBeCloseTo(0.1475, 3);
    expect(timeToReach(10, 4.2, 0.6925, 1)).toBeCloseTo(8.375, 3);
  });

  it('asks for the next inspection after half of 10.716 years: 5.358 (rule of pressure plant, API 510 and 570, from memory)', () => {
    const asOf = '2020-01-01';
    const bound = dateOfYear(yearOfDate(asOf) + 10.716);
    const { by } = nextInspection(bareEvidence(asOf), [], [boundedPlace(bound, asOf)], { sets: [], asOf, intervalFactor: 0.5 });
    expect(yearOfDate(by!) - yearOfDate(asOf)).toBeCloseTo(5.358, 2);
  });
});

describe('first passage of a Wiener process', () => {
  it('has mean 10 and variance 10 for distance 5, drift 0.5, diffusion 0.5 (inverse Gaussian: D / mu, D s^2 / mu^3)', () => {
    const random = seededRandom(7);
    const count = 200_000;
    const draws = Array.from({ length: count }, () => drawInverseGaussian(random, 5 / 0.5, 5 ** 2 / 0.5 ** 2));
    const mean = draws.reduce((sum, each) => sum + each, 0) / count;
    const variance = draws.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (count - 1);
    // Four standard errors: of the mean sqrt(variance / n), of the variance from the excess kurtosis 15 mean / shape.
    expect(Math.abs(mean - 10)).toBeLessThan(4 * Math.sqrt(10 / count));
    expect(Math.abs(variance - 10)).toBeLessThan(4 * 10 * Math.sqrt((2 + 15 * (10 / 100)) / count));
  });

  it('has the distribution function of the inverse Gaussian (Folks and Chhikara 1978), at five points', () => {
    const random = seededRandom(11);
    const [mean, shape, count] = [10, 100, 100_000];
    const draws = Array.from({ length: count }, () => drawInverseGaussian(random, mean, shape));
    // scipy.stats.invgauss.cdf(x, 0.1, scale=100)
    for (const [x, share] of [[6, 0.0669810], [8, 0.2874457], [10, 0.5616070], [13, 0.8405348], [18, 0.9803234]]) {
      const found = draws.filter((each) => each <= x).length / count;
      expect(Math.abs(found - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / count));
    }
  });
});
