import { describe, expect, it } from 'vitest';
import type { RopeMap } from '../../analysis/alignment/rope-map.ts';
import { conditionOnRope } from '../../analysis/condition/condition-on-rope.ts';
import type { Condition } from '../../analysis/condition/condition.ts';
import { measuredPosition, ropePosition } from '../../analysis/rope/units.ts';
import { surveyOf } from '../support/survey-of.ts';

/** A run of 106 m round a loop of 100 m that starts at 30 m: the file's 0 to 6 m and 100 to 106 m are one length of rope. */
const map: RopeMap = {
  knots: [{ measured: measuredPosition(0), rope: ropePosition(30) }, { measured: measuredPosition(106), rope: ropePosition(136) }],
  reversed: false, uncertainty: [], confidence: 1, basis: 'test', loopLength: 100, slips: [], remarks: [],
};
const measured = (faults: [number, number][], zones: [number, number, number][]): Condition<'measured'> =>
  surveyOf({ id: 'a', date: '2020-01-01', step: 0.02, loss: new Float64Array(5300), faults, zones }).condition as unknown as Condition<'measured'>;
const faultsOf = (faults: [number, number][]) => conditionOnRope(measured(faults, []), map).faults.map((fault) => [Number(fault.position.toFixed(3)), fault.amplitude]);

describe('a run that goes past its own start on a loop', () => {
  it('shows a break of the overlap once, the clearer of the two', () => {
    expect(faultsOf([[3, 10], [50, 8], [103.01, 12]])).toEqual([[33.01, 12], [80, 8]]);
  });
  it('keeps two breaks of one round, however near they stand', () => {
    expect(faultsOf([[3, 10], [3.02, 9], [103.005, 12], [103.025, 8]])).toHaveLength(2);
    expect(faultsOf([[50, 10], [50.02, 9]])).toHaveLength(2);
  });
  it('keeps what only one of the two passes shows', () => {
    expect(faultsOf([[3, 10], [104, 12]])).toHaveLength(2);
  });
  it('shows a zone of the overlap once', () => {
    const zones = conditionOnRope(measured([], [[1, 5, 2], [60, 66, 3], [100.9, 105.2, 2]]), map).zones;
    expect(zones.map((zone) => [zone.where.from, zone.where.to].map((at) => Number(at.toFixed(1))))).toEqual([[30.9, 35.2], [90, 96]]);
  });
});
