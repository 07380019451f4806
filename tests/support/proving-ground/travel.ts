import type { Chance } from './chance.ts';
import { happens } from './chance.ts';

/** A length of the file over which the wheel slips: rope passes that it does not count (positive), or it counts what did not pass. */
export interface Slip {
  readonly at: number;
  readonly over: number;
  readonly size: number;
}

/** How a file's own position goes with the rope. */
export interface Travel {
  readonly reversed: boolean;
  readonly firstReading: number;
  readonly lastReading: number;
  readonly scale: number;
  readonly slips: readonly Slip[];
  /** Unwrapped rope position at a reading. Never falls (rises) on a forward (reversed) run. */
  ropeAt(reading: number): number;
}

export interface TravelWish {
  readonly ropeFrom: number;
  readonly ropeTo: number;
  readonly firstReading: number;
  readonly reversed: boolean;
  readonly scale: number;
  readonly wander: number;
  readonly slips: readonly Slip[];
}

/** Builds the way of one run. Slips are placed by reading after the start; those that would turn the motion round are spread out. */
export function travelOf(wish: TravelWish): Travel {
  const length = wish.ropeTo - wish.ropeFrom;
  const slipped = wish.slips.reduce((sum, slip) => sum + slip.size, 0);
  const span = (length - slipped - wish.wander) * (1 + wish.scale);
  const passed = (run: number): number => {
    let sum = run / (1 + wish.scale) + wish.wander * Math.sin((Math.PI * run) / span) ** 2;
    for (const slip of wish.slips) {
      const share = slip.over === 0 ? (run >= slip.at ? 1 : 0) : Math.min(1, Math.max(0, (run - slip.at) / slip.over));
      sum += slip.size * share;
    }
    return sum;
  };
  return {
    reversed: wish.reversed, firstReading: wish.firstReading, lastReading: wish.firstReading + span, scale: wish.scale,
    slips: wish.slips.map((slip) => ({ ...slip, at: slip.at + wish.firstReading })),
    ropeAt: (reading) => (wish.reversed ? wish.ropeTo - passed(reading - wish.firstReading) : wish.ropeFrom + passed(reading - wish.firstReading)),
  };
}

/** None to four slips of up to half a metre, twenty metres apart at least and away from the ends. */
export function drawSlips(chance: Chance, length: number): Slip[] {
  const slips: Slip[] = [];
  const count = happens(chance, 0.25) ? 0 : 1 + Math.floor(chance.uniform() * Math.min(3, length / 80));
  for (let i = 0; i < count; i += 1) {
    const at = chance.between(0.05, 0.95) * length;
    if (slips.some((slip) => Math.abs(slip.at - at) < 20) || at < 8 || at > length - 8) continue;
    const size = chance.between(0.02, 0.5) * (happens(chance, 0.7) ? 1 : -1);
    // A wheel that counts without rope passing does so over some length; one that misses rope may do it at once.
    slips.push({ at, size, over: size > 0 && happens(chance, 0.5) ? 0 : Math.max(1.1 * Math.abs(size), chance.between(0.1, 0.8)) });
  }
  return slips.sort((a, b) => a.at - b.at);
}
