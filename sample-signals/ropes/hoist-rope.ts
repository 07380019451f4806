import { PLAIN, writeScan } from '../files/write-scan.ts';
import type { Dialect } from '../files/write-scan.ts';
import { makeRope, makeScan } from '../signal/make-scan.ts';
import type { PlannedBreak, RopePlan, ScanPlan } from '../signal/rope-plan.ts';
import { jsonBytes, preambleOf, STEADY, yearsBetween } from './sample-folder.ts';
import type { SampleFolder } from './sample-folder.ts';

const INSTALLED = '2023-02-14';
const LENGTH = 150;

const wire = (position: number, born: number, size = 1): PlannedBreak => ({ position, born, size, gap: 0.005, distance: 0.028 });

/** Hoist rope of an invented shaft, cut back twice at its cage end (end A). */
export const HOIST_ROPE: RopePlan = {
  name: 'hoist-rope', length: LENGTH, loop: false, strandSpacing: 0.17 / 6, averagingLength: 0.25, texture: 0.08,
  zones: [
    { from: 52, to: 64, edge: 2, kind: 'wear', depth: (years) => 0.35 + 0.5 * years },
    { from: 118, to: 126, edge: 1.5, kind: 'corrosion', depth: (years) => 0.9 * years },
  ],
  breaks: [wire(1.9, 0.9), wire(2.2, 1.1), wire(37.15, 0), wire(88.6, 1.4), wire(103.3, 2.2, 1.2)],
  features: [],
};

/** An instrument that counts feet. */
const FEET: Dialect = { ...PLAIN, header: ['Distance (ft)', 'LMA (%)', 'LF (mV)'], positionFactor: 1 / 0.3048, positionDecimals: 3 };
/** A program that saves tables as UTF-16 with tabs. */
const WIDE: Dialect = { ...PLAIN, encoding: 'utf-16le', delimiter: '\t', lineEnd: '\r\n' };

/** `cut`: length of rope that has gone from end A by then. */
const VISITS: readonly { readonly date: string; readonly cut: number; readonly scan: Partial<ScanPlan>; readonly dialect: Dialect }[] = [
  { date: '2023-03-01', cut: 0, scan: {}, dialect: PLAIN },
  { date: '2024-02-27', cut: 0, scan: { scaleError: 0.0018, gain: 1.05, zero: 0.1 }, dialect: FEET },
  { date: '2025-03-04', cut: 2.5, scan: { scaleError: -0.0024, gain: 0.96, zero: -0.1, slips: [{ reading: 70.2, size: 0.12 }] }, dialect: WIDE },
  { date: '2026-02-24', cut: 5.6, scan: { scaleError: 0.003, gain: 1.03, zero: 0.2, drift: 0.1 }, dialect: PLAIN },
];

export function hoistRope(): SampleFolder {
  const rope = makeRope(HOIST_ROPE);
  const scans = VISITS.map(({ date, cut, scan, dialect }) => {
    // Each file counts from the rope's end of that day.
    const plan: ScanPlan = { ...STEADY, id: date, years: yearsBetween(INSTALLED, date), start: cut + 0.6, passes: LENGTH - cut - 1.2, firstReading: 0.6, ...scan };
    return { name: `${date}.csv`, bytes: writeScan(makeScan(rope, plan), dialect, preambleOf('hoist-rope', date)) };
  });
  return { name: 'hoist-rope', files: [{ name: 'record.json', bytes: jsonBytes(recordOf()) }, ...scans] };
}

function recordOf() {
  return {
    schema: 1, synthetic: true,
    rope: {
      id: 'SYNTHETIC-MB-1', name: 'SYNTHETIC hoist rope, Morrabeck Shaft (invented)', application: 'drum hoist rope of a mine shaft, carrying persons', construction: '6x36WS-IWRC', core: 'steel', lay: 'ordinary',
      diameter_mm: 26, lay_length_mm: 170, strands: 6, grade_mpa: 1770, length_m: LENGTH, installed: INSTALLED, loop: false,
    },
    landmarks: [{ name: 'drum end clamp', kind: 'clamp', position_m: LENGTH, blind_m: 0.6 }],
    events: [
      { date: '2024-05-11', kind: 'shortened', end: 'A', length_m: 2.5, note: 'two broken wires near the cage attachment' }, { date: '2024-05-11', kind: 'resocketed', end: 'A' },
      { date: '2025-06-20', kind: 'shortened', end: 'A', length_m: 3.1, note: 'routine cut-off' }, { date: '2025-06-20', kind: 'resocketed', end: 'A' },
    ],
    inspections: VISITS.map(({ date }, index) => ({ id: date, date, trips: [900, 61_000, 124_500, 187_000][index], runs: [{ file: `${date}.csv`, direction: 'forward' }] })),
  };
}
