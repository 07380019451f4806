import { chanceFrom, happens, whole } from './chance.ts';
import type { Chance, NoiseKind } from './chance.ts';
import { characterOf } from './character.ts';
import type { Character, CharacterKind, StrandShape } from './character.ts';
import { accelerating, drawLaw, drawZones, steady, straight } from './damage.ts';
import type { TrueFault, TrueZone } from './damage.ts';
import type { PulseModel } from './pulses.ts';
import { drawVisits } from './visits.ts';
import type { Visit } from './visits.ts';

/**
 * What a campaign asks of its ropes. `ordinary`: LMA character about equal to its noise. `featureless`: none.
 * `damage`: what is wrong with the rope and whether it grows.
 */
export interface Profile {
  readonly name: string;
  readonly inspections: readonly [number, number];
  readonly length: readonly [number, number];
  readonly character: 'ordinary' | 'featureless' | 'any';
  readonly damage: 'none' | 'zones-and-faults' | 'growing' | 'life';
  readonly loops: number;
  readonly travel: 'easy' | 'hard';
  readonly gains: boolean;
  readonly steps: readonly number[];
}

export interface Instrument {
  readonly pulse: PulseModel;
  readonly averagingLength: number;
  readonly faultScale: number;
  readonly faultOffset: number;
  readonly lossNoise: number;
  readonly lossNoiseKind: NoiseKind;
  readonly faultNoiseKind: NoiseKind;
  readonly strandShape: StrandShape;
  readonly strandSpacing: number | null;
  /** Shares of the power of LF that strands and the rope's own character have. */
  readonly strandShare: number;
  readonly characterShare: number;
  readonly strandLoss: number;
  readonly strandWander: number;
}

/** One made-up rope with everything that is true of it. SYNTHETIC. */
export interface RopeWorld {
  readonly seed: number;
  readonly profile: Profile;
  readonly length: number;
  readonly loop: boolean;
  readonly lossCharacter: Character;
  readonly lossCharacterSize: number;
  readonly faultCharacter: Character;
  readonly instrument: Instrument;
  readonly zones: readonly TrueZone[];
  readonly faults: readonly TrueFault[];
  readonly visits: readonly Visit[];
}

export function drawWorld(seed: number, profile: Profile): RopeWorld {
  const chance = chanceFrom(seed, 1);
  const loop = happens(chance, profile.loops);
  const length = chance.between(...profile.length);
  const count = whole(chance, ...profile.inspections);
  const step = Math.max(...profile.steps) > 0 ? chance.pick(profile.steps) : 0.005;
  const visits = drawVisits(chance, profile, { length, loop, count, step });
  const instrument = drawInstrument(chance, profile);
  const kind: CharacterKind = profile.character === 'featureless' ? 'none' : chance.pick(['first-order', 'smooth', 'steps'] as const);
  const scale = kind === 'steps' ? chance.between(0.5, 3) : chance.between(0.15, 1.2);
  return {
    seed, profile, length, loop, instrument, visits,
    lossCharacter: characterOf(kind, chanceFrom(seed, 2), length, scale, loop),
    lossCharacterSize: kind === 'none' ? 0 : instrument.lossNoise * (profile.character === 'ordinary' ? chance.between(0.8, 1.3) : chance.between(0.3, 1.5)),
    faultCharacter: characterOf(profile.character === 'featureless' ? 'none' : 'first-order', chanceFrom(seed, 3), length, 0.02, loop),
    ...drawDamage(seed, profile, instrument, { length, step, visits }),
  };
}

function drawInstrument(chance: Chance, profile: Profile): Instrument {
  const locked = happens(chance, 0.15);
  const character = profile.character === 'featureless' ? 0 : chance.between(0, 0.3);
  return {
    pulse: chance.pick(['gauss', 'lorentz', 'coil', 'gauss-slope', 'hat', 'squared-lorentz'] as const),
    averagingLength: chance.pick([0.2, 0.3, 0.3, 0.3, 0.4]),
    faultScale: chance.pick([0.004, 0.9, 14, 700]), faultOffset: happens(chance, 0.6) ? 0 : chance.between(-2, 2),
    lossNoise: chance.between(0.04, 0.2), lossNoiseKind: chance.pick(['normal', 'laplace', 'heavy'] as const), faultNoiseKind: chance.pick(['normal', 'normal', 'heavy', 'pink'] as const),
    strandShape: chance.pick(['triangle', 'rectified', 'saw', 'pulse'] as const), strandSpacing: locked ? null : chance.pick([0.028, 0.0342, 0.0433, 0.055]),
    strandShare: locked ? 0 : chance.between(0.05, 0.65), characterShare: character, strandLoss: locked ? 0 : chance.between(0, 0.1), strandWander: chance.between(0, 0.25),
  };
}

function drawDamage(seed: number, profile: Profile, instrument: Instrument, rope: { length: number; step: number; visits: readonly Visit[] }): { zones: TrueZone[]; faults: TrueFault[] } {
  if (profile.damage === 'none') return { zones: [], faults: [] };
  const chance = chanceFrom(seed, 4);
  const newest = rope.visits[rope.visits.length - 1].years;
  const previous = rope.visits.length > 1 ? rope.visits[rope.visits.length - 2].years : 0;
  const span = newest - rope.visits[0].years;
  const zoneRate = chance.between(0.4, 1.5);
  // Most places of a rope follow one law. By the newest inspection a place has lost some two to nine percent more, whatever the time between.
  const lifeRate = chance.between(1.5, 6) / Math.max(1, span);
  const ropeLaw = happens(chance, 0.5);
  const lifeLaw = () => {
    const rate = lifeRate * Math.exp(0.4 * chance.normal());
    const start = chance.between(0.5, 1.5);
    const law = happens(chance, 0.8) ? ropeLaw : !ropeLaw;
    return law ? straight(start, rate) : accelerating(start, Math.log(1 + (rate * span) / start) / Math.max(1, span));
  };
  const law = profile.damage === 'life' ? lifeLaw
    : profile.damage === 'growing' ? () => drawLaw(chance, zoneRate, span, newest, previous)
    : () => steady(chance.between(0.85, 7));
  const zones = drawZones(chance, 8, rope.length - 8, law);
  const faults: TrueFault[] = [];
  const sign = chance.pick([1, -1] as const);
  const width = Math.max(chance.between(0.012, 0.032), 1.5 * rope.step);
  // A forecast of loss is scored on zones alone: breaks inside their windows would be another measure.
  const apart = (x: number) => profile.damage !== 'life' || !zones.some((zone) => x > zone.from - 2 && x < zone.to + 2);
  const sparse = profile.damage === 'life' ? 40 : 14;
  for (let x = chance.between(2, 10); x < rope.length - 2; x += chance.between(0.5, sparse)) {
    const low = profile.damage === 'growing' ? 7 : 4;
    const born = profile.damage === 'growing' && happens(chance, 0.3) ? (happens(chance, 0.5) ? (newest + previous) / 2 : chance.between(rope.visits[0].years, newest)) : -Infinity;
    if (apart(x)) faults.push({ position: x, snr: happens(chance, 0.35) && low < 6 ? chance.between(4, 6) : chance.between(Math.max(6, low), 25), width: width * chance.between(0.85, 1.15), sign, born });
  }
  return { zones, faults: instrument.pulse === 'lorentz' ? faults.filter((each, i) => i === 0 || each.position - faults[i - 1].position > 0.8) : faults };
}
