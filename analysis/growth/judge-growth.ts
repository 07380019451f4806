import type { Checkpoint } from '../rope/checkpoint.ts';
import type { CutOff } from '../rope/cut-off.ts';
import { complementOf } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import { profileAt } from '../rope/profile-at.ts';
import type { Survey } from '../rope/survey.ts';
import { ropePosition } from '../rope/units.ts';
import { chancesOfNoise } from './chance-of-noise.ts';
import { adjustedPValues } from './false-discovery.ts';
import { faultSeries, gaugeFaults } from './fault-series.ts';
import { gatherFaults } from './gather-faults.ts';
import type { GatheredFault } from './gather-faults.ts';
import { gatherZones } from './gather-zones.ts';
import type { GatheredZone } from './gather-zones.ts';
import { changeOf, rateByTrips, standsOut, stateOf } from './judgement.ts';
import type { MeasuredPlace } from './judgement.ts';
import { GROWTH, yearOf } from './parameters.ts';
import type { Place, SeriesPoint } from './place.ts';
import { zoneGauge } from './zone-gauge.ts';
import { zoneSeries } from './zone-series.ts';
import type { ZoneGauge } from './zone-series.ts';

export interface GrowthContext {
  readonly diameterMm: number | null;
  readonly loopLength: number | null;
  /** Lengths that are no longer part of the rope. */
  readonly cutOffs?: readonly CutOff[];
}

/**
 * Joins the faults and zones of all inspections into places and judges each at the newest inspection.
 * `surveys` oldest first, on one rope axis. The number of places looked at is taken into account (false discovery rate).
 */
export async function judgeGrowth(surveys: readonly Survey[], context: GrowthContext, checkpoint: Checkpoint): Promise<Place[]> {
  if (surveys.length === 0) return [];
  await checkpoint('joining places', 0);
  const link = context.diameterMm === null ? GROWTH.faultLink : (6 * context.diameterMm) / 1000;
  const zones = gatherZones(surveys, (survey, at) => profileAt(survey.mapUncertainty, at) ?? 0);
  const faults = gatherFaults(surveys, link);
  await checkpoint('measuring zones', 0.3);
  const gauge = zoneGauge(surveys, zones.flatMap((zone) => zone.members.map((member) => member.zone.where)));
  const measuredZones = zones.map((zone, index) => measureZone(zone, index, surveys, gauge));
  await checkpoint('measuring faults', 0.7);
  const faultScale = gaugeFaults(surveys, faults);
  const measuredFaults = faults.map((fault, index) => measureFault(fault, index, surveys, faultScale));
  const chances = chancesOfNoise(faults, measuredFaults, surveys);
  measuredFaults.forEach((each, index) => { measuredFaults[index] = { ...each, chanceOfNoise: chances[index] }; });
  return judge([...measuredZones, ...measuredFaults].map((each) => ({ ...each, cutOff: cutOffOf(each.place.where, context.cutOffs ?? []) })));
}

function cutOffOf(where: Interval<'rope'>, cutOffs: readonly CutOff[]): string | null {
  const middle = (where.from + where.to) / 2;
  return cutOffs.find((each) => middle >= each.where.from && middle < each.where.to)?.date ?? null;
}

function measureZone(zone: GatheredZone, index: number, surveys: readonly Survey[], gauge: ZoneGauge): Measured {
  const floor = surveys.map((survey) => ownUncertainty(survey, zone));
  const values = zoneSeries(zone.where, gauge, floor);
  const newest = surveys.length - 1;
  const last = values.find((value) => value.survey === newest);
  const memberOf = (survey: number) => zone.members.some((member) => member.survey === survey);
  const shows = (value: { survey: number; value: number; uncertainty: number }) => memberOf(value.survey) || (standsOut(value.value, value.uncertainty) && value.value > 2 * GROWTH.smallestZoneChange);
  const points = values.map((value) => ({ t: yearOf(surveys[value.survey].date), value: value.value, uncertainty: value.uncertainty }));
  return {
    place: {
      id: `Z${index + 1}`, subject: 'zone', where: zone.where,
      members: zone.members.map((member) => ({ inspection: surveys[member.survey].id, ref: member.zone.id })),
      series: values.map((value) => seriesPoint(surveys[value.survey], value.value, value.uncertainty)),
    },
    points, growthPoints: points,
    seenByNewest: last !== undefined, shownByNewest: last !== undefined && shows(last),
    shownEarlier: values.some((value) => value.survey !== newest && shows(value)),
    coveredEarlier: values.some((value) => value.survey !== newest),
    smallestChange: GROWTH.smallestZoneChange, chanceOfNoise: null, bound: boundOf(zone.where, surveys), doubt: doubtOf(zone.where, surveys),
  };
}

