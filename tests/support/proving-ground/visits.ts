import type { Chance } from './chance.ts';
import { happens } from './chance.ts';
import type { Profile } from './rope-world.ts';
import { drawSlips, travelOf } from './travel.ts';
import type { Travel } from './travel.ts';

export interface Cut {
  readonly end: 'A' | 'B';
  readonly length: number;
  readonly recorded: boolean;
}

/** One inspection: when, along which way, with which gain. */
export interface Visit {
  readonly id: string;
  readonly date: string;
  readonly years: number;
  readonly step: number;
  readonly travel: Travel;
  readonly statedDirection: boolean;
  readonly gain: number;
  readonly faultGain: number;
  readonly zero: number;
  readonly drift: number;
  readonly noise: number;
  /** Cut made before this inspection. */
  readonly cut: Cut | null;
  /** What the file stands on between readings where the head lost the rope. */
  readonly dropouts: readonly { readonly from: number; readonly to: number }[];
}

const FIRST_DAY = Date.parse('2018-03-01');
const DAY = 86_400_000;

export function drawVisits(chance: Chance, profile: Profile, rope: { length: number; loop: boolean; count: number; step: number }): Visit[] {
  const visits: Visit[] = [];
  let years = 0;
  let cutA = 0;
  let cutB = 0;
  for (let i = 0; i < rope.count; i += 1) {
    if (i > 0) years += Math.round(365.25 * chance.between(0.5, 1.5)) / 365.25;
    const cut = i > 0 && !rope.loop && profile.travel === 'hard' && happens(chance, 0.2) ? { end: chance.pick(['A', 'B'] as const), length: Math.min(chance.between(1, 10), 0.03 * rope.length), recorded: happens(chance, 0.5) } : null;
    if (cut?.end === 'A') cutA += cut.length;
    if (cut?.end === 'B') cutB += cut.length;
    visits.push(drawVisit(chance, profile, rope, i, years, cut, cutA, cutB));
  }
  return visits;
}

function drawVisit(chance: Chance, profile: Profile, rope: { length: number; loop: boolean; step: number }, index: number, years: number, cut: Cut | null, cutA: number, cutB: number): Visit {
  const hard = profile.travel === 'hard' && index > 0;
  const reversed = hard && happens(chance, 0.25);
  const start = rope.loop ? (index === 0 ? 0 : chance.between(0, rope.length)) : cutA + chance.between(0.3, 1.5);
  const end = rope.loop ? start + rope.length * chance.between(1.0, 1.05) : rope.length - cutB - chance.between(0.3, 1.5);
  const scale = index === 0 ? 0 : chance.between(-0.005, 0.005) * (profile.travel === 'hard' ? 1 : 0.3);
  // The counter is set to nought at the start, or to about the right place, or twenty metres off.
  const label = index === 0 ? start : chance.pick([0, start - cutA, start + chance.between(-20, 20) * (profile.travel === 'hard' ? 1 : 0.05)]);
  const travel = travelOf({
    ropeFrom: start, ropeTo: end, firstReading: Math.round(1000 * (rope.loop && index > 0 ? 0 : label)) / 1000, reversed, scale,
    wander: index === 0 || happens(chance, 0.7) ? 0 : chance.between(-0.01, 0.01), slips: hard ? drawSlips(chance, end - start) : [],
  });
  const gains = profile.gains && index > 0;
  const date = new Date(FIRST_DAY + Math.round(years * 365.25) * DAY).toISOString().slice(0, 10);
  return {
    id: `visit-${index + 1}`, date, years, step: rope.step, travel, cut,
    statedDirection: reversed ? happens(chance, 0.3) : happens(chance, 0.5),
    gain: gains ? chance.between(0.85, 1.15) : 1, faultGain: gains ? chance.between(0.85, 1.15) : 1, zero: gains ? chance.between(-0.5, 0.5) : index === 0 ? chance.between(-0.5, 0.5) : 0,
    drift: chance.between(-0.15, 0.15), noise: chance.between(0.85, 1.15),
    dropouts: happens(chance, 0.2) ? [dropoutOf(chance, travel)] : [],
  };
}

function dropoutOf(chance: Chance, travel: Travel): { from: number; to: number } {
  const from = travel.firstReading + chance.between(0.1, 0.9) * (travel.lastReading - travel.firstReading);
  return { from, to: from + chance.between(0.3, 4) };
}
