import { positionAt } from '../rope/trace.ts';
import type { Trace } from '../rope/trace.ts';
import { measuredPosition, ropePosition } from '../rope/units.ts';
import type { AlignmentContext, References } from './align-inspections.ts';
import type { ScanResult } from './align-scan.ts';
import type { Expectation } from './expectation.ts';
import type { RopeMap } from './rope-map.ts';
import { ALIGNMENT } from './parameters.ts';

/** A difference to the record below this is no unrecorded cut: starts are set by hand. Metres. */
const NOTICED_CUT = 0.5;

/** The found map in the file's own positions, or, where the rope shows too little character, the recorded expectation with its wide bound. */
export function mapOfScan(found: ScanResult, trace: Trace<'measured'>, expectation: Expectation, context: AlignmentContext, references: References): RopeMap {
  if (found.map === null) return expectedMap(trace, expectation, context);
  const { direction, map } = found;
  const sign = direction === 'forward' ? 1 : -1;
  const turn = context.loopLength === null ? 0 : Math.floor(map.knots[0].rope / context.loopLength) * context.loopLength;
  const inFileOrder = <T>(points: readonly T[]): T[] => (sign === 1 ? [...points] : [...points].reverse());
  const knots = inFileOrder(map.knots).map((knot) => ({ measured: measuredPosition(sign * knot.at), rope: ropePosition(knot.rope - turn) }));
  return {
    knots, reversed: direction === 'reverse', opposed: found.opposed,
    uncertainty: inFileOrder(map.bounds).map((bound) => ({ measured: measuredPosition(sign * bound.at), value: bound.value })),
    confidence: Math.min(1, map.informed * (1 - Math.exp(-found.evidence / 40)) * (1 - Math.exp(-Math.max(0, found.margin) / 10))),
    basis: basisOf(found, references),
    loopLength: context.loopLength,
    slips: inFileOrder(map.slips).map((slip) => ({ measured: measuredPosition(sign * slip.at), size: slip.size })),
    remarks: remarksOf(found, knots, expectation, context),
  };
}

function basisOf({ map, direction }: ScanResult, { scans }: References): string {
  return `LMA texture, LF and its events matched to ${scans} earlier scan${scans === 1 ? '' : 's'}; ${Math.round(map!.informed * 100)} % of windows measured the shift, ${map!.slips.length} slip${map!.slips.length === 1 ? '' : 's'}, run ${direction === 'forward' ? 'in rope direction' : 'against rope direction'}`;
}

function remarksOf(found: ScanResult, knots: RopeMap['knots'], expectation: Expectation, context: AlignmentContext): string[] {
  const remarks: string[] = [];
  if (expectation.stated && found.direction !== expectation.direction) remarks.push(`the signal shows a run in the other direction than the record states: check direction and ends on record`);
  if (found.margin < 10 && !expectation.stated) remarks.push('the direction of this run is not sure from the signal: state it in the record');
  if (context.loopLength === null && found.direction === 'forward') {
    const shift = knots[0].rope - knots[0].measured - expectation.shift.forward;
    if (Math.abs(shift) > NOTICED_CUT) remarks.push(`positions start ${Math.abs(shift).toFixed(2)} m ${shift > 0 ? 'further along' : 'before'} what the record says: an unrecorded cut at end A or another start of the run; add the event or check the start`);
  }
  return remarks;
}

function expectedMap(trace: Trace<'measured'>, expectation: Expectation, context: AlignmentContext): RopeMap {
  const start = trace.start - trace.step / 2;
  const end = positionAt(trace, trace.length - 1) + trace.step / 2;
  const reversed = expectation.direction === 'reverse';
  const rope = (measured: number) => ropePosition(reversed ? expectation.shift.reverse - measured : expectation.shift.forward + measured);
  const unknown = context.loopLength === null ? ALIGNMENT.startUnknown : context.loopLength / 2;
  // A direction that nobody stated and no signal shows may be the other one.
  const other = (measured: number) => (expectation.stated ? 0 : Math.abs(expectation.shift.reverse - 2 * measured - expectation.shift.forward));
  const bound = (measured: number) => unknown + ALIGNMENT.maxSlope * Math.abs(measured - start) + other(measured);
  return {
    knots: [start, end].map((measured) => ({ measured: measuredPosition(measured), rope: rope(measured) })), reversed,
    uncertainty: [start, end].map((measured) => ({ measured: measuredPosition(measured), value: bound(measured) })),
    confidence: expectation.stated ? 0.05 : 0.01, basis: 'the rope shows too little character to recognise its places: start and direction as on record, scale as measured',
    loopLength: context.loopLength, slips: [],
    remarks: ['this scan could not be matched to the earlier ones: comparisons of single places are not possible; pin tie points by hand where you know the place'],
  };
}
