import { labRandom } from './lab-random.ts';
import type { LabRandom } from './lab-random.ts';
import type { PulseForm } from './lab-pulses.ts';
import type { LabConditions, LabFault, LabZone } from './lab-trace.ts';

/** Draws a whole rope: instrument, noise, drift, faults, zones. `sound` leaves out every fault and zone. */
export function drawConditions(seed: number, sound = false): LabConditions {
  const random = labRandom(seed * 7919 + 13);
  const step = random.pick([0.001, 0.002, 0.003, 0.005, 0.005, 0.005, 0.0075, 0.01]);
  const length = Math.min(random.between(150, 900), 250_000 * step);
  const strandSpacing = random.pick([null, 0.0433, 0.035, 0.06, 0.0325, 0.0525]);
  const conditions: LabConditions = {
    seed, start: random.between(-5, 40), length, step, averagingLength: random.pick([0.15, 0.3, 0.3, 0.3, 0.45]),
    strandSpacing, strandShare: strandSpacing === null ? 0 : random.between(0.1, 0.75), phaseWander: random.between(0, 0.35), harmonicShare: random.between(0, 0.5),
    flickerShare: random.uniform() < 0.5 ? 0 : random.between(0, 0.5), faultScale: random.pick([0.002, 0.35, 12, 900]), faultOffset: random.between(-2, 2),
    lossNoise: random.between(0.05, 0.3), lossFlicker: random.between(0, 0.06), lossStrand: random.between(0, 0.2),
    drift: random.between(-0.05, 0.05), driftWave: random.between(0, 0.08), lossOffset: random.between(-3, 3), faults: [], zones: [], gaps: [],
  };
  if (random.uniform() < 0.3) {
    const from = conditions.start + random.between(0.1, 0.8) * length;
    conditions.gaps.push({ from, to: from + random.between(0.5, 8) });
  }
  if (sound) return conditions;
  drawZones(conditions, random);
  drawFaults(conditions, random);
  return conditions;
}

function drawZones(c: LabConditions, random: LabRandom): void {
  let x = c.start + random.between(4, 30);
  const end = c.start + c.length - 4;
  let worn = 0;
  while (x < end) {
    const length = random.uniform() < 0.25 ? random.between(40, 120) : random.between(5, 30);
    if (x + length > end || worn + length > 0.4 * c.length) break;
    const zone: LabZone = {
      from: x, to: x + length, kind: random.pick(['corrosion', 'wear'] as const), depth: random.between(1, 6),
      edge: random.pick(['ramp', 'cosine', 'step'] as const), edgeLength: random.between(0.05, 0.25) * length, texture: random.between(2, 6),
    };
    if (!c.gaps.some((gap) => gap.from < zone.to + 2 && gap.to > zone.from - 2)) {
      c.zones.push(zone);
      worn += length;
    }
    x += length + random.between(6, 120);
  }
}

const FORMS: readonly PulseForm[] = ['axial', 'axial', 'radial', 'bell', 'bell-slope', 'coil', 'coil-difference'];

function drawFaults(c: LabConditions, random: LabRandom): void {
  const form = random.pick(FORMS);
  const sign = random.pick([1, -1]);
  const mixed = random.uniform() < 0.2;
  for (let x = c.start + random.between(1, 6); x < c.start + c.length - 1; x += random.between(0.4, 16)) {
    if (c.gaps.some((gap) => x > gap.from - 0.3 && x < gap.to + 0.3)) continue;
    const fault: LabFault = { position: x, snr: random.uniform() < 0.4 ? random.between(4, 6) : random.between(6, 30), r: 0, form, sign: mixed ? random.pick([1, -1]) : sign };
    // Widths at half height of 10 to 40 mm, but never less than one sample.
    fault.r = Math.max(random.between(0.01, 0.04), c.step) / 0.768;
    c.faults.push(fault);
  }
}

/** One long rope as it comes: a break every 25 m or so and a zone every 150 m. */
export function longConditions(step: number, samples: number, seed = 5): LabConditions {
  const random = labRandom(seed);
  const conditions: LabConditions = {
    seed, start: 0, length: samples * step, step, averagingLength: 0.3, strandSpacing: 0.0433, strandShare: 0.4, phaseWander: 0.15, harmonicShare: 0.3,
    flickerShare: 0, faultScale: 1, faultOffset: 0, lossNoise: 0.15, lossFlicker: 0.02, lossStrand: 0.1, drift: 0.02, driftWave: 0.05, lossOffset: 0.4, faults: [], zones: [], gaps: [],
  };
  for (let x = 10; x < conditions.length - 10; x += random.between(5, 45)) {
    conditions.faults.push({ position: x, snr: random.between(4, 25), r: Math.max(random.between(0.012, 0.03), step) / 0.768, form: 'axial', sign: 1 });
  }
  for (let x = 20; x < conditions.length - 60; x += random.between(60, 240)) {
    const length = random.between(6, 40);
    conditions.zones.push({ from: x, to: x + length, kind: random.pick(['corrosion', 'wear'] as const), depth: random.between(1, 5), edge: 'ramp', edgeLength: 0.15 * length, texture: 3 });
  }
  return conditions;
}