const boundAt = (survey: Survey, where: Interval<'rope'>): number => profileAt(survey.mapUncertainty, (where.from + where.to) / 2) ?? 0;

function boundOf(where: Interval<'rope'>, surveys: readonly Survey[]): number {
  const bounds = surveys.map((survey) => boundAt(survey, where));
  const newest = bounds.pop() ?? 0;
  return bounds.length === 0 ? 0 : Math.hypot(newest, Math.max(...bounds));
}

/** An earlier inspection left rope unseen within the bound of position: what is called new may have stood there. */
function doubtOf(where: Interval<'rope'>, surveys: readonly Survey[]): string {
  const bounds = surveys.map((survey) => boundAt(survey, where));
  const doubtful = surveys.slice(0, -1).flatMap((survey, i) => {
    const bound = Math.hypot(bounds[i], bounds[surveys.length - 1]);
    const about = { from: ropePosition(where.from - bound), to: ropePosition(where.to + bound) };
    return survey.covered.length > 0 && complementOf(survey.covered, about).length > 0 ? [{ date: survey.date.slice(0, 10), bound }] : [];
  });
  if (doubtful.length === 0) return '';
  const bound = Math.max(...doubtful.map((each) => each.bound));
  return `; that of ${doubtful.map((each) => each.date).join(', ')} left rope unseen within the bound of position here (${bound.toFixed(2)} m), where it may have stood`;
}

type Measured = Omit<MeasuredPlace, 'cutOff'>;

/** Uncertainty of a zone's mean where no sound length tells it: what the zone finder itself claims, else an instrument's repeatability. */
function ownUncertainty(survey: Survey, zone: GatheredZone): number {
  const own = zone.members.find((member) => survey.condition.zones.includes(member.zone));
  return survey.repeatability.lossPercent ?? (own ? own.zone.uncertaintyPercent / 2 : 0.25);
}

function measureFault(fault: GatheredFault, index: number, surveys: readonly Survey[], scale: ReturnType<typeof gaugeFaults>): Measured {
  const values = faultSeries(fault, surveys, scale);
  const newest = surveys.length - 1;
  const last = values.find((value) => value.survey === newest);
  const points = values.map((value) => ({ t: yearOf(surveys[value.survey].date), value: value.value, uncertainty: value.uncertainty }));
  const first = values.findIndex((value) => value.present);
  return {
    place: {
      id: `F${index + 1}`, subject: 'fault', where: fault.where,
      members: fault.members.map((member) => ({ inspection: surveys[member.survey].id, ref: member.fault.id })),
      series: values.map((value) => seriesPoint(surveys[value.survey], value.value, value.uncertainty)),
    },
    points, growthPoints: points.slice(Math.max(0, first)),
    seenByNewest: last !== undefined, shownByNewest: last !== undefined && last.present,
    shownEarlier: values.some((value) => value.survey !== newest && value.present),
    coveredEarlier: values.some((value) => value.survey !== newest),
    chanceOfNoise: null, bound: boundOf(fault.where, surveys), doubt: doubtOf(fault.where, surveys),
    smallestChange: Math.max(0.5, GROWTH.smallestFaultGrowth * (values[Math.max(0, first)]?.value ?? 1)),
  };
}

function seriesPoint(survey: Survey, value: number, uncertainty: number): SeriesPoint {
  return { inspection: survey.id, date: survey.date, trips: survey.trips, value, uncertainty };
}

function judge(measured: readonly MeasuredPlace[]): Place[] {
  const changes = measured.map(changeOf);
  const tested = changes.flatMap((change, index) => (change.pValue === null ? [] : [{ index, pValue: change.pValue }]));
  const adjusted = adjustedPValues(tested.map((each) => each.pValue));
  const significant = new Set(tested.filter((_, i) => adjusted[i] <= GROWTH.falseDiscoveryRate).map((each) => each.index));
  return measured.map((each, index) => {
    const change = changes[index];
    const judged = stateOf(each, change, significant.has(index));
    const rate = judged.state === 'not-found' || each.bound > GROWTH.widestBound ? null : change.rate;
    return {
      ...each.place, ...judged, ratePerYear: rate?.perYear ?? null, rateLow: rate?.low ?? null, rateHigh: rate?.high ?? null, pValue: change.pValue,
      tripRate: rate === null ? null : rateByTrips(each.place.series.slice(-each.growthPoints.length)),
    };
  });
}
