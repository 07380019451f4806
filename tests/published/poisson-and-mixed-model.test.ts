import { describe, expect, it } from 'vitest';
import { forecastPassages } from '../../analysis/life/index.ts';
import { fitCounts } from '../../analysis/life/passage/fit-counts.ts';
import { logShapeNeutral } from '../../analysis/life/passage/growth-law.ts';
import { shapeNeutral } from '../../analysis/life/passage/series.ts';
import type { ScaledPlace } from '../../analysis/life/passage/series.ts';
import reference from './data/life/r_count_and_mixed_reference.json';

/** Reference results of R 4.2.2 glm and nlme 3.1-162 lme on SYNTHETIC series: generating script data/life/r_count_and_mixed_reference.R. */
const placeOf = ({ u, y }: { u: number[]; y: number[] }): ScaledPlace => ({ index: 0, counts: true, u: Float64Array.from(u), y: Float64Array.from(y), noise: new Float64Array(u.length) });

/** Level, its standard error and the log likelihood of Poisson counts with an exponential mean at a fixed rate, without priors. */
function fitAt(place: ScaledPlace, rate: number): { level: number; sigma: number; logLikelihood: number } {
  const out = { logLikelihood: 0, level: 0, sigma: 0, zero: 0, zeroByLevel: 0 };
  fitCounts(place, 1, 0, Math.log(rate), 0, place.y[place.y.length - 1] * 0.7, out);
  const priors = Math.log(out.sigma * Math.sqrt(2 * Math.PI)) + shapeNeutral(place) * logShapeNeutral(out.level, rate, 0, place.u[0]);
  return { ...out, logLikelihood: out.logLikelihood - priors };
}

describe('Poisson regression with log link against R glm', () => {
  it.each(reference.counts.map((each) => [each.y.join(', '), each] as const))('counts %s: level, standard error and log likelihood at four rates', (_, each) => {
    for (const { rate, level, se_level, logLik } of each.at) {
      const found = fitAt(placeOf(each), rate);
      expect(Math.abs(found.level / level - 1)).toBeLessThan(1e-6);
      expect(Math.abs(found.sigma / se_level - 1)).toBeLessThan(1e-6);
      expect(Math.abs(found.logLikelihood - logLik)).toBeLessThan(1e-6);
    }
  });

  it('has its highest likelihood at the rate that R finds', () => {
    for (const each of reference.counts) {
      const at = (logRate: number) => fitAt(placeOf(each), Math.exp(logRate)).logLikelihood;
      expect(Math.abs(at(each.best_log_rate) - each.best_logLik)).toBeLessThan(1e-6);
      for (const step of [-0.05, 0.05]) expect(at(each.best_log_rate + step)).toBeLessThan(each.best_logLik);
    }
  });
});

describe('places learned from together against R lme', () => {
  const { rows, limit, noise, crossing, line } = reference.mixed;
  const places = crossing.map((_, j) => rows.place.flatMap((place, i) => (place === j + 1 ? [{ t: rows.t[i], value: rows.value[i], uncertainty: noise }] : [])));
  const found = forecastPassages(places.map((points) => ({ points })), limit, { seed: 1 });

  // lme knows that growth is straight; the program has to find it out, and takes rates as log-normal. Where readings settle both, they agree.
  it('puts the middle of every place within a sixth of its own interval (0.4 sigma) of the crossing of its mixed-model line', () => {
    found.forEach((each, j) => expect(Math.abs(each.median! - crossing[j])).toBeLessThan((each.high! - each.low!) / 6));
  });

  it('holds the mixed-model crossing of every place, also of those read twice, inside its 10 to 90 % interval', () => {
    found.forEach((each, j) => {
      expect(each.low).toBeLessThan(crossing[j]);
      expect(each.high).toBeGreaterThan(crossing[j]);
    });
  });

  it('draws a place read twice from its own line towards the others, as the mixed model does', () => {
    // The place whose own two readings are furthest from the mixed model: both shrink its crossing the same way.
    const furthest = [12, 13, 14].reduce((a, b) => (Math.abs(line[b] - crossing[b]) > Math.abs(line[a] - crossing[a]) ? b : a));
    expect(Math.sign(line[furthest] - found[furthest].median!)).toBe(Math.sign(line[furthest] - crossing[furthest]));
  });
});
