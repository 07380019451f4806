import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../analysis/life/statistics/least-squares.ts';
import { straightLine } from '../../analysis/life/statistics/straight-line.ts';
import { weightedTrend } from '../../analysis/growth/weighted-trend.ts';
import reference from './data/life/nist_strd_linear.json';

type Set = (typeof reference.sets)[number];

/**
 * NIST Statistical Reference Datasets, linear regression: certified values. What a solver by reflections in double precision
 * reaches is known from scipy's QR (least matching digits over the coefficients): Norris 12.0, Pontius 12.8, Longley 10.9,
 * Filip 7.4, Wampler1-5 9.4, 13.0, 9.1, 7.8, 5.8.
 */
const WITHIN: Record<string, number> = {
  Norris: 1e-10, Pontius: 1e-10, NoInt1: 1e-10, NoInt2: 1e-10, Longley: 1e-9, Filip: 1e-6, Wampler1: 1e-6, Wampler2: 1e-6, Wampler3: 1e-6, Wampler4: 1e-5, Wampler5: 1e-5,
};

function designOf(set: Set): number[][] {
  const start = set.intercept ? [1] : [];
  return set.data.x.map((x) => [...start, ...(typeof x === 'number' ? Array.from({ length: set.polynomial_degree ?? 1 }, (_, k) => x ** (k + 1)) : x)]);
}

describe('least squares against NIST StRD (doi 10.18434/T43G6C)', () => {
  it('covers all eleven linear sets', () => {
    expect(reference.sets.map((set) => set.name).sort()).toEqual(Object.keys(WITHIN).sort());
  });

  it.each(reference.sets.map((set) => [set.name, set] as const))('%s: estimates, standard deviations and residual standard deviation', (name, set) => {
    const fit = leastSquares(designOf(set), set.data.y)!;
    const within = WITHIN[name];
    const exact = set.certified.residual_sd === 0;
    set.certified.parameters.forEach((certified, j) => {
      expect(Math.abs(fit.coefficients[j] / certified.estimate - 1)).toBeLessThan(within);
      if (!exact) expect(Math.abs(fit.standardErrors[j] / certified.sd - 1)).toBeLessThan(within);
    });
    // Wampler1 and 2 fit exactly: their certified scatter is 0, and only rounding of values up to 3.4e6 may be left.
    if (exact) expect(fit.residualSd / Math.max(...set.data.y)).toBeLessThan(1e-11);
    else expect(Math.abs(fit.residualSd / set.certified.residual_sd - 1)).toBeLessThan(within);
  });

  it('keeps the digits of Norris in the straight line and in the weighted trend of growth', () => {
    const set = reference.sets.find((each) => each.name === 'Norris')!;
    const [, slope] = set.certified.parameters;
    const points = (set.data as Record<string, number[]>).x.map((t, i) => ({ t, value: set.data.y[i], uncertainty: 1 }));
    expect(Math.abs(straightLine(points)!.slope / slope.estimate - 1)).toBeLessThan(1e-13);
    expect(Math.abs(straightLine(points)!.slopeError / slope.sd - 1)).toBeLessThan(1e-12);
    expect(Math.abs(weightedTrend(points)!.slope / slope.estimate - 1)).toBeLessThan(1e-13);
  });

  it('refuses a design whose columns depend on each other', () => {
    expect(leastSquares([[1, 2], [2, 4], [3, 6]], [1, 2, 3])).toBeNull();
  });
});
