import { describe, expect, it } from 'vitest';
import { intervalAt, leastSquares } from '../../analysis/life/statistics/least-squares.ts';
import { studentQuantile } from '../../analysis/life/statistics/student-t.ts';
import { crossingOf, straightLine } from '../../analysis/life/statistics/straight-line.ts';
import nist from './data/life/nist_strd_linear.json';
import reference from './data/life/r_lm_reference.json';
import { FATIGUE, GAAS } from '../support/degradation-sets.ts';

/** Reference results of R 4.2.2 (predict.lm; uniroot on its band): generating script data/life/10_lm_prediction.R. */
const close = (value: number, expected: number, within: number) => expect(Math.abs(value - expected)).toBeLessThanOrEqual(within * Math.max(1e-12, Math.abs(expected)));

const setOf = (name: string) => nist.sets.find((each) => each.name === name)!.data as unknown as Record<'x' | 'y', number[]>;

const CASES = [
  { name: 'norris', result: reference.norris, ...setOf('Norris'), origin: false, weights: undefined },
  { name: 'cars', result: reference.cars, x: reference.cars_data.speed, y: reference.cars_data.dist, origin: false, weights: undefined },
  { name: 'noint1', result: reference.noint1, ...setOf('NoInt1'), origin: true, weights: undefined },
  { name: 'cars_weighted', result: reference.cars_weighted, x: reference.cars_data.speed, y: reference.cars_data.dist, origin: false, weights: reference.cars_data.speed.map((speed) => 1 / speed) },
];

describe('regression against R', () => {
  it.each(CASES)('$name: coefficients, standard errors, 80, 90 and 95 % intervals of the mean and of a new reading', ({ result, x, y, origin, weights }) => {
    const row = (at: number) => (origin ? [at] : [1, at]);
    const fit = leastSquares(x.map(row), y, weights)!;
    result.coef.forEach((each, j) => close(fit.coefficients[j], each, 1e-10));
    result.se.forEach((each, j) => close(fit.standardErrors[j], each, 1e-10));
    close(fit.residualSd, result.sigma, 1e-10);
    for (const { level, pred_lo, pred_hi, conf_lo, conf_hi } of result.intervals) {
      result.x0.forEach((at, i) => {
        const key = String(i + 1) as '1' | '2';
        const mean = intervalAt(fit, row(at), level, false)!;
        const reading = intervalAt(fit, row(at), level, true)!;
        const size = Math.abs(mean.value);
        // Ends near zero are a difference of larger numbers: judged against the size of the value.
        expect(Math.abs(mean.low - conf_lo[key])).toBeLessThan(1e-10 * Math.max(1, size));
        expect(Math.abs(mean.high - conf_hi[key])).toBeLessThan(1e-10 * Math.max(1, size));
        expect(Math.abs(reading.low - pred_lo[key])).toBeLessThan(1e-10 * Math.max(1, size));
        expect(Math.abs(reading.high - pred_hi[key])).toBeLessThan(1e-10 * Math.max(1, size));
      });
    }
  });

  it('has the quantiles of Student\'s t distribution of qt()', () => {
    for (const [freedom, quantiles] of Object.entries(reference.quantiles.t)) {
      quantiles.forEach((each, i) => close(studentQuantile(2 * reference.quantiles.p[i] - 1, Number(freedom)), each, 1e-10));
    }
  });

  // R's own root finder left 4e-8 of the range: the tolerance that the reference states.
  it('crosses 5 % on 15 GaAs lasers read to 1500 h where R does, with its 80 % inverse interval', () => {
    for (const { unit, D, cut, level, est, lo, hi } of reference.gaas_inverse) {
      const found = crossingOf(straightLine(GAAS.get(String(unit))!.filter((each) => each.t <= cut))!, D, level);
      close(found.at!, est, 1e-10);
      close(found.low!, lo, 1e-7);
      close(found.high!, hi, 1e-7);
    }
  });

  it('crosses 1.6 in on 21 fatigue paths read to 0.05 million cycles where R does, raw and logarithmic', () => {
    for (const { path, D, cut, level, raw, log } of reference.fatigue_inverse) {
      const early = FATIGUE.get(String(path))!.filter((each) => each.t <= cut + 1e-9);
      const found = crossingOf(straightLine(early)!, D, level);
      close(found.at!, raw.est, 1e-10);
      close(found.low!, raw.lo, 1e-7);
      close(found.high!, raw.hi, 1e-7);
      const logs = crossingOf(straightLine(early.map(({ t, value }) => ({ t, value: Math.log(value) })))!, Math.log(D), level);
      close(logs.at!, log.est, 1e-10);
      close(logs.low!, log.lo, 1e-7);
      close(logs.high!, log.hi, 1e-7);
    }
  });

  it('finds the pseudo failure times of the GaAs lasers (Meeker and Escobar 1998: line through all readings, 10 %; recomputable from the data)', () => {
    const published = [3702.0, 4194.4, 5846.8, 6172.1, 5301.0, 3592.4, 6050.8, 6538.5, 5110.1, 3306.5, 5326.3, 4994.6, 4720.5, 5688.9, 6101.8];
    const found = [...GAAS.values()].map((points) => crossingOf(straightLine(points)!, 10, 0.8).at!);
    expect(found).toHaveLength(15);
    found.forEach((each, i) => expect(Math.abs(each - published[i])).toBeLessThan(0.1));
  });
});
