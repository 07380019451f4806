import { writeNotes } from '../files/write-notes.ts';
import type { Observation } from '../files/write-notes.ts';
import { PLAIN, writeScan } from '../files/write-scan.ts';
import { makeRope, makeScan } from '../signal/make-scan.ts';
import type { PlannedBreak, RopePlan, ScanPlan } from '../signal/rope-plan.ts';
import { jsonBytes, photo, preambleOf, STEADY, yearsBetween } from './sample-folder.ts';
import type { SampleFolder } from './sample-folder.ts';

const INSTALLED = '2023-03-06';
const LENGTH = 596;
/** The head starts and ends this far from the sockets. */
const REACH = 0.9;

const wire = (position: number, born: number, size = 1, distance = 0.03): PlannedBreak => ({ position, born, size, gap: 0.005, distance });

/** Haul rope of an invented two-car counterbalanced incline. */
export const HAUL_ROPE: RopePlan = {
  name: 'haul-rope', length: LENGTH, loop: false, strandSpacing: 0.205 / 6, averagingLength: 0.3, texture: 0.08,
  zones: [
    // Water runs down to the socket of car 1; the loss gains speed.
    { from: 7, to: 19.5, edge: 2.2, kind: 'corrosion', depth: (years) => (years < 0.2 ? 0 : 0.5 * Math.exp(0.7 * years) - 0.5) },
    // The length that lies on the drive sheave while the cars stand at their stations.
    { from: 287, to: 303, edge: 1.5, kind: 'wear', depth: (years) => 0.1 + 0.46 * years },
  ],
  breaks: [
    wire(88.24, 0, 0.9), wire(164.71, 0.9, 0.8, 0.034), wire(214.4, 1.6, 1.1), wire(371.05, 2.3, 0.85), wire(512.6, 0, 1.2),
    wire(431.32, 0.8), wire(431.04, 1.3, 1.1), wire(431.61, 1.7, 0.9), wire(430.83, 2.1, 1.2), wire(431.47, 2.4), wire(431.18, 2.5, 0.95), wire(431.92, 2.9), wire(430.95, 2.95, 1.1), wire(432.1, 2.98, 1.05),
  ],
  features: [{ from: 0, to: 0.4, loss: -9, spikes: 4 }, { from: LENGTH - 0.4, to: LENGTH, loss: -9, spikes: 4 }],
};

interface Visit {
  readonly date: string;
  readonly trips: number;
  readonly scan: Partial<ScanPlan>;
  readonly notes: readonly Observation[];
}

const seen = (at: number, kind: string, value: number | undefined, unit: string, remark: string, more: Partial<Observation> = {}): Observation => ({ at, kind, value, unit, remark, ...more });
const across = (value: number, at: number, remark: string) => seen(at, 'diameter', value, 'mm', remark);

const VISITS: readonly Visit[] = [
  { date: '2023-03-20', trips: 300, scan: { step: 0.012 }, notes: [across(32.6, 30, 'new rope, reference diameter'), across(32.5, 295, 'new rope'), seen(0.3, 'end-attachment', undefined, '', 'socket of car 1 newly poured')] },
  { date: '2023-09-12', trips: 11_800, scan: { step: 0.012, scaleError: 0.0022, gain: 1.06, zero: 0.12, slips: [{ reading: 240.2, size: 0.11 }] }, notes: [seen(88.2, 'broken-wires', 1, 'wires', 'single outer wire, ends apart', { photo: '2023-09-088m.png' })] },
  { date: '2024-02-20', trips: 22_100, scan: { step: 0.012, scaleError: -0.0031, gain: 0.94, zero: -0.2, drift: 0.15, slips: [{ reading: 31.4, size: 0.2 }, { reading: 410.8, size: -0.07 }] }, notes: [seen(10, 'corrosion-external', undefined, '', 'film of rust that wipes off', { to: 16, severity: 'superficial' })] },
  { date: '2024-07-16', trips: 31_700, scan: { step: 0.012, scaleError: 0.0012, reversed: true, gain: 1.02 }, notes: [seen(431.3, 'broken-wires', 2, 'wires', 'two crowns in different strands', { photo: '2024-07-431m.png' })] },
  { date: '2024-12-03', trips: 41_500, scan: { scaleError: 0.0041, gain: 0.97, zero: 0.3, slips: [{ reading: 120.6, size: 0.16 }] }, notes: [across(31.9, 295, 'on the sheave length'), seen(295, 'outer-wire-wear', 12, '%', 'flats on the crowns', { photo: '2024-12-295m.png' })] },
  { date: '2025-05-13', trips: 52_000, scan: { scaleError: -0.0016, gain: 1.1, zero: -0.1, drift: -0.2, slips: [{ reading: 75.3, size: 0.31 }, { reading: 455.1, size: 0.12 }] }, notes: [seen(13, 'corrosion-external', undefined, '', 'rough to the touch, brown in the valleys', { to: 17, severity: 'rough', photo: '2025-05-013m.png' })] },
  { date: '2025-10-07', trips: 62_600, scan: { scaleError: 0.0027, gain: 0.92, zero: 0.15 }, notes: [seen(431.3, 'broken-wires', 5, 'wires', 'five within one lay and a half', { photo: '2025-10-431m.png' })] },
  { date: '2026-03-17', trips: 71_900, scan: { scaleError: 0.0034, gain: 1.04, zero: -0.25, drift: 0.1, slips: [{ reading: 12.7, size: 0.09 }, { reading: 333.3, size: -0.15 }] }, notes: [
    seen(431.4, 'broken-wires', 7, 'wires', 'seven seen after cleaning', { photo: '2026-03-431m.png' }), seen(13.5, 'corrosion-external', undefined, '', 'pitted, no slack wire found', { severity: 'pitted', photo: '2026-03-013m.png' }),
    across(31.2, 14, 'two readings at right angles'), across(31.6, 295, 'two readings at right angles'), seen(0.3, 'end-attachment', undefined, '', 'not opened')] },
];

