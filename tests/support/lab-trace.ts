import type { Trace } from '../../analysis/rope/trace.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';
import { flickerNoise, labRandom } from './lab-random.ts';
import type { LabRandom } from './lab-random.ts';
import { pulseValue } from './lab-pulses.ts';
import type { PulseForm } from './lab-pulses.ts';

export interface LabFault { position: number; snr: number; r: number; form: PulseForm; sign: number }
export interface LabZone { from: number; to: number; kind: 'corrosion' | 'wear'; depth: number; edge: 'ramp' | 'cosine' | 'step'; edgeLength: number; texture: number }

/** Everything that makes one laboratory trace. Positions and lengths in metres, losses in percent. */
export interface LabConditions {
  seed: number; start: number; length: number; step: number; averagingLength: number;
  strandSpacing: number | null; strandShare: number; phaseWander: number; harmonicShare: number;
  flickerShare: number; faultScale: number; faultOffset: number;
  lossNoise: number; lossFlicker: number; lossStrand: number; drift: number; driftWave: number; lossOffset: number;
  faults: LabFault[]; zones: LabZone[]; gaps: { from: number; to: number }[];
}

/** A trace made from stated conditions. SYNTHETIC: it shows no rope. The peak of a fault is snr times the RMS of all LF noise where it lies. */
export function makeLabTrace(c: LabConditions): Trace<'measured'> {
  const random = labRandom(c.seed);
  const count = Math.round(c.length / c.step);
  const fault = faultTrace(c, random, count);
  const loss = lossTrace(c, random, count);
  const valid = new Uint8Array(count).fill(1);
  for (const gap of c.gaps) valid.fill(0, Math.max(0, Math.ceil((gap.from - c.start) / c.step)), Math.max(0, Math.ceil((gap.to - c.start) / c.step)));
  for (let i = 0; i < count; i += 1) if (!valid[i]) { fault[i] = NaN; loss[i] = 12345; }
  return {
    start: measuredPosition(c.start), step: c.step, length: count, averagingLength: c.averagingLength, faultUnit: 'mV', speed: null,
    fault: { values: fault, valid }, loss: { values: loss, valid: valid.slice() },
  };
}

/** Shape of a zone, 0..1, at a position. The stated extent runs from foot to foot. */
export function zoneShape(zone: LabZone, x: number): number {
  if (x < zone.from || x > zone.to) return 0;
  if (zone.edge === 'step') return 1;
  const inside = Math.min(1, Math.min(x - zone.from, zone.to - x) / zone.edgeLength);
  return zone.edge === 'ramp' ? inside : (1 - Math.cos(Math.PI * inside)) / 2;
}

/** Mean of the true loss over the stated extent. */
export function zoneMean(zone: LabZone): number {
  if (zone.edge === 'step') return zone.depth;
  return zone.depth * (1 - zone.edgeLength / (zone.to - zone.from));
}

export function textureAt(c: LabConditions, x: number): number {
  let texture = 1;
  for (const zone of c.zones) if (zone.kind === 'corrosion') texture += (zone.texture - 1) * Math.sqrt(zoneShape(zone, x));
  return texture;
}

function faultTrace(c: LabConditions, random: LabRandom, count: number): Float64Array {
  const out = new Float64Array(count);
  const flicker = flickerNoise(random, count, 400 / c.step / 100);
  const rough = Math.sqrt(1 - c.strandShare);
  let phase = random.between(0, 6.28);
  for (let i = 0; i < count; i += 1) {
    const x = c.start + i * c.step;
    const noise = Math.sqrt(1 - c.flickerShare) * random.normal() + Math.sqrt(c.flickerShare) * flicker[i];
    out[i] = rough * noise * textureAt(c, x);
    if (c.strandSpacing === null) continue;
    phase += (2 * Math.PI * c.step) / c.strandSpacing + c.phaseWander * Math.sqrt(c.step) * random.normal();
    out[i] += Math.sqrt(2 * c.strandShare / (1 + c.harmonicShare ** 2)) * (Math.sin(phase) + c.harmonicShare * Math.sin(2 * phase + 1));
  }
  for (const each of c.faults) {
    const noise = Math.sqrt(rough ** 2 * textureAt(c, each.position) ** 2 + (c.strandSpacing === null ? 0 : c.strandShare));
    const reach = Math.ceil((6 * each.r) / c.step);
    const centre = Math.round((each.position - c.start) / c.step);
    for (let i = Math.max(0, centre - reach); i <= Math.min(count - 1, centre + reach); i += 1) {
      out[i] += each.sign * each.snr * noise * pulseValue(each.form, c.start + i * c.step - each.position, each.r);
    }
  }
  for (let i = 0; i < count; i += 1) out[i] = c.faultOffset + c.faultScale * out[i];
  return out;
}

function lossTrace(c: LabConditions, random: LabRandom, count: number): Float64Array {
  const truth = new Float64Array(count);
  for (const zone of c.zones) {
    for (let i = Math.max(0, Math.floor((zone.from - c.start) / c.step)); i <= Math.min(count - 1, Math.ceil((zone.to - c.start) / c.step)); i += 1) {
      truth[i] += zone.depth * zoneShape(zone, c.start + i * c.step);
    }
  }
  const half = Math.max(0, Math.round(c.averagingLength / c.step / 2 - 0.5));
  const sums = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) sums[i + 1] = sums[i] + truth[i];
  const flicker = flickerNoise(random, count, 50 / c.step);
  const wave = random.between(0, 6.28);
  const out = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const from = Math.max(0, i - half);
    const end = Math.min(count, i + half + 1);
    const x = i * c.step;
    const strand = c.strandSpacing === null ? 0 : c.lossStrand * Math.SQRT2 * Math.sin((2 * Math.PI * x) / c.strandSpacing);
    const drift = (c.drift * x) / 100 + c.driftWave * Math.sin((2 * Math.PI * x) / Math.max(400, c.length) + wave);
    out[i] = c.lossOffset + (sums[end] - sums[from]) / (end - from) + c.lossNoise * random.normal() + c.lossFlicker * flicker[i] + strand + drift;
  }
  return out;
}
