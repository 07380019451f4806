import { describe, expect, it } from 'vitest';
import { forecastPassage } from '../../analysis/life/index.ts';
import { runProtocol } from '../support/degradation-protocol.ts';
import type { ProtocolResult } from '../support/degradation-protocol.ts';
import { FATIGUE, GAAS, observedPassage, SLIDING_WEAR } from '../support/degradation-sets.ts';

/**
 * Measured degradation paths of other fields (no long series of ropes has been published with numbers): cut early, forecast, compared
 * with what was observed later. Bounds: the published baselines of the same protocol (a free crack growth law per path errs by 0.143,
 * every straight line by 0.278 and more, always too late) and what 80 % may look like by chance (95 % binomial).
 */
const endsBeforeReadings = ({ open }: ProtocolResult) => open.filter(({ forecast, lastReading }) => forecast.high !== null && forecast.high < lastReading);

describe('metal fatigue (Lu and Meeker 1993): growth that accelerates', () => {
  it('forecasts 1.6 in from readings to 0.05 million cycles within 10 % (median), 80 % intervals inside the binomial band of 12', () => {
    const result = runProtocol(FATIGUE, 1.6, 0.05);
    expect(result.passed).toHaveLength(12);
    expect(result.open).toHaveLength(9);
    expect(result.medianError).toBeLessThanOrEqual(0.1);
    expect(result.coverage).toBeGreaterThanOrEqual(0.58);
    expect(endsBeforeReadings(result)).toEqual([]);
    for (const { forecast } of [...result.passed, ...result.open]) {
      expect(forecast.model).toContain('crack-growth');
      expect(forecast.reason).toContain('a straight line would overstate the life left');
    }
  });

  // By chance 13 to 20 of 21 would be held (binomial 0.62 to 0.95). All paths share what is unknown of their law, so they are held or
  // missed together; measured 20 to 21 of 21. That this is not bought with width is checked against the reference results: their
  // quadratic law without pooling needs 0.297 of the passage for 0.90, their free crack growth law 0.481 for 0.95.
  it('forecasts 1.25 in from readings to 0.04 within 6 %, holds 13 of 21 and more, in half the width of the published fits without pooling', () => {
    const result = runProtocol(FATIGUE, 1.25, 0.04);
    expect(result.passed).toHaveLength(21);
    expect(result.medianError).toBeLessThanOrEqual(0.06);
    expect(result.coverage).toBeGreaterThanOrEqual(0.62);
    const widths = result.passed.map(({ forecast, observed }) => (forecast.high! - forecast.low!) / observed).sort((a, b) => a - b);
    expect(widths[10]).toBeLessThan(0.16);
  });

  it('holds for the other cuts of the same protocol: 0.04 and 0.06', () => {
    for (const [cut, error] of [[0.04, 0.207], [0.06, 0.078]]) {
      const result = runProtocol(FATIGUE, 1.6, cut);
      expect(result.medianError).toBeLessThanOrEqual(error);
      expect(result.coverage).toBeGreaterThanOrEqual(0.58);
      expect(endsBeforeReadings(result)).toEqual([]);
    }
  });
});

describe('GaAs lasers (Meeker and Escobar 1998): straight growth whose errors hang together', () => {
  it('forecasts 5 % from readings to 1500 h within 7 %, coverage inside the binomial band of 15', () => {
    const result = runProtocol(GAAS, 5, 1500);
    expect(result.passed).toHaveLength(15);
    expect(result.medianError).toBeLessThanOrEqual(0.07);
    expect(result.coverage).toBeGreaterThanOrEqual(0.6);
  });

  it('says so: growth is irregular or readings hang together', () => {
    for (const { forecast } of runProtocol(GAAS, 5, 1500).passed) expect(forecast.reason).toContain('irregular or readings hang together');
  });
});

describe('sliding wear (Meeker and Escobar 1998): growth that slows down', () => {
  // Each unit's own last reading (at 500) is its limit; readings to 100, the four units of one load learned from together. Reference
  // results of the same protocol: straight line 0.67 and none held, always too early; free power law 0.32 and 0.83 held.
  it('says that growth slows down, and errs by a third less than a straight line', () => {
    const units = [...SLIDING_WEAR.values()];
    const early = units.map((points) => ({ points: points.filter((each) => each.t <= 100).map((each) => ({ ...each, uncertainty: null })) }));
    const found = units.map((points, i) => {
      const load = Math.floor(i / 4) * 4;
      return forecastPassage(early.slice(load, load + 4), i - load, points[points.length - 1].value, { seed: 1, horizon: 5000 });
    });
    const errors = found.map(({ median }) => Math.abs((median ?? Infinity) - 500) / 500).sort((a, b) => a - b);
    expect((errors[5] + errors[6]) / 2).toBeLessThan(0.67 * 0.67);
    for (const { model } of found) expect(model).toContain('slowing');
    expect(found.filter(({ low, high }) => low! <= 500 && (high ?? Infinity) >= 500).length).toBeGreaterThanOrEqual(4);
  });
});

describe('the protocol itself', () => {
  it('finds the observed passage of path 1 that the reference results list: 0.087594582 million cycles at 1.6 in, 0.057560333 at 1.25 in', () => {
    expect(observedPassage(FATIGUE.get('1')!, 1.6)).toBeCloseTo(0.087594582, 8);
    expect(observedPassage(FATIGUE.get('1')!, 1.25)).toBeCloseTo(0.057560333, 8);
  });
});
