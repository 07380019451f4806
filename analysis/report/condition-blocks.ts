import type { Analysis } from '../assess.ts';
import { GROWTH } from '../growth/parameters.ts';
import type { Assessment } from '../assessment/schema.ts';
import type { Block } from './document.ts';
import { figure, metres, span } from './phrase.ts';

const text = (title: string) => ({ title, numeric: false });
const number = (title: string) => ({ title, numeric: true });

export function coverageBlocks(assessment: Assessment): Block[] {
  return [
    { kind: 'heading', text: 'Lengths NOT INSPECTED' },
    { kind: 'table', caption: 'At the newest inspection, with the date each length was last seen', whenEmpty: 'The newest inspection has valid signal over the whole length on record.',
      columns: [number('Rope position [m]'), number('Length [m]'), text('Last seen')],
      rows: assessment.not_inspected.map((each) => [span(each.from_m, each.to_m), metres(each.to_m - each.from_m), each.last_seen ?? 'NEVER INSPECTED']) },
  ];
}

/** How each inspection was placed on the rope, and how sure that is. */
export function alignmentBlocks(assessment: Assessment): Block[] {
  const placed = assessment.inspections.flatMap(({ date, alignment }) => (alignment === null ? [] : [{ date, ...alignment }]));
  return [
    { kind: 'heading', text: 'Alignment of the inspections' },
    { kind: 'table', caption: 'Rope positions against those of the first inspection, with their claimed 95 % bound', whenEmpty: 'No inspection could be placed on the rope.',
      columns: [text('Inspection'), text('Direction'), number('Median bound ± [m]'), number('Largest bound ± [m]'), number('Confidence'), number('Slips')],
      rows: placed.map((each) => [each.date, each.reversed ? 'against rope direction' : 'in rope direction', ...boundsOf(each.uncertainty_m.map((point) => point.value_m)), figure(each.confidence), String(each.slips.length)]),
      below: placed.map((each) => [each.basis, ...each.remarks].join('; ')) },
  ];
}

function boundsOf(bounds: readonly number[]): [string, string] {
  if (bounds.length === 0) return ['–', '–'];
  const sorted = [...bounds].sort((a, b) => a - b);
  return [figure(sorted[sorted.length >> 1]), figure(sorted[sorted.length - 1])];
}

export function conditionBlocks({ assessment, surveys }: Analysis): Block[] {
  const newest = assessment.inspections.find((each) => each.id === surveys[surveys.length - 1]?.id);
  if (!newest) return [];
  return [
    { kind: 'heading', text: 'Condition at the newest inspection' },
    { kind: 'paragraph', tone: 'plain', text: `Loss is counted from: ${newest.baseline}. Rope position rests on: ${newest.alignment?.basis ?? 'nothing'} (confidence ${figure(newest.alignment?.confidence ?? null)}).` },
    { kind: 'table', caption: 'Zones of distributed loss', whenEmpty: 'No zone above the smallest loss that could be found; see detectability in the assessment file.',
      columns: [text('Zone'), number('Rope position [m]'), text('Kind'), number('Mean loss [%]'), number('± [%]'), number('Peak [%]'), number('LF texture ratio')],
      rows: newest.zones.map((zone) => [zone.id, span(zone.from_m, zone.to_m), zone.kind, figure(zone.mean_loss_percent), figure(zone.uncertainty_percent), figure(zone.peak_loss_percent), figure(zone.texture_ratio)]) },
    { kind: 'table', caption: 'Local faults (depth unknown: LF cannot tell inner from outer)', whenEmpty: 'No local fault above the detection threshold.',
      columns: [text('Fault'), number('Rope position [m]'), number('± [m]'), number('Breaks (range)'), number('Equivalent loss [%]'), number('Signal to noise'), text('Calibration')],
      rows: newest.faults.map((fault) => [fault.id, metres(fault.position_m), figure(fault.position_uncertainty_m), `${fault.count_estimate} (${fault.count_low}–${fault.count_high})`, figure(fault.loss_percent), figure(fault.snr, 1), fault.loss_calibration]) },
  ];
}

export function growthBlocks(assessment: Assessment): Block[] {
  return [
    { kind: 'heading', text: 'Change between inspections' },
    { kind: 'table', caption: `Places on the rope, judged at the newest inspection; of those called new, growing or receding at most ${100 * GROWTH.falseDiscoveryRate} % are expected to be chance (Benjamini and Hochberg)`, whenEmpty: 'No place of loss or fault in any inspection.',
      columns: [text('Place'), number('Rope position [m]'), text('Subject'), text('State'), number('Rate a year (95 %)'), number('Rate a 1000 trips')],
      rows: assessment.growth.map((each) => [each.id, span(each.from_m, each.to_m), each.subject, each.state, each.rate_per_year === null ? '–' : `${figure(each.rate_per_year)} (${figure(each.rate_low)} to ${figure(each.rate_high)})`, each.rate_per_thousand_trips === null ? '–' : `${figure(each.rate_per_thousand_trips, 4)} (${figure(each.trip_rate_low, 4)} to ${figure(each.trip_rate_high, 4)})`]),
      below: assessment.growth.map((each) => each.reason) },
  ];
}

export function notesBlocks(assessment: Assessment): Block[] {
  return [
    { kind: 'heading', text: 'Visual notes' },
    { kind: 'table', caption: 'As recorded', whenEmpty: 'No visual note is on record: magnetic testing does not replace the visual inspection.',
      columns: [text('Inspection'), number('Rope position [m]'), text('Kind'), number('Value'), text('Severity'), text('Photo'), text('Remark')],
      rows: assessment.notes.map((note) => [note.inspection, span(note.from_m, note.to_m), note.kind, note.value === null ? '' : `${note.value}\u00a0${note.unit}`.trim(), note.severity, note.photo ?? '', note.remark]) },
    ...photoTable(assessment.photos),
  ];
}

/** Photos that no note names; those without a place come last, for they are evidence that was not looked at in its place. */
function photoTable(photos: Assessment['photos']): Block[] {
  if (photos.length === 0) return [];
  const ordered = [...photos].sort((a, b) => (a.position_m ?? Infinity) - (b.position_m ?? Infinity) || (a.file < b.file ? -1 : 1));
  return [{ kind: 'table', caption: 'Photos that no visual note names', whenEmpty: '', columns: [text('Inspection'), number('Rope position [m]'), number('± [m]'), text('Photo'), text('Why there')],
    rows: ordered.map((each) => [each.inspection ?? 'not known', each.position_m === null ? 'not placed' : metres(each.position_m), each.within_m === null ? '' : figure(each.within_m), each.file, each.reason]) }];
}

export function qualityBlocks(assessment: Assessment): Block[] {
  const rows = assessment.inspections.flatMap((each) => each.quality.filter((finding) => finding.level !== 'info').map((finding) => [each.id, finding.level, span(finding.from_m, finding.to_m), finding.message]));
  return [
    { kind: 'heading', text: 'Quality of the scans' },
    { kind: 'table', caption: 'Warnings and rejections', whenEmpty: 'No warning.', columns: [text('Inspection'), text('Level'), number('Rope position [m]'), text('Finding')], rows },
  ];
}
