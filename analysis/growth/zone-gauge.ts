import type { Interval } from '../rope/interval.ts';
import { unionOf } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';
import { ropePosition } from '../rope/units.ts';
import { GROWTH } from './parameters.ts';
import { relativeGains } from './relative-gain.ts';
import { runningSums } from './window-means.ts';
import { soundLengths } from './zone-series.ts';
import type { ZoneGauge } from './zone-series.ts';

/** Prepares the scans of all inspections for comparison. `places` are the lengths that may have changed and tell nothing of scale or zero. */
export function zoneGauge(surveys: readonly Survey[], places: readonly Interval<'rope'>[]): ZoneGauge {
  const { start, step, length } = surveys[0].rope;
  const reach: Interval<'rope'> = { from: start, to: ropePosition(start + step * length) };
  const joined = unionOf(places);
  const scans = surveys.map((survey) => (survey.rope.loss === null ? null : runningSums(survey.rope.loss, start, step)));
  const found = relativeGains(scans.filter((scan) => scan !== null), joined, reach);
  let next = 0;
  return { scans, gains: scans.map((scan) => (scan === null ? { gain: 1, uncertainty: GROWTH.gainUncertainty } : found[next++])), sound: soundLengths(joined, reach) };
}
