import { totalLength } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';
import type { GatheredFault } from './gather-faults.ts';
import type { MeasuredPlace } from './judgement.ts';

type Seen = Pick<MeasuredPlace, 'seenByNewest' | 'shownByNewest'>;

/** An indication that the detector expects less often than this on the whole rope was something, whatever later inspections show: its tail is not wrong by so much. */
const NEVER_NOISE = 1e-7;

/**
 * For every place of faults the chance that noise gives an indication as strong somewhere on the rope; null where the newest
 * inspection does not show it or does not say how often noise does. Two estimates, the larger counts: the detector's own rate at that
 * strength over the length searched, and what the earlier inspections really gave: an indication that no other inspection shows
 * was none, for a broken wire does not heal. `places` and `measured` go together; `surveys` oldest first.
 */
export function chancesOfNoise(places: readonly GatheredFault[], measured: readonly Seen[], surveys: readonly Survey[]): (number | null)[] {
  const newest = surveys.length - 1;
  const strays = places.flatMap((place, i) => {
    const survey = place.members[0].survey;
    const alone = survey < newest && place.members.every((member) => member.survey === survey);
    return alone && measured[i].seenByNewest && !measured[i].shownByNewest ? [expectedOf(place, surveys[survey], survey)] : [];
  }).filter((expected): expected is number => expected !== null && expected >= NEVER_NOISE);
  return places.map((place) => {
    const expected = newest < 0 ? null : expectedOf(place, surveys[newest], newest);
    if (expected === null) return null;
    const asStrong = strays.filter((other) => other <= expected).length;
    return Math.max(1 - Math.exp(-expected), newest === 0 ? 0 : Math.min(1, asStrong / newest));
  });
}

/** Indications as strong that noise is expected to give one inspection; a place is as sure as its strongest. Null where the detector does not say. */
function expectedOf(place: GatheredFault, survey: Survey, index: number): number | null {
  const rates = place.members.filter((member) => member.survey === index).map((member) => member.fault.falseCallsPer100m ?? null);
  if (rates.length === 0 || rates.includes(null)) return null;
  return (Math.min(...rates.map((rate) => rate!)) * lengthLike(place, survey)) / 100;
}

/** Length of rope on which the rate holds: where corrosion roughens LF the detector's threshold is raised, and its rate is that of such lengths only. */
function lengthLike(place: GatheredFault, survey: Survey): number {
  const middle = (place.where.from + place.where.to) / 2;
  const corroded = survey.condition.zones.filter((zone) => zone.kind === 'corrosion').map((zone) => zone.where);
  return totalLength(corroded.some((each) => middle >= each.from && middle < each.to) ? corroded : survey.covered);
}
