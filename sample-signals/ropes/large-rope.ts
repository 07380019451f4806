import { PLAIN, writeScan } from '../files/write-scan.ts';
import { makeRope, makeScan } from '../signal/make-scan.ts';
import { randomFrom } from '../signal/random.ts';
import type { RopePlan } from '../signal/rope-plan.ts';
import { jsonBytes, preambleOf, STEADY } from './sample-folder.ts';

export interface LargeRope {
  readonly rows: number;
  readonly inspections: number;
  readonly seed: number;
}

const STEP = 0.002;

/** A rope as long as the rows ask for at 2 mm, one scan a year; files come one at a time, so that memory holds one only. */
export function* largeRope({ rows, inspections, seed }: LargeRope): Generator<{ name: string; bytes: Uint8Array }> {
  const length = rows * STEP;
  const plan = planOf(`large-${rows}-${seed}`, length);
  const rope = makeRope(plan);
  const dates = Array.from({ length: inspections }, (_, i) => `${2020 + i}-05-12`);
  yield { name: 'record.json', bytes: jsonBytes(recordOf(plan, dates)) };
  const random = randomFrom(`${plan.name}/scans`);
  for (const [index, date] of dates.entries()) {
    const first = index === 0;
    const scan = makeScan(rope, {
      ...STEADY, id: date, years: index + 0.1, step: STEP, start: 0, passes: length, firstReading: 0, scaleError: first ? 0 : random.between(-0.003, 0.003),
      slips: first ? [] : [{ reading: random.between(0.2, 0.8) * length, size: random.between(-0.2, 0.3) }], gain: first ? 1 : random.between(0.9, 1.1), zero: first ? 0 : random.between(-0.3, 0.3),
    });
    yield { name: `${date}.csv`, bytes: writeScan(scan, { ...PLAIN, positionDecimals: 3 }, preambleOf(plan.name, date)) };
  }
}

function planOf(name: string, length: number): RopePlan {
  const random = randomFrom(`${name}/plan`);
  const zones = Array.from({ length: Math.max(1, Math.round(length / 250)) }, (_, i) => {
    const from = random.between(0.1, 0.8) * 250 + i * 250;
    const rate = random.between(0.3, 1.2);
    return { from, to: from + random.between(6, 25), edge: 2, kind: i % 2 === 0 ? ('corrosion' as const) : ('wear' as const), depth: (years: number) => 0.3 + rate * years };
  }).filter((zone) => zone.to < length - 5);
  const breaks = Array.from({ length: Math.round(length / 40) }, () => ({ position: random.between(2, length - 2), born: random.between(-3, 4), size: random.between(0.7, 1.4), gap: 0.005, distance: 0.025 }));
  return { name, length, loop: false, strandSpacing: 0.205 / 6, averagingLength: 0.3, texture: 0.08, zones, breaks, features: [] };
}

function recordOf(plan: RopePlan, dates: readonly string[]) {
  return {
    schema: 1, synthetic: true,
    rope: { id: `SYNTHETIC-${plan.name}`, name: `SYNTHETIC ${plan.name} (invented)`, application: 'haul rope of a funicular', construction: '6x19S-FC', core: 'fibre', lay: 'lang', diameter_mm: 32, lay_length_mm: 205, strands: 6, wires: 114, grade_mpa: 1770, length_m: plan.length, installed: '2020-04-05', loop: false },
    inspections: dates.map((date) => ({ id: date, date, runs: [{ file: `${date}.csv` }] })),
  };
}
