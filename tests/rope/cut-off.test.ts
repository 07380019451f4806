import { describe, expect, it } from 'vitest';
import { cutOffs, goneLengths, presentLength, stillThere, withoutLengths } from '../../analysis/rope/cut-off.ts';
import type { RopeEvent } from '../../analysis/rope/record.ts';
import { ropePosition } from '../../analysis/rope/units.ts';
import { surveyOf } from '../criteria/rope-for-tests.ts';

const extent = { ropeLength: 100, loopLength: null };
const cut = (date: string, end: 'A' | 'B', length: number): RopeEvent => ({ date, kind: 'shortened', end, length_m: length });
const events = [cut('2022-05-01', 'A', 2), cut('2023-05-01', 'B', 3), cut('2024-05-01', 'A', 1.5), { date: '2023-06-01', kind: 'lubricated' as const }];
const span = (from: number, to: number) => ({ from: ropePosition(from), to: ropePosition(to) });

describe('lengths cut off a rope', () => {
  it('lie one behind the other from either end, by date', () => {
    expect(cutOffs(events, extent, '2021-01-01', '2025-01-01').map((each) => each.where)).toEqual([span(0, 2), span(97, 100), span(2, 3.5)]);
    expect(presentLength(events, extent, '2021-01-01', '2025-01-01')).toBeCloseTo(93.5, 9);
  });
  it('count only between the first inspection and the date asked about', () => {
    expect(cutOffs(events, extent, '2021-01-01', '2022-12-31').map((each) => each.where)).toEqual([span(0, 2)]);
    expect(cutOffs(events, extent, '2023-01-01', '2023-12-31').map((each) => each.where)).toEqual([span(97, 100)]);
    expect(presentLength(events, extent, '2021-01-01', '2021-06-01')).toBe(100);
  });
  it('are not known on a loop, nor at end B of a rope of unknown length', () => {
    expect(cutOffs(events, { ropeLength: 100, loopLength: 100 }, '2021-01-01', '2025-01-01')).toEqual([]);
    expect(cutOffs(events, { ropeLength: null, loopLength: null }, '2021-01-01', '2025-01-01')).toHaveLength(2);
  });
  it('are not believed where a later inspection saw rope', () => {
    expect(goneLengths(cutOffs(events, extent, '2021-01-01', '2025-01-01'), [span(1.5, 90)])).toEqual([span(0, 1.5), span(97, 100)]);
  });
  it('are neither inspected nor uninspected', () => {
    const unseen = [{ where: span(0, 4), lastSeen: null }, { where: span(98, 99), lastSeen: '2022-01-01' }];
    expect(stillThere(unseen, [span(0, 3.5), span(97, 100)])).toEqual([{ where: span(3.5, 4), lastSeen: null }]);
  });
  it('leave an inspection with what is still rope', () => {
    const survey = surveyOf({ length: 10, faults: [{ at: 1 }, { at: 5 }], notes: [{ from: 1, kind: 'broken-wires' }, { from: 6, kind: 'broken-wires' }] });
    const left = withoutLengths(survey, [span(0, 2)]);
    expect(left.covered).toEqual([span(2, 10)]);
    expect(left.condition.faults.map((fault) => fault.position)).toEqual([5]);
    expect(left.notes.map((note) => note.from)).toEqual([6]);
    expect(left.rope.loss!.valid[199]).toBe(0);
    expect(left.rope.loss!.valid[200]).toBe(1);
    expect(survey.rope.loss!.valid[199]).toBe(1);
  });
});
