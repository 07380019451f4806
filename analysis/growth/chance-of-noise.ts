import { totalLength } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';
import type { GatheredFault } from './gather-faults.ts';
import type { MeasuredPlace } from './judgement.ts';

type Seen = Pick<MeasuredPlace, 'seenByNewest' | 'shownByNewest' | 'shownEarlier'>;

/** An indication that the detector gives less often than this in 100 m was something, whatever later inspections show: its tail is not wrong by so much. */
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
    // Not shown by the newest, though it looked there: `shownEarlier` can only be this one inspection or a measurement below its threshold.
    return alone && measured[i].seenByNewest && !measured[i].shownByNewest ? [rateOf(place, survey)] : [];
  }).filter((rate): rate is number => rate !== null && rate >= NEVER_NOISE);
  return places.map((place) => {
    const rate = rateOf(place, newest);
    if (rate === null || newest < 0) return null;
    const expected = (rate * totalLength(surveys[newest].covered)) / 100;
    const asStrong = strays.filter((other) => other <= rate).length;
    return Math.max(1 - Math.exp(-expected), newest === 0 ? 0 : Math.min(1, asStrong / newest));
  });
}

/** The lowest rate among the indications of one inspection: a place is as sure as its strongest. */
function rateOf(place: GatheredFault, survey: number): number | null {
  const rates = place.members.filter((member) => member.survey === survey).map((member) => member.fault.falseCallsPer100m ?? null);
  return rates.length === 0 || rates.includes(null) ? null : Math.min(...rates.map((rate) => rate!));
}
