import { PLAIN, writeScan } from '../files/write-scan.ts';
import type { Dialect } from '../files/write-scan.ts';
import { writeNotes } from '../files/write-notes.ts';
import { makeRope, makeScan } from '../signal/make-scan.ts';
import type { PlannedBreak, RopePlan, ScanPlan } from '../signal/rope-plan.ts';
import { jsonBytes, preambleOf, STEADY, yearsBetween } from './sample-folder.ts';
import type { SampleFolder } from './sample-folder.ts';

const INSTALLED = '2021-05-03';
const LENGTH = 280;

const wire = (position: number, born: number, size = 1): PlannedBreak => ({ position, born, size, gap: 0.004, distance: 0.028 });
const tuck = (from: number) => ({ from, to: from + 0.55, loss: -8, spikes: 0.9 });

/** Carrying-hauling rope of an invented endless ropeway; the splice lies between 118 and 151.6 m. */
export const ROPEWAY_LOOP: RopePlan = {
  name: 'ropeway-loop', length: LENGTH, loop: true, strandSpacing: 0.18 / 6, averagingLength: 0.25, texture: 0.07,
  zones: [{ from: 203, to: 221, edge: 3, kind: 'corrosion', depth: (years) => Math.max(0, 0.55 * (years - 0.5)) }],
  breaks: [wire(31.7, 0), wire(76.45, 2.2), wire(183.2, 1), wire(247.9, 3.5, 1.2), wire(262.15, 0, 0.9)],
  features: [118, 123.6, 129.2, 139.8, 145.4, 151].map(tuck),
};

/** An instrument that writes decimal commas and a loss as a negative change. */
const COMMA: Dialect = { ...PLAIN, delimiter: ';', decimalMark: ',', header: ['Position (m)', 'LMA (%)', 'LF (mV)', 'Speed (m/s)'], columns: ['position', 'loss', 'fault', 'speed'], lossSign: -1, lineEnd: '\r\n' };

const VISITS: readonly { readonly date: string; readonly scan: Partial<ScanPlan>; readonly dialect: Dialect }[] = [
  { date: '2021-06-01', scan: { start: 0 }, dialect: PLAIN },
  { date: '2023-06-06', scan: { start: 97.3, scaleError: 0.0025, gain: 0.95, zero: 0.2, slips: [{ reading: 171.1, size: 0.14 }] }, dialect: COMMA },
  { date: '2025-06-03', scan: { start: 231.8, scaleError: -0.0018, gain: 1.07, zero: -0.15, drift: 0.1, reversed: true }, dialect: { ...PLAIN, delimiter: '\t' } },
];

export function ropewayLoop(): SampleFolder {
  const rope = makeRope(ROPEWAY_LOOP);
  const scans = VISITS.map(({ date, scan, dialect }) => {
    const plan: ScanPlan = { ...STEADY, id: date, years: yearsBetween(INSTALLED, date), passes: LENGTH * 1.04, start: 0, firstReading: 0, ...scan };
    return { name: `${date}.csv`, bytes: writeScan(makeScan(rope, plan), dialect, preambleOf('ropeway-loop', date)) };
  });
  const notes = writeNotes([
    { at: 118, to: 151.6, kind: 'other', remark: 'long splice, tucks tight' }, { at: 31.7, kind: 'broken-wires', value: 1, unit: 'wires', remark: 'single wire, unchanged' },
    { at: 212, kind: 'corrosion-external', severity: 'rough', remark: 'brown film over some metres' },
  ]);
  return { name: 'ropeway-loop', files: [{ name: 'record.json', bytes: jsonBytes(recordOf()) }, ...scans, { name: 'notes-2025.csv', bytes: notes }] };
}

function recordOf() {
  return {
    schema: 1, synthetic: true,
    rope: {
      id: 'SYNTHETIC-QD-1', name: 'SYNTHETIC endless rope, Queldin Ropeway (invented)', application: 'carrying-hauling rope of an aerial ropeway', construction: '6x19S-FC', core: 'fibre', lay: 'lang',
      diameter_mm: 28, lay_length_mm: 180, strands: 6, wires: 114, grade_mpa: 1770, length_m: LENGTH, installed: INSTALLED, loop: true,
    },
    landmarks: [{ name: 'long splice', kind: 'splice', from_m: 117.5, to_m: 152 }],
    events: [{ date: INSTALLED, kind: 'spliced', position_m: 134.8, note: 'long splice made on site' }],
    inspections: VISITS.map(({ date }, index) => ({ id: date, date, trips: [1_200, 96_000, 193_500][index], runs: [{ file: `${date}.csv` }], ...(index === 2 ? { notes: 'notes-2025.csv' } : {}) })),
  };
}
