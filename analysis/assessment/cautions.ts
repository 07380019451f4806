import type { RopeRecord } from '../rope/record.ts';
import type { InspectionIntake } from './read-folder.ts';

/**
 * The safety text that every assessment carries. Grounds: ASTM E1571 on what the method can and cannot see,
 * and the duty of inspection that national rules leave with a competent person.
 */
const ALWAYS = [
  'Advice to a competent person under local rules. It is not a release to service and replaces neither the visual nor the internal inspection.',
  'No strength was measured. Loss of metallic area is relative to the reference length of this rope; a percentage of area is not a percentage of strength.',
  'Lengths listed as NOT INSPECTED (sockets, clamps, saddles, gaps in the scan) may hold any damage; no indication there is no evidence of soundness.',
  'Closed breaks, cracks without corrosion and embrittled wires may give no magnetic signal at all.',
  'The LF signal cannot tell an inner wire break from an outer one: depth is unknown unless it was seen.',
  'Discard at the limit or earlier by judgement: the rate of increase counts as much as the level. Near a limit shorten the interval, whatever a forecast says.',
  'A forecast extends a few points into the future. It is void after any extraordinary event (shock load, derailment, lightning, storm, jam): inspect again at once.',
  'While any discard criterion is reached, keep the rope out of service until the competent person has decided.',
  'Compare every limit with the edition of the rule in force; values marked as from memory or disputed must be confirmed before anyone relies on them.',
];

/** True where the record says that its data were generated. */
export function isSynthetic(record: RopeRecord): boolean {
  return (record as { synthetic?: unknown }).synthetic === true || /synthetic/i.test(`${record.rope.id} ${record.rope.name ?? ''}`);
}

export function cautionsFor(record: RopeRecord, inspections: readonly InspectionIntake[]): string[] {
  const special: string[] = [];
  if (isSynthetic(record)) special.push('SYNTHETIC DATA: generated for demonstration. It describes no real rope.');
  if (inspections.length === 0) special.push('No inspection is on record: nothing is known of the condition of this rope.');
  if (inspections.length === 1) special.push('One inspection only: nothing can be said about growth or remaining life.');
  const parted = record.events.find((event) => event.kind === 'parted');
  if (parted) special.push(`The record says that this rope parted on ${parted.date}. Nothing here grants further service.`);
  const unused = inspections.filter((each) => each.runs.every((run) => run.rejected));
  for (const each of unused) special.push(`Inspection ${each.record.id} of ${each.record.date} has no usable run and is not part of any judgement.`);
  return [...special, ...ALWAYS];
}
