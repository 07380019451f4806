import { forecastPassages } from '../../analysis/life/index.ts';
import type { PassageForecast } from '../../analysis/life/index.ts';
import { observedPassage } from './degradation-sets.ts';
import type { DegradationSet } from './degradation-sets.ts';

export interface ProtocolResult {
  /** Units that pass the limit after the cut: forecast beside what was observed. */
  readonly passed: readonly { readonly unit: string; readonly forecast: PassageForecast; readonly observed: number }[];
  /** Units whose readings end before the limit. */
  readonly open: readonly { readonly unit: string; readonly forecast: PassageForecast; readonly lastReading: number }[];
  readonly medianError: number;
  readonly coverage: number;
}

/**
 * Forecasts every unit of a set from the readings up to `cut`, all units cut at the same time and learned from together: nothing of
 * any unit's future is known. Units already past `limit` at the cut are left out.
 */
export function runProtocol(set: DegradationSet, limit: number, cut: number): ProtocolResult {
  const units = [...set].map(([unit, points]) => ({ unit, points, early: points.filter((each) => each.t <= cut * (1 + 1e-9)) })).filter(({ early }) => early.every((each) => each.value < limit));
  const forecasts = forecastPassages(units.map(({ early }) => ({ points: early.map((each) => ({ ...each, uncertainty: null })) })), limit, { seed: 1 });
  const scored = units.map(({ unit, points }, i) => ({ unit, forecast: forecasts[i], observed: observedPassage(points, limit), lastReading: points[points.length - 1].t }));
  const passed = scored.flatMap(({ unit, forecast, observed }) => (observed === null ? [] : [{ unit, forecast, observed }]));
  const errors = passed.map(({ forecast, observed }) => Math.abs((forecast.median ?? Infinity) - observed) / observed).sort((a, b) => a - b);
  const inside = passed.filter(({ forecast, observed }) => forecast.low !== null && forecast.low <= observed && observed <= (forecast.high ?? Infinity)).length;
  return {
    passed, open: scored.filter(({ observed }) => observed === null),
    medianError: (errors[(errors.length - 1) >> 1] + errors[errors.length >> 1]) / 2,
    coverage: inside / passed.length,
  };
}
