import { writeNotes } from '../files/write-notes.ts';
import { PLAIN, writeScan } from '../files/write-scan.ts';
import { makeRope, makeScan } from '../signal/make-scan.ts';
import type { PlannedBreak, RopePlan, ScanPlan } from '../signal/rope-plan.ts';
import { jsonBytes, photo, preambleOf, STEADY, yearsBetween } from './sample-folder.ts';
import type { SampleFolder } from './sample-folder.ts';

const INSTALLED = '2022-04-04';
const LENGTH = 320;
/** Beyond this place the rope lies in the guide tube before the car's socket, and the head never came. */
const LAST_REACHED = 312.4;

const wire = (position: number, born: number, size = 1): PlannedBreak => ({ position, born, size, gap: 0.005, distance: 0.03 });

/** Haul rope of an invented incline that parted at 312.3 m, twelve days after its last scan. */
export const PARTED_ROPE: RopePlan = {
  name: 'parted-rope', length: LENGTH, loop: false, strandSpacing: 0.18 / 6, averagingLength: 0.3, texture: 0.08,
  zones: [
    // Its deepest part lies in the tube.
    { from: 308.5, to: 317, edge: 3, kind: 'corrosion', depth: (years) => 0.45 * (Math.exp(0.85 * years) - 1) },
    { from: 151, to: 163, edge: 1.5, kind: 'wear', depth: (years) => 0.1 + 0.4 * years },
  ],
  breaks: [wire(44.3, 0), wire(197.6, 1.8), wire(311.4, 2.4), wire(311.75, 2.9, 1.1), wire(312.1, 2.95), wire(313, 2.5), wire(313.4, 2.8)],
  features: [{ from: 0, to: 0.4, loss: -9, spikes: 4 }],
};

const VISITS: readonly { readonly date: string; readonly scan: Partial<ScanPlan> }[] = [
  { date: '2022-04-26', scan: {} },
  { date: '2023-10-10', scan: { scaleError: 0.0024, gain: 1.05, zero: 0.15, slips: [{ reading: 101.4, size: 0.13 }] } },
  { date: '2025-04-15', scan: { scaleError: -0.0029, gain: 0.95, zero: -0.2 } },
];

export function partedRope(): SampleFolder {
  const rope = makeRope(PARTED_ROPE);
  const scans = VISITS.map(({ date, scan }) => {
    const plan: ScanPlan = { ...STEADY, id: date, years: yearsBetween(INSTALLED, date), start: 0.9, passes: LAST_REACHED - 0.9, firstReading: 0.9, ...scan };
    return { name: `scans/${date}.csv`, bytes: writeScan(makeScan(rope, plan), PLAIN, preambleOf('parted-rope', date)) };
  });
  const notes = writeNotes([
    { at: 310.5, to: 312.4, kind: 'corrosion-external', severity: 'rough', photo: '2025-04-311m.png', remark: 'rust runs out of the guide tube; tube not opened' },
    { at: 311.4, kind: 'broken-wires', value: 1, unit: 'wires', remark: 'one crown wire at the mouth of the tube' },
  ]);
  const picture = photo('2025-04-311m.png', { caption: '311.4 M', brokenWires: 1, rust: 0.8, wear: 0 });
  return { name: 'parted-rope', files: [{ name: 'record.json', bytes: jsonBytes(recordOf()) }, ...scans, { name: 'notes/2025-04-15.csv', bytes: notes }, { ...picture, name: `photos/${picture.name}` }] };
}

function recordOf() {
  return {
    schema: 1, synthetic: true,
    rope: {
      id: 'SYNTHETIC-UV-1', name: 'SYNTHETIC parted haul rope, Ulverin Incline (invented)', application: 'haul rope of a funicular', construction: '6x19S-FC', core: 'fibre', lay: 'lang',
      diameter_mm: 28, lay_length_mm: 180, strands: 6, wires: 114, grade_mpa: 1770, length_m: LENGTH, installed: INSTALLED, loop: false,
    },
    landmarks: [
      { name: 'socket of the upper car', kind: 'socket', position_m: 0, blind_m: 0.9 },
      { name: 'guide tube and socket of the lower car, never opened', kind: 'socket', from_m: LAST_REACHED, to_m: LENGTH, blind_m: 0 },
    ],
    events: [{ date: '2025-04-27', kind: 'parted', position_m: 312.3, note: 'parted in service at the mouth of the guide tube' }],
    inspections: VISITS.map(({ date }, index) => ({
      id: date, date, trips: [600, 33_000, 66_400][index], runs: [{ file: `scans/${date}.csv`, direction: 'forward' }], ...(index === 2 ? { notes: 'notes/2025-04-15.csv', photos: 'photos' } : {}),
    })),
  };
}
