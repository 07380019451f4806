import { profileAt } from '../rope/profile-at.ts';
import type { Survey } from '../rope/survey.ts';
import { medianAbsoluteDeviation, NORMAL_MAD } from '../signal/mad.ts';
import { median } from '../signal/median.ts';
import type { GatheredFault } from './gather-faults.ts';
import { GROWTH } from './parameters.ts';

/** One inspection's answer at a place of local faults. */
export interface FaultValue {
  readonly survey: number;
  /** Indications in breaks, by amplitude against what one break gave when the place was first seen. */
  readonly value: number;
  readonly uncertainty: number; // one sigma, breaks
  /** Found by the detector; false: measured below its threshold. */
  readonly found: boolean;
  /** Something of the size expected was there, found or not. */
  readonly present: boolean;
}

export interface FaultGauge {
  /** Scale of each scan's LF amplitudes against all others, from faults that every scan shows. */
  readonly gains: readonly number[];
  readonly repeatability: number;
}

/** LF scales and the repeatability of an amplitude, from places that several scans show with the same number of breaks. */
export function gaugeFaults(surveys: readonly Survey[], places: readonly GatheredFault[]): FaultGauge {
  const logs: { survey: number; log: number }[][] = places.flatMap((place) => {
    const single = onePerSurvey(place);
    if (single === null || single.length < 2) return [];
    const mean = single.reduce((sum, each) => sum + Math.log(Math.abs(each.amplitude)), 0) / single.length;
    return [single.map((each) => ({ survey: each.survey, log: Math.log(Math.abs(each.amplitude)) - mean }))];
  });
  const perSurvey = surveys.map((_, index) => logs.flat().filter((each) => each.survey === index).map((each) => each.log));
  const gains = perSurvey.map((values) => (values.length >= 3 ? Math.exp(median(Float64Array.from(values))) : 1));
  const rest = logs.flat().map((each) => each.log - Math.log(gains[each.survey]));
  const repeatability = rest.length >= 10 ? Math.max(0.05, NORMAL_MAD * medianAbsoluteDeviation(Float64Array.from(rest)) * Math.SQRT2) : GROWTH.amplitudeRepeatability;
  return { gains, repeatability };
}

function onePerSurvey(place: GatheredFault): { survey: number; amplitude: number }[] | null {
  const surveys = place.members.map((member) => member.survey);
  if (new Set(surveys).size !== surveys.length) return null;
  return place.members.map((member) => ({ survey: member.survey, amplitude: member.fault.amplitude }));
}

/** What every inspection that covered the place shows there, by amplitude, also below the detector's threshold. */
export function faultSeries(place: GatheredFault, surveys: readonly Survey[], gauge: FaultGauge): FaultValue[] {
  const sums = surveys.map((_, index) => place.members.filter((m) => m.survey === index).reduce((sum, m) => sum + Math.abs(m.fault.amplitude) / gauge.gains[index], 0));
  const counts = surveys.map((_, index) => place.members.filter((m) => m.survey === index).reduce((sum, m) => sum + m.fault.count.estimate, 0));
  const firstSeen = counts.findIndex((count) => count > 0);
  const perBreak = sums[firstSeen] / counts[firstSeen];
  return surveys.flatMap((survey, index): FaultValue[] => {
    const noise = (profileAt(survey.condition.faultNoise, place.where.from) ?? 0) / gauge.gains[index];
    if (counts[index] > 0) {
      const value = sums[index] / perBreak;
      return [{ survey: index, value, uncertainty: Math.hypot(gauge.repeatability * value, noise / perBreak), found: true, present: true }];
    }
    const peak = largestSwing(survey, place);
    if (peak === null) return [];
    // Midway between what chance gives in so short a length and what one break gave: nearer to which?
    const chance = 2.2 * noise;
    const present = peak / gauge.gains[index] > (perBreak + chance) / 2;
    const value = present ? peak / gauge.gains[index] / perBreak : 0;
    return [{ survey: index, value, uncertainty: Math.hypot(gauge.repeatability * value, Math.max(noise / perBreak, 0.05)), found: false, present }];
  });
}

/** Largest deviation of LF from its local median at a place; null where the place was not inspected. */
function largestSwing(survey: Survey, place: GatheredFault): number | null {
  const fault = survey.rope.fault;
  if (fault === null) return null;
  const slack = 0.03 + Math.min(0.5, profileAt(survey.mapUncertainty, place.where.from) ?? 0);
  const { start, step, length } = survey.rope;
  const first = Math.max(0, Math.floor((place.where.from - slack - start) / step));
  const end = Math.min(length, Math.ceil((place.where.to + slack - start) / step) + 1);
  const values: number[] = [];
  for (let i = first; i < end; i += 1) if (fault.valid[i] === 1) values.push(fault.values[i]);
  if (values.length < Math.max(1, GROWTH.smallestSeenShare * (end - first))) return null;
  const level = median(Float64Array.from(values));
  return values.reduce((most, value) => Math.max(most, Math.abs(value - level)), 0);
}
