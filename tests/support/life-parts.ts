import { completeGeometry } from '../../analysis/rope/complete-geometry.ts';
import type { Evidence } from '../../analysis/criteria/criterion.ts';
import type { MeasuredWindow } from '../../analysis/life/candidate-places.ts';
import type { Forecast } from '../../analysis/life/forecast.ts';
import type { PressingPlace } from '../../analysis/life/next-inspection.ts';
import type { PassageForecast } from '../../analysis/life/passage/forecast-passage.ts';
import { ropePosition } from '../../analysis/rope/units.ts';
import { surveyOf } from './survey-of.ts';

/** A haul rope of 30 mm and 20 m with inspections on the given days and no damage: enough for the rules that set dates. */
export function bareEvidence(...dates: readonly string[]): Evidence {
  return {
    geometry: completeGeometry({ id: 'test', diameter_mm: 30 }), application: 'haul', ropeLength: 20, loopLength: null, installed: null,
    surveys: dates.map((date) => surveyOf({ id: date, date, step: 0.02, loss: new Float64Array(1000) })), places: [], landmarks: [], events: [],
  };
}

/** A place whose low bound is the given day, without anything behind it. */
export function boundedPlace(low: string, asOf: string): PressingPlace {
  const where = { from: ropePosition(5), to: ropePosition(6) };
  const series = [{ inspection: asOf, date: asOf, trips: null, value: 1, uncertainty: 0.1, exact: false }];
  const window: MeasuredWindow = { where, series };
  const forecast: Forecast = {
    ruleSet: 'set', clause: 'clause', where, model: 'linear', basis: 'calendar', inspectionsUsed: 1, date: { low, median: null, high: null }, trips: { low: null, median: null, high: null },
    notBefore: null, reason: '', series, limit: 10, unit: '%', chance: [], band: [],
  };
  const passage: PassageForecast = { model: 'linear', low: null, median: null, high: null, notBefore: null, reason: '', band: [], probabilityBy: null, expectedWidth: null, diagnostics: null };
  return { forecast, passage, window };
}