const PHOTOS = [
  photo('2023-09-088m.png', { caption: '88.2 M', brokenWires: 1, rust: 0, wear: 0 }), photo('2024-07-431m.png', { caption: '431.3 M', brokenWires: 2, rust: 0.1, wear: 0 }),
  photo('2024-12-295m.png', { caption: '295.0 M', brokenWires: 0, rust: 0, wear: 0.7 }), photo('2025-05-013m.png', { caption: '13.0 M', brokenWires: 0, rust: 0.6, wear: 0 }),
  photo('2025-10-431m.png', { caption: '431.3 M', brokenWires: 5, rust: 0.15, wear: 0.1 }), photo('2026-03-013m.png', { caption: '13.5 M', brokenWires: 0, rust: 1, wear: 0 }),
  photo('2026-03-431m.png', { caption: '431.4 M', brokenWires: 7, rust: 0.2, wear: 0.1 }),
  // Named by no note: one tells its place, the other only its day.
  photo('2026-03-17 crown 88.2m.png', { caption: '88.2 M', brokenWires: 2, rust: 0, wear: 0.1 }), photo('2026-03-17 strand.png', { caption: '17.03', brokenWires: 0, rust: 0.2, wear: 0.1 }),
];

export function haulRope(): SampleFolder {
  const rope = makeRope(HAUL_ROPE);
  const scans = VISITS.map(({ date, scan }) => {
    const plan: ScanPlan = {
      ...STEADY, id: date, years: yearsBetween(INSTALLED, date), passes: LENGTH - 2 * REACH, start: scan.reversed ? LENGTH - REACH : REACH, firstReading: scan.reversed ? 0 : REACH, ...scan,
    };
    const made = makeScan(rope, plan);
    const dialect = { ...PLAIN, positionDecimals: plan.step === 0.01 ? 2 : 3 };
    // Close to the sockets the instrument loses the rope and writes nothing.
    return { name: `scans/${date}.csv`, bytes: writeScan(made, dialect, preambleOf('haul-rope', date, ['head: averaging length 0.3 m']), [{ from: 0, to: 12 }]) };
  });
  const notes = VISITS.map(({ date, notes: all }) => ({ name: `notes/${date}.csv`, bytes: writeNotes(all) }));
  const photos = PHOTOS.map((each) => ({ ...each, name: `photos/${each.name}` }));
  return { name: 'haul-rope', files: [{ name: 'record.json', bytes: jsonBytes(recordOf()) }, ...scans, ...notes, ...photos] };
}

function recordOf() {
  return {
    schema: 1, synthetic: true,
    rope: {
      id: 'SYNTHETIC-TV-1', name: 'SYNTHETIC haul rope, Tarnvael Incline (invented)', application: 'haul rope of a two-car counterbalanced funicular', construction: '6x19S-FC', core: 'fibre', lay: 'lang',
      diameter_mm: 32, lay_length_mm: 205, strands: 6, wires: 114, grade_mpa: 1770, length_m: LENGTH, installed: INSTALLED, loop: false,
    },
    landmarks: [
      { name: 'socket of car 1', kind: 'socket', position_m: 0, blind_m: 0.9 }, { name: 'socket of car 2', kind: 'socket', position_m: LENGTH, blind_m: 0.9 },
      { name: 'length on the drive sheave at stations', kind: 'sheave', from_m: 287, to_m: 303 },
    ],
    events: [{ date: '2024-04-10', kind: 'lubricated', note: 'whole rope relubricated' }],
    inspections: VISITS.map(({ date, trips, scan }) => ({
      id: date, date, trips, runs: [{ file: `scans/${date}.csv`, ...(scan.reversed ? {} : { direction: 'forward' }) }], notes: `notes/${date}.csv`, photos: 'photos',
    })),
  };
}
