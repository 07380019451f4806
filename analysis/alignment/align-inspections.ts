import type { Checkpoint } from '../rope/checkpoint.ts';
import type { Landmark, RopeEvent } from '../rope/record.ts';
import type { Trace } from '../rope/trace.ts';
import { positionAt } from '../rope/trace.ts';
import { alignScan } from './align-scan.ts';
import type { Direction } from './align-scan.ts';
import { characterOf, mirrored } from './character.ts';
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
}

/**
 * Rope maps of all inspections, oldest first, same order. The first defines rope position; each later one is matched to
 * the mean of all before it, so that a to b to c agrees with a to c. Rope position 0 is end A as first installed: a cut at
 * end A moves the file's zero, never the rope's. About n log n in the samples for the coarse search, linear for the fine one.
 */
export async function alignInspections(inputs: readonly AlignmentInput[], context: AlignmentContext): Promise<RopeMap[]> {
  if (inputs.length === 0) return [];
  const parameters = { ...ALIGNMENT, ...context.parameters };
  const bins = binsFor(inputs, context.loopLength, parameters);
  const first = firstMap(inputs[0], context);
  const references = startReferences(inputs, first, bins, context);
  const maps: RopeMap[] = [honourTiePoints(first, inputs[0].tiePoints)];
  addScan(references, inputs[0], maps[0], bins, parameters);
  for (const [index, input] of inputs.entries()) {
    if (index === 0) continue;
    await context.checkpoint(input.id, index / inputs.length);
    const expectation = expectationFor(input, inputs[0], first, context);
    const found = alignScan(input.trace, references, bins, expectation, context.loopLength, parameters);
    const map = honourTiePoints(mapOfScan(found, input.trace, expectation, context, references), input.tiePoints);
    maps.push(map);
    if (found.map !== null) addScan(references, input, map, bins, parameters);
  }
  return maps;
}

export interface Bins {
  readonly coarse: number;
  readonly fine: number;
}

/** On a loop a whole number of bins goes round; elsewhere no bin is finer than the coarsest trace. */
function binsFor(inputs: readonly AlignmentInput[], loopLength: number | null, parameters: AlignmentParameters): Bins {
  const step = Math.max(...inputs.map((input) => input.trace.step));
  const fit = (bin: number): number => (loopLength === null ? bin : loopLength / Math.round(loopLength / bin));
  return { coarse: fit(Math.max(parameters.coarseBin, 2 * step)), fine: fit(Math.max(parameters.fineBin, step)) };
}

function startReferences(inputs: readonly AlignmentInput[], first: RopeMap, bins: Bins, context: AlignmentContext): References {
  if (context.loopLength !== null) {
    return { coarse: emptyReference(0, bins.coarse, Math.round(context.loopLength / bins.coarse), true), fine: emptyReference(0, bins.fine, Math.round(context.loopLength / bins.fine), true) };
  }
  const ends = [first.knots[0].rope, first.knots[first.knots.length - 1].rope];
  const longest = Math.max(...inputs.map((input) => positionAt(input.trace, input.trace.length - 1) - input.trace.start));
  const low = Math.min(...ends) - ALIGNMENT.startUnknown;
  const high = Math.max(...ends, Math.min(...ends) + longest) + ALIGNMENT.startUnknown;
  const sums = (bin: number): ReferenceSums => emptyReference(low, bin, Math.ceil((high - low) / bin), false);
  return { coarse: sums(bins.coarse), fine: sums(bins.fine) };
}

function addScan(references: References, input: AlignmentInput, map: RopeMap, bins: Bins, parameters: AlignmentParameters): void {
  const direction: Direction = map.reversed ? 'reverse' : 'forward';
  const knots = map.reversed ? [...map.knots].reverse().map((k) => ({ at: -k.measured, rope: k.rope as number })) : map.knots.map((k) => ({ at: k.measured as number, rope: k.rope as number }));
  for (const [sums, bin] of [[references.coarse, bins.coarse], [references.fine, bins.fine]] as const) addToReference(sums, scanCharacter(input.trace, bin, direction, parameters), knots);
}

function scanCharacter(trace: Trace<'measured'>, bin: number, direction: Direction, parameters: AlignmentParameters) {
  const character = characterOf(trace, bin, parameters);
  return direction === 'forward' ? character : mirrored(character);
}
