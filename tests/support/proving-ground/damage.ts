import type { Chance } from './chance.ts';
import { happens } from './chance.ts';

/** How the depth of a zone goes with time in years; `fate` is what a perfect judge would say at the newest inspection. */
export interface GrowthLaw {
  readonly fate: 'stable' | 'growing' | 'new';
  depth(years: number): number;
  /** Time at which the depth reaches `limit` if the law goes on, or null for never. */
  reaches(limit: number): number | null;
}

export interface TrueZone {
  readonly from: number;
  readonly to: number;
  readonly edge: 'trapezoid' | 'cosine' | 'asymmetric';
  readonly edgeLength: number;
  readonly kind: 'corrosion' | 'wear';
  readonly textureRatio: number;
  readonly law: GrowthLaw;
}

export interface TrueFault {
  readonly position: number;
  /** Peak over the reference noise of the rope. */
  readonly snr: number;
  readonly width: number;
  readonly sign: 1 | -1;
  /** Years; minus infinity for a fault that was always there. */
  readonly born: number;
}

/** Share of the depth at a place, 0..1, foot to foot. */
export function zoneShape(zone: TrueZone, x: number): number {
  if (x <= zone.from || x >= zone.to) return 0;
  const right = zone.edge === 'asymmetric' ? zone.edgeLength * 2 : zone.edgeLength;
  const inside = Math.min(1, (x - zone.from) / zone.edgeLength, (zone.to - x) / right);
  return zone.edge === 'cosine' ? 0.5 - 0.5 * Math.cos(Math.PI * inside) : inside;
}

/** Mean over foot to foot as a share of the depth. */
export function meanShare(zone: TrueZone): number {
  const lost = zone.edge === 'asymmetric' ? 1.5 * zone.edgeLength : zone.edgeLength;
  return 1 - lost / (zone.to - zone.from);
}

export const steady = (depth: number): GrowthLaw => ({ fate: 'stable', depth: () => depth, reaches: () => null });

/** Straight growth from a depth at time 0. */
export const straight = (depth: number, rate: number): GrowthLaw => ({ fate: 'growing', depth: (years) => depth + rate * years, reaches: (limit) => (limit - depth) / rate });

/** Growth whose rate rises with the depth. */
export const accelerating = (depth: number, rate: number): GrowthLaw => ({ fate: 'growing', depth: (years) => depth * Math.exp(rate * years), reaches: (limit) => Math.log(limit / depth) / rate });

/** Nothing until `born`, then a fixed depth. */
export const sudden = (depth: number, born: number): GrowthLaw => ({ fate: 'new', depth: (years) => (years >= born ? depth : 0), reaches: () => null });

/** Growth of one rope's places: rates share a level, each place differs by some forty percent. */
export function drawLaw(chance: Chance, ropeRate: number, years: number, newest: number, previous: number): GrowthLaw {
  const kind = chance.uniform();
  if (kind < 0.35 || years === 0) return steady(chance.between(1, 5));
  if (kind < 0.45) return sudden(chance.between(1.2, 3), (newest + previous) / 2);
  const rate = ropeRate * Math.exp(0.4 * chance.normal());
  if (kind < 0.8) return straight(chance.between(0.4, 2), rate);
  const start = chance.between(0.6, 1.5);
  return accelerating(start, Math.log(1 + (rate * years) / start) / years);
}

/** Zones from end to end with sound rope between; positions in metres of rope. */
export function drawZones(chance: Chance, from: number, to: number, law: () => GrowthLaw): TrueZone[] {
  const zones: TrueZone[] = [];
  let x = from + chance.between(5, 40);
  let worn = 0;
  for (;;) {
    const length = happens(chance, 0.2) ? chance.between(30, 90) : chance.between(5.5, 30);
    if (x + length > to - 5 || worn + length > 0.35 * (to - from)) return zones;
    zones.push({
      from: x, to: x + length, edge: chance.pick(['trapezoid', 'cosine', 'asymmetric'] as const), edgeLength: chance.between(0.03, 0.15) * length,
      kind: chance.pick(['corrosion', 'wear'] as const), textureRatio: chance.between(2, 5), law: law(),
    });
    worn += length;
    x += length + chance.between(12, 140);
  }
}
