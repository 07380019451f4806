import { interpolate, uncertaintyAt, wrap } from '../alignment/rope-map.ts';
import type { RopeMap } from '../alignment/rope-map.ts';
import type { Interval } from '../rope/interval.ts';
import type { MeasuredPosition, RopePosition } from '../rope/units.ts';
import { ropePosition } from '../rope/units.ts';
import type { Condition, Fault, Profile, Zone } from './condition.ts';
import { faultsOnce, zonesOnce } from './seen-twice.ts';

/**
 * The same findings on the rope. A reversed map turns intervals round and swaps the order of a pulse's peaks; on a loop
 * positions wrap, a zone across the origin becomes two, and what a run past its own start shows twice counts once. Uncertainties of place are joined with the map's in quadrature.
 */
export function conditionOnRope(condition: Condition<'measured'>, map: RopeMap): Condition<'rope'> {
  const place = placer(map);
  return {
    ...condition,
    faults: faultsOnRope(condition.faults, map, place).sort((a, b) => a.position - b.position),
    zones: zonesOnRope(condition.zones, map, place).sort((a, b) => a.where.from - b.where.from),
    faultNoise: profileOnRope(condition.faultNoise, map, place),
    smallestZoneLoss: profileOnRope(condition.smallestZoneLoss, map, place),
    smallestFaultAmplitude: profileOnRope(condition.smallestFaultAmplitude, map, place),
    texture: profileOnRope(condition.texture, map, place),
    baseline: {
      basis: condition.baseline.basis, level: profileOnRope(condition.baseline.level, map, place),
      where: condition.baseline.where === null ? null : longestOf(intervalOnRope(condition.baseline.where, map, place)),
    },
  };
}

/** Rope position of a measured one, not wrapped: the knots are taken out of the map once. */
type Place = (measured: MeasuredPosition) => number;

function placer(map: RopeMap): Place {
  const measured = map.knots.map((knot) => knot.measured);
  const rope = map.knots.map((knot) => knot.rope);
  return (at) => interpolate(measured, rope, at);
}

function faultsOnRope(faults: Condition<'measured'>['faults'], map: RopeMap, place: Place): Fault<'rope'>[] {
  const placed = faults.map((fault) => ({ found: faultOnRope(fault, map, place), at: place(fault.position) }));
  return map.loopLength === null ? placed.map((each) => each.found) : faultsOnce(placed, map.loopLength);
}

function zonesOnRope(zones: Condition<'measured'>['zones'], map: RopeMap, place: Place): Zone<'rope'>[] {
  const placed = zones.flatMap((zone) => zoneOnRope(zone, map, place).map((found) => ({ found, at: place(zone.where.from) })));
  return map.loopLength === null ? placed.map((each) => each.found) : zonesOnce(placed, map.loopLength);
}

function faultOnRope(fault: Fault<'measured'>, map: RopeMap, place: Place): Fault<'rope'> {
  return {
    ...fault, position: wrap(place(fault.position), map.loopLength) as RopePosition,
    positionUncertainty: Math.hypot(fault.positionUncertainty, uncertaintyAt(map, fault.position)),
    shape: map.reversed ? turned(fault.shape) : fault.shape,
  };
}

function turned(shape: Fault<'rope'>['shape']): Fault<'rope'>['shape'] {
  if (shape === 'single') return shape;
  return shape === 'positive-negative' ? 'negative-positive' : 'positive-negative';
}

function zoneOnRope(zone: Zone<'measured'>, map: RopeMap, place: Place): Zone<'rope'>[] {
  const pieces = intervalOnRope(zone.where, map, place);
  const mapBound = Math.max(uncertaintyAt(map, zone.where.from), uncertaintyAt(map, zone.where.to));
  return pieces.map((where, i) => ({ ...zone, id: pieces.length === 1 ? zone.id : `${zone.id}${'ab'[i] ?? i}`, where, edgeUncertainty: Math.hypot(zone.edgeUncertainty, mapBound) }));
}

/** One interval of the file on the rope: two pieces where it crosses the origin of a loop. */
function intervalOnRope({ from, to }: Interval<'measured'>, map: RopeMap, place: Place): Interval<'rope'>[] {
  const first = place(from);
  const second = place(to);
  const low = Math.min(first, second);
  const high = Math.max(first, second);
  const loop = map.loopLength;
  if (loop === null) return [{ from: ropePosition(low), to: ropePosition(high) }];
  if (high - low >= loop) return [{ from: ropePosition(0), to: ropePosition(loop) }];
  const start = wrap(low, loop);
  const end = start + (high - low);
  if (end <= loop) return [{ from: ropePosition(start), to: ropePosition(end) }];
  return [{ from: ropePosition(0), to: ropePosition(end - loop) }, { from: ropePosition(start), to: ropePosition(loop) }];
}

function longestOf(intervals: readonly Interval<'rope'>[]): Interval<'rope'> | null {
  return intervals.reduce<Interval<'rope'> | null>((best, each) => (!best || each.to - each.from > best.to - best.from ? each : best), null);
}

function profileOnRope(profile: Profile<'measured'>, map: RopeMap, place: Place): Profile<'rope'> {
  const placed = profile.positions.map((position, i) => ({ at: wrap(place(position), map.loopLength), value: profile.values[i] }));
  placed.sort((a, b) => a.at - b.at);
  return { positions: placed.map((each) => ropePosition(each.at)), values: placed.map((each) => each.value) };
}
