import { chanceFrom, noiseOf } from './chance.ts';
import { strandValue } from './character.ts';
import { zoneShape } from './damage.ts';
import { pulse, reachOf } from './pulses.ts';
import type { RopeWorld } from './rope-world.ts';
import type { Visit } from './visits.ts';

/** One file's readings, loss positive, LF in the instrument's unit. */
export interface Recorded {
  readonly readings: Float64Array;
  readonly loss: Float64Array;
  readonly fault: Float64Array;
  readonly silent: Uint8Array;
  /** Faults that this file holds with their own reading and the peak that its samples show over the noise there. */
  readonly shown: readonly { readonly fault: number; readonly reading: number; readonly snr: number }[];
}

const FINE = 0.01;

/** SYNTHETIC: what the world's instrument shows at one visit. */
export function recordScan(world: RopeWorld, visit: Visit): Recorded {
  const { travel, step } = visit;
  const count = Math.max(2, Math.floor((travel.lastReading - travel.firstReading) / step));
  const readings = Float64Array.from({ length: count }, (_, i) => travel.firstReading + i * step);
  const rope = Float64Array.from(readings, (reading) => travel.ropeAt(reading));
  const index = world.visits.indexOf(visit);
  const loss = lossOf(world, visit, rope, index);
  const { fault, shown } = faultOf(world, visit, readings, rope, index);
  const silent = new Uint8Array(count);
  for (const gap of visit.dropouts) for (let i = 0; i < count; i += 1) if (readings[i] >= gap.from && readings[i] < gap.to) silent[i] = 1;
  return { readings, loss, fault, silent, shown: shown.filter(({ reading }) => !visit.dropouts.some((gap) => reading > gap.from - 0.3 && reading < gap.to + 0.3)) };
}

const wrapped = (world: RopeWorld, at: number): number => (world.loop ? at - Math.floor(at / world.length) * world.length : at);

function lossOf(world: RopeWorld, visit: Visit, rope: Float64Array, index: number): Float64Array {
  const { instrument } = world;
  const truth = averagedTruth(world, visit.years);
  const noise = noiseOf(instrument.lossNoiseKind, chanceFrom(world.seed, 100 + index), rope.length);
  const out = new Float64Array(rope.length);
  for (let i = 0; i < rope.length; i += 1) {
    const at = wrapped(world, rope[i]);
    const strand = instrument.strandSpacing === null ? 0 : instrument.strandLoss * strandValue(instrument.strandShape, at / instrument.strandSpacing);
    const real = truth(at) + world.lossCharacterSize * world.lossCharacter.at(at) + strand;
    out[i] = visit.gain * real + visit.zero + (visit.drift * i) / rope.length + visit.noise * instrument.lossNoise * noise[i];
  }
  return out;
}

/** Loss of all zones meant over the averaging length, from a fine running sum. */
function averagedTruth(world: RopeWorld, years: number): (at: number) => number {
  const margin = 2;
  const count = Math.ceil((world.length + 2 * margin) / FINE);
  const sums = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) {
    const at = wrapped(world, (i + 0.5) * FINE - margin);
    let loss = 0;
    for (const zone of world.zones) if (at > zone.from && at < zone.to) loss += zone.law.depth(years) * zoneShape(zone, at);
    sums[i + 1] = sums[i] + loss * FINE;
  }
  const integral = (at: number): number => {
    const place = Math.min(Math.max((at + margin) / FINE, 0), count - 1e-9);
    const low = Math.floor(place);
    return sums[low] + (place - low) * (sums[low + 1] - sums[low]);
  };
  const half = world.instrument.averagingLength / 2;
  return (at) => (integral(at + half) - integral(at - half)) / (2 * half);
}

