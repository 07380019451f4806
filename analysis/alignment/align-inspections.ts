import type { Checkpoint } from '../rope/checkpoint.ts';
import type { Landmark, RopeEvent } from '../rope/record.ts';
import type { Trace } from '../rope/trace.ts';
import { positionAt } from '../rope/trace.ts';
import { alignScan } from './align-scan.ts';
import { mirrored, negated, scanCharacter } from './character.ts';
import type { Character, ScanCharacter } from './character.ts';
import { firstMap } from './first-map.ts';
import { ALIGNMENT } from './parameters.ts';
import type { AlignmentParameters } from './parameters.ts';
import { addToReference, emptyReference } from './reference-character.ts';
import type { ReferenceSums } from './reference-character.ts';
import type { RopeMap } from './rope-map.ts';
import { expectationFor } from './expectation.ts';
import { honourTiePoints } from './tie-points.ts';
import { mapOfScan } from './write-map.ts';

export interface AlignmentInput {
  readonly id: string;
  readonly date: string;
  readonly trace: Trace<'measured'>;
  readonly statedDirection: 'forward' | 'reverse' | null;
  readonly positionsFell: boolean;
  readonly tiePoints: readonly { readonly measured: number; readonly rope: number }[];
}

export interface AlignmentContext {
  readonly ropeLength: number | null;
  readonly loopLength: number | null;
  readonly landmarks: readonly Landmark[];
  readonly events: readonly RopeEvent[];
  readonly parameters?: Partial<AlignmentParameters>;
  readonly checkpoint: Checkpoint;
}

/** The rope as all scans aligned so far show it, coarse and fine. */
export interface References {
  readonly coarse: ReferenceSums;
  readonly fine: ReferenceSums;
  /** Scans that they hold. */
  scans: number;
}

/**
 * Rope maps of all inspections, oldest first, same order. The first defines rope position; each later one is matched to
 * the mean of all before it, so that a to b to c agrees with a to c. Rope position 0 is end A as first installed: a cut at
 * end A moves the file's zero, never the rope's. About n log n in the samples for the coarse search, linear for the fine one.
 */
export async function alignInspections(inputs: readonly AlignmentInput[], context: AlignmentContext): Promise<RopeMap[]> {
  if (inputs.length === 0) return [];
  const parameters = { ...ALIGNMENT, ...context.parameters };
  const bin = binFor(inputs, context.loopLength, parameters);
  const first = firstMap(inputs[0], context);
  const references = startReferences(inputs, first, bin, context);
  const maps: RopeMap[] = [honourTiePoints(first, inputs[0].tiePoints)];
  addScan(references, scanCharacter(inputs[0].trace, bin, parameters), maps[0]);
  for (const [index, input] of inputs.entries()) {
    if (index === 0) continue;
    await context.checkpoint(input.id, index / inputs.length);
    const expectation = expectationFor(input, inputs[0], first, context);
    const character = scanCharacter(input.trace, bin, parameters);
    const found = alignScan(character, references, expectation, context.loopLength, parameters);
    const map = honourTiePoints(mapOfScan(found, input.trace, expectation, context, references), input.tiePoints);
    maps.push(map);
    if (found.map !== null) addScan(references, found.opposed ? { coarse: negated(character.coarse), fine: negated(character.fine) } : character, map);
  }
  return maps;
}

/** Width of the fine bins. On a loop a whole number of pairs goes round; elsewhere no bin is finer than the coarsest trace. */
function binFor(inputs: readonly AlignmentInput[], loopLength: number | null, parameters: AlignmentParameters): number {
  const bin = Math.max(parameters.fineBin, ...inputs.map((input) => input.trace.step));
  return loopLength === null ? bin : loopLength / (2 * Math.max(1, Math.round(loopLength / (2 * bin))));
}

function startReferences(inputs: readonly AlignmentInput[], first: RopeMap, bin: number, context: AlignmentContext): References {
  if (context.loopLength !== null) {
    const bins = Math.round(context.loopLength / bin);
    return { coarse: emptyReference(0, 2 * bin, bins / 2, true), fine: emptyReference(0, bin, bins, true), scans: 0 };
  }
  const ends = [first.knots[0].rope, first.knots[first.knots.length - 1].rope];
  const longest = Math.max(...inputs.map((input) => positionAt(input.trace, input.trace.length - 1) - input.trace.start));
  const low = Math.min(...ends) - ALIGNMENT.startUnknown;
  const high = Math.max(...ends, Math.min(...ends) + longest) + ALIGNMENT.startUnknown;
  const sums = (width: number): ReferenceSums => emptyReference(low, width, Math.ceil((high - low) / width), false);
  return { coarse: sums(2 * bin), fine: sums(bin), scans: 0 };
}

function addScan(references: References, { coarse, fine }: ScanCharacter, map: RopeMap): void {
  const knots = map.reversed ? [...map.knots].reverse().map((k) => ({ at: -k.measured, rope: k.rope as number })) : map.knots.map((k) => ({ at: k.measured as number, rope: k.rope as number }));
  const turned = (character: Character): Character => (map.reversed ? mirrored(character) : character);
  // LF of a run the other way may have the other sign: it is matched, but not added.
  addToReference(references.coarse, turned(coarse), knots, false);
  addToReference(references.fine, turned(fine), knots, references.scans === 0 || !map.reversed);
  references.scans += 1;
}
