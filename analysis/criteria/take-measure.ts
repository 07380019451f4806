import { adjacentBrokenWires } from './adjacent-outer-wires.ts';
import { areaReduction } from './area-reduction.ts';
import { brokenWires, isAtTermination, seenCounts } from './broken-wire-counts.ts';
import { combinedSeverityMeasure } from './combined-severity.ts';
import type { MeasureTaker } from './judged.ts';
import { corrosionPoints, diameterChange, diameterSeverityPoints, layLengthChange, outerWireWear, pointMeasure, presence, waviness } from './point-measures.ts';
import type { Clause, Measure } from './rule-set.ts';
import { strengthLossFromArea } from './strength-loss.ts';

const takers: Readonly<Record<Measure, MeasureTaker>> = {
  'area-reduction': areaReduction,
  'broken-wire-area': areaReduction,
  'strength-loss': strengthLossFromArea,
  'broken-wires': brokenWires,
  'broken-wires-in-strand': seenCounts((note) => note.kind === 'broken-wires-strand', 'a visual count of broken wires by strand (LF cannot tell the strand)'),
  'broken-wires-side-by-side': seenCounts((note) => note.kind === 'broken-wires-adjacent', 'a visual count of broken wires side by side in one strand'),
  'broken-wires-in-valley': seenCounts((note) => note.kind === 'broken-wires-valley', 'a visual count of broken wires in the valleys between strands'),
  'broken-wires-at-termination': seenCounts(isAtTermination, 'a visual count of broken wires at the end attachments, where no magnetic head reaches'),
  'adjacent-broken-outer-wires': adjacentBrokenWires,
  'diameter-reduction': pointMeasure(diameterChange(1)),
  'diameter-increase': pointMeasure(diameterChange(-1)),
  'diameter-severity': pointMeasure(diameterSeverityPoints),
  'outer-wire-wear': pointMeasure(outerWireWear),
  'lay-length-change': pointMeasure(layLengthChange),
  waviness: pointMeasure(waviness),
  'corrosion-severity': pointMeasure(corrosionPoints),
  'combined-severity': combinedSeverityMeasure,
  distortion: pointMeasure(presence(['distortion'], 'a visual inspection for distortion (note "distortion", severity "none" where there is none)')),
  'heat-damage': pointMeasure(presence(['heat'], 'a visual inspection for heat or arc damage (note "heat", severity "none" where there is none)')),
  'end-attachment': pointMeasure(presence(['end-attachment'], 'an inspection of the end attachments (note "end-attachment", severity "good" where they are)')),
};

/** How the measure of a clause is taken. */
export function takerOf(clause: Clause): MeasureTaker {
  return takers[clause.measure];
}