function textureAt(world: RopeWorld, at: number, years: number): number {
  let ratio = 1;
  for (const zone of world.zones) {
    if (zone.kind !== 'corrosion' || at <= zone.from || at >= zone.to || zone.law.depth(years) < 0.3) continue;
    ratio += (zone.textureRatio - 1) * Math.min(1, zone.law.depth(years)) * zoneShape(zone, at);
  }
  return ratio;
}

function faultOf(world: RopeWorld, visit: Visit, readings: Float64Array, rope: Float64Array, index: number): { fault: Float64Array; shown: Recorded['shown'] } {
  const { instrument } = world;
  const chance = chanceFrom(world.seed, 200 + index);
  const noise = noiseOf(instrument.faultNoiseKind, chance, rope.length);
  const white = Math.sqrt(1 - instrument.strandShare - instrument.characterShare);
  const out = new Float64Array(rope.length);
  let wander = chance.uniform();
  for (let i = 0; i < rope.length; i += 1) {
    const at = wrapped(world, rope[i]);
    out[i] = white * visit.noise * noise[i] * textureAt(world, at, visit.years) + Math.sqrt(instrument.characterShare) * world.faultCharacter.at(at);
    if (instrument.strandSpacing === null) continue;
    wander += instrument.strandWander * Math.sqrt(visit.step) * chance.normal() * 0.16;
    out[i] += Math.sqrt(instrument.strandShare) * strandValue(instrument.strandShape, rope[i] / instrument.strandSpacing + wander);
  }
  const shown = addFaults(world, visit, readings, rope, out);
  for (let i = 0; i < out.length; i += 1) out[i] = instrument.faultScale * (visit.faultGain * out[i] + instrument.faultOffset);
  return { fault: out, shown };
}

function addFaults(world: RopeWorld, visit: Visit, readings: Float64Array, rope: Float64Array, out: Float64Array): { fault: number; reading: number; snr: number }[] {
  const { instrument } = world;
  const shown: { fault: number; reading: number; snr: number }[] = [];
  world.faults.forEach((fault, number) => {
    if (fault.born > visit.years) return;
    const reach = reachOf(instrument.pulse, fault.width);
    const texture = textureAt(world, fault.position, visit.years);
    const local = Math.sqrt((1 - instrument.strandShare - instrument.characterShare) * (visit.noise * texture) ** 2 + instrument.strandShare + instrument.characterShare);
    // A wire's pulse has one size at every visit; a zone that roughens drowns it.
    const height = fault.snr * Math.sqrt((1 - instrument.strandShare - instrument.characterShare) * textureAt(world, fault.position, world.visits[0].years) ** 2 + instrument.strandShare + instrument.characterShare);
    const turns = world.loop ? [0, world.length, 2 * world.length] : [0];
    for (const turn of turns) {
      const at = fault.position + turn;
      let peak = 0;
      let best = -1;
      let nearest = Infinity;
      for (let i = firstNear(rope, at - reach, at + reach); i >= 0 && i < rope.length; i += 1) {
        const x = rope[i] - at;
        if (Math.abs(x) > reach) break;
        const value = height * pulse(instrument.pulse, visit.travel.reversed ? -x : x, fault.width);
        out[i] += fault.sign * value;
        peak = Math.max(peak, Math.abs(value));
        if (Math.abs(x) < nearest) {
          nearest = Math.abs(x);
          best = i;
        }
      }
      if (best > 2 && best < rope.length - 3 && nearest < visit.step) shown.push({ fault: number, reading: readings[best] + (visit.travel.reversed ? 1 : -1) * (rope[best] - at), snr: peak / local });
    }
  });
  return shown;
}

/** Index of the first sample between two rope positions, by halving; the way is monotone. -1 where there is none. */
function firstNear(rope: Float64Array, low: number, high: number): number {
  const rising = rope[rope.length - 1] > rope[0];
  let from = 0;
  let to = rope.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (rising ? rope[middle] < low : rope[middle] > high) from = middle + 1;
    else to = middle;
  }
  return from < rope.length && rope[from] >= low && rope[from] <= high ? from : -1;
}
