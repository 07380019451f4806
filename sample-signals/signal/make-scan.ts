import { axialField, poleStrengthOf } from './dipole.ts';
import { permanentTexture, strandPhase } from './permanent-texture.ts';
import { randomFrom } from './random.ts';
import { averaged, emptyGrid, valueAt } from './rope-grid.ts';
import type { RopeGrid } from './rope-grid.ts';
import { zoneShare } from './rope-plan.ts';
import type { RopePlan, ScanPlan } from './rope-plan.ts';

/** The parts of a rope that every scan shares. */
export interface MadeRope {
  readonly plan: RopePlan;
  readonly lossTexture: RopeGrid;
  readonly faultTexture: RopeGrid;
  readonly pits: RopeGrid;
  readonly phase: RopeGrid;
}

/** Readings of one scan in the order of the file. LF in millivolts, loss positive. */
export interface Scan {
  readonly readings: Float64Array;
  readonly loss: Float64Array;
  readonly fault: Float64Array;
  readonly speed: Float64Array;
  readonly ropePositions: Float64Array;
}

const GRID = 0.005;
/** Millivolts of the reference break, and of the noise that texture and strands add to every scan. */
const REFERENCE_BREAK = 110;
const PERMANENT_FAULT = 4;
const STRAND_FAULT = 5;
const STRAND_LOSS = 0.03;
/** Texture of LF in corroded rope: this many millivolts root mean square at one percent of loss, growing with its square root. */
const PITS = 13;
const REFERENCE_DIPOLE = { gap: 0.005, distance: 0.03, poleStrength: poleStrengthOf(1.8, 0.002) };

export function makeRope(plan: RopePlan): MadeRope {
  const stream = (name: string) => randomFrom(`${plan.name}/${name}`);
  return {
    plan,
    lossTexture: permanentTexture(stream('loss'), plan.length, GRID, 0.25, plan.loop),
    faultTexture: permanentTexture(stream('fault'), plan.length, GRID, 0.015, plan.loop),
    pits: permanentTexture(stream('pits'), plan.length, GRID, 0.01, plan.loop),
    phase: strandPhase(stream('strands'), plan.length, GRID, plan.strandSpacing),
  };
}

/** SYNTHETIC: what an instrument would show of the rope at the given time, from the physics of a dual-function head. */
export function makeScan(rope: MadeRope, scan: ScanPlan): Scan {
  const random = randomFrom(`${rope.plan.name}/${scan.id}`);
  const { readings, ropePositions } = travel(rope.plan, scan);
  const loss = averaged(trueLoss(rope.plan, scan.years), rope.plan.averagingLength, rope.plan.loop);
  const count = readings.length;
  const out = { readings, ropePositions, loss: new Float64Array(count), fault: new Float64Array(count), speed: new Float64Array(count) };
  let pace = 0;
  for (let i = 0; i < count; i += 1) {
    const at = ropePositions[i];
    const phase = valueAt(rope.phase, at);
    const shown = valueAt(loss, at) + rope.plan.texture * valueAt(rope.lossTexture, at) + STRAND_LOSS * Math.sin(phase);
    out.loss[i] = scan.gain * shown + scan.zero + (scan.drift * i) / count + scan.lossNoise * random.normal();
    const strands = STRAND_FAULT * (Math.sin(phase) + 0.3 * Math.sin(2 * phase + 1));
    const pits = PITS * Math.sqrt(corrosionAt(rope.plan, at, scan.years)) * valueAt(rope.pits, at);
    out.fault[i] = PERMANENT_FAULT * valueAt(rope.faultTexture, at) + strands + pits + scan.faultNoise * random.normal();
    pace = 0.995 * pace + 0.004 * random.normal();
    out.speed[i] = 0.8 + pace;
  }
  addPulses(rope.plan, scan, out);
  return out;
}

/** Readings on an even grid and the rope position under the head at each. Slips lie at readings of the file. */
function travel(plan: RopePlan, scan: ScanPlan): { readings: Float64Array; ropePositions: Float64Array } {
  const slipped = scan.slips.reduce((sum, slip) => sum + slip.size, 0);
  const count = Math.floor(((scan.passes - slipped) * (1 + scan.scaleError)) / scan.step);
  const readings = new Float64Array(count);
  const ropePositions = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    readings[i] = scan.firstReading + i * scan.step;
    let passed = (i * scan.step) / (1 + scan.scaleError);
    for (const slip of scan.slips) if (readings[i] >= slip.reading) passed += slip.size;
    const at = scan.reversed ? scan.start - passed : scan.start + passed;
    ropePositions[i] = plan.loop ? at - Math.floor(at / plan.length) * plan.length : at;
  }
  return { readings, ropePositions };
}

/** Percent of metallic area that is missing at each place, before the averaging of the head. */
export function trueLoss(plan: RopePlan, years: number): RopeGrid {
  const grid = emptyGrid(plan.length, GRID);
  const over = (from: number, to: number, add: (position: number) => number) => {
    for (let i = Math.max(0, Math.floor(from / GRID)); i <= Math.min(grid.values.length - 1, Math.ceil(to / GRID)); i += 1) grid.values[i] += add(i * GRID);
  };
  for (const zone of plan.zones) over(zone.from, zone.to, (position) => zone.depth(years) * zoneShare(zone, position));
  for (const feature of plan.features) over(feature.from, feature.to, (position) => feature.loss * zoneShare({ ...feature, edge: 0.15 }, position));
  return grid;
}

function corrosionAt(plan: RopePlan, position: number, years: number): number {
  let loss = 0;
  for (const zone of plan.zones) if (zone.kind === 'corrosion' && position > zone.from && position < zone.to) loss += zone.depth(years) * zoneShare(zone, position);
  return loss;
}

function addPulses(plan: RopePlan, scan: ScanPlan, { ropePositions, fault }: Scan): void {
  const scale = REFERENCE_BREAK / axialField(0, REFERENCE_DIPOLE);
  const pulses = [
    ...plan.breaks.filter((each) => each.born <= scan.years).map((each) => ({ at: each.position, dipole: { gap: each.gap, distance: each.distance, poleStrength: REFERENCE_DIPOLE.poleStrength }, size: each.size })),
    ...plan.features.flatMap((each) => [each.from, each.to].map((at) => ({ at, dipole: REFERENCE_DIPOLE, size: each.spikes }))),
  ];
  for (const { at, dipole, size } of pulses) {
    const height = scale * size * scan.gain;
    const reach = 12 * dipole.distance;
    for (let i = 0; i < fault.length; i += 1) {
      const x = Math.abs(ropePositions[i] - at);
      const away = plan.loop ? Math.min(x, plan.length - x) : x;
      if (away < reach) fault[i] += height * axialField(away, dipole);
    }
  }
}
