import type { Analysis } from '../assess.ts';
import type { Block, ReportDocument } from './document.ts';
import { criteriaBlocks, lifeBlocks } from './judgement-blocks.ts';
import { alignmentBlocks, conditionBlocks, coverageBlocks, growthBlocks, notesBlocks, qualityBlocks } from './condition-blocks.ts';
import { fieldWords, significant, stateWords } from './phrase.ts';
import { stripFigure } from './strip-figure.ts';

/**
 * The report as a competent person needs it to decide and sign: what was read, what was not seen, what was found, what
 * changed, which criteria were applied and how sure all that is. Contents after ASTM E1571 clause 9 and common practice.
 */
export function buildReport(analysis: Analysis): ReportDocument {
  const { assessment } = analysis;
  const newest = analysis.surveys[analysis.surveys.length - 1];
  return {
    title: `Rope report: ${assessment.rope.name}`,
    subtitle: newest ? `Condition as of the inspection of ${newest.date}${newest.id === newest.date ? '' : ` (${newest.id})`}` : 'No usable inspection on record',
    synthetic: assessment.synthetic,
    generated: assessment.generated,
    blocks: [
      ...summaryBlocks(analysis), ...ropeBlocks(analysis), ...figureBlocks(analysis), ...coverageBlocks(assessment), ...alignmentBlocks(assessment), ...conditionBlocks(analysis),
      ...growthBlocks(assessment), ...notesBlocks(assessment), ...criteriaBlocks(assessment), ...lifeBlocks(assessment), ...qualityBlocks(assessment), ...evidenceBlocks(analysis),
      { kind: 'heading', text: 'Decision' },
      { kind: 'paragraph', tone: 'plain', text: 'The decision belongs to a competent person under the local rules. Signing here records that the person has read the report with its cautions.' },
      { kind: 'signature', roles: ['Decision', 'Competent person (name, qualification)', 'Date', 'Signature'] },
    ],
  };
}

function summaryBlocks({ assessment }: Analysis): Block[] {
  const { summary } = assessment;
  return [
    { kind: 'paragraph', tone: 'verdict', text: stateWords(summary.state) },
    { kind: 'list', tone: 'plain', items: summary.reasons },
    { kind: 'facts', rows: [
      { label: 'Next inspection by', value: nextInspection(assessment), note: 'or earlier by judgement, and at once after an extraordinary event' },
      { label: 'NOT INSPECTED at the newest inspection', value: `${summary.not_inspected_m > 0 && summary.not_inspected_m < 0.05 ? 'less than 0.1' : summary.not_inspected_m.toFixed(1)} m`, note: 'listed below' },
    ] },
    { kind: 'heading', text: 'Cautions' },
    { kind: 'list', tone: 'caution', items: assessment.cautions },
  ];
}

/** The day of the newest inspection is no date to wait for: a criterion is reached. */
function nextInspection({ summary, inspections }: Analysis['assessment']): string {
  const newest = inspections.map((each) => each.date.slice(0, 10)).sort().at(-1) ?? '';
  if (summary.next_inspection_by === null) return 'cannot be said';
  return summary.next_inspection_by <= newest ? 'before further use' : summary.next_inspection_by;
}

function ropeBlocks({ assessment, record }: Analysis): Block[] {
  const geometry = assessment.rope.geometry.map((each) => ({ label: fieldWords(each.field), value: `${typeof each.value === 'number' ? significant(each.value) : each.value} ${each.unit}`.trim(), note: each.source }));
  return [
    { kind: 'heading', text: 'Rope' },
    { kind: 'facts', rows: [
      { label: 'Rope', value: assessment.rope.id, note: assessment.rope.name },
      { label: 'Duty', value: record.rope.application ?? 'not stated', note: record.rope.construction ?? '' },
      { label: 'Installed', value: record.rope.installed ?? 'not stated', note: assessment.rope.loop ? 'endless rope: positions wrap at its length' : 'position 0 is end A as first installed' },
      { label: 'Length', value: assessment.rope.length_m === null ? 'not stated' : `${assessment.rope.length_m} m`, note: '' },
      ...geometry,
    ] },
    { kind: 'table', caption: 'Events on record', whenEmpty: 'No event is on record.', columns: [{ title: 'Date', numeric: false }, { title: 'Event', numeric: false }, { title: 'Where', numeric: false }, { title: 'Note', numeric: false }],
      rows: record.events.map((event) => [event.date, event.kind, [event.end && `end ${event.end}`, event.position_m !== undefined && `${event.position_m} m`, event.length_m !== undefined && `length ${event.length_m} m`].filter(Boolean).join(', '), event.note ?? '']) },
  ];
}

function figureBlocks(analysis: Analysis): Block[] {
  const newest = analysis.surveys.slice(-1);
  const compared = analysis.surveys.length > 1 ? [analysis.surveys[0], ...newest] : newest;
  return [
    { kind: 'heading', text: 'Traces by rope position' },
    stripFigure(analysis, 'loss', compared, 'Loss of metallic area (LMA): first and newest inspection after alignment'),
    stripFigure(analysis, 'fault', newest, 'Local faults (LF): newest inspection'),
  ].filter((block) => block !== null) as Block[];
}

function evidenceBlocks({ assessment }: Analysis): Block[] {
  return [
    { kind: 'heading', text: 'What was read' },
    { kind: 'table', caption: 'Files, with their SHA-256', whenEmpty: 'No file was read.', columns: [{ title: 'File', numeric: false }, { title: 'Rows', numeric: true }, { title: 'Rejected', numeric: true }, { title: 'SHA-256', numeric: false }],
      rows: [['record.json', '', '', assessment.record_sha256], ...assessment.files.map((file) => [file.file, String(file.rows), String(file.rows_rejected), file.sha256])] },
    { kind: 'paragraph', tone: 'plain', text: `Made by ${assessment.product} on ${assessment.generated}. The program is not a certified safety system. Calibration of the instrument, with its date, is not part of the record: attach the certificate.` },
  ];
}
