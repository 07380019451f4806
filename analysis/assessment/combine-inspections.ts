import type { AlignmentInput } from '../alignment/align-inspections.ts';
import { combineRuns } from '../alignment/combine-runs.ts';
import type { RunFrame } from '../alignment/combine-runs.ts';
import type { Run } from '../intake/run.ts';
import type { VisualNote } from '../intake/visual-note.ts';
import type { Checkpoint } from '../rope/checkpoint.ts';
import type { QualityFinding } from '../rope/finding.ts';
import type { Interval } from '../rope/interval.ts';
import type { Repeatability } from '../rope/survey.ts';
import type { Trace } from '../rope/trace.ts';
import type { InspectionIntake } from './read-folder.ts';

/** One inspection with its runs made one trace, in the frame of its best run. */
export interface CombinedInspection {
  readonly id: string;
  readonly date: string;
  readonly trips: number | null;
  readonly runs: readonly Run[];
  readonly trace: Trace<'measured'>;
  readonly covered: readonly Interval<'measured'>[];
  readonly quality: readonly QualityFinding<'measured'>[];
  readonly repeatability: Repeatability;
  readonly remarks: readonly string[];
  readonly notes: readonly VisualNote[];
  readonly frames: readonly RunFrame[];
  readonly alignmentInput: Omit<AlignmentInput, 'tiePoints'>;
}

/** Inspections without a usable run are left out here; the assessment lists them as not used. */
export async function combineInspections(inspections: readonly InspectionIntake[], checkpoint: Checkpoint): Promise<CombinedInspection[]> {
  const combined: CombinedInspection[] = [];
  for (const [index, each] of inspections.entries()) {
    await checkpoint(each.record.id, index / inspections.length);
    const usable = each.runs.filter((run) => !run.rejected);
    if (usable.length === 0) continue;
    const { primary, trace, covered, repeatability, remarks, frames } = await combineRuns(usable, checkpoint);
    combined.push({
      id: each.record.id, date: each.record.date, trips: each.record.trips ?? null, runs: each.runs, trace, covered, repeatability, remarks,
      quality: each.runs.flatMap((run) => run.quality), notes: each.notes, frames,
      alignmentInput: { id: each.record.id, date: each.record.date, trace, statedDirection: primary.statedDirection, positionsFell: primary.positionsFell },
    });
  }
  return combined;
}
