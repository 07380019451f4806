import { describe, expect, it } from 'vitest';
import { blindLengths, knownFeatures } from '../../analysis/intake/blind-lengths.ts';
import { neverInspected } from '../../analysis/intake/coverage.ts';
import { readNotes } from '../../analysis/intake/read-notes.ts';
import { ropePosition } from '../../analysis/rope/units.ts';
import type { RopePosition } from '../../analysis/rope/units.ts';
import { encode } from '../corpus/scan-text.ts';

const HEADER = 'position_m,kind,value,unit,severity,photo,remark';
const notesOf = (text: string) => readNotes(new TextEncoder().encode(text), 'notes.csv', 'i1');

describe('visual notes', () => {
  it('reads a note with all its fields', () => {
    expect(notesOf(`${HEADER}\n12.5,broken wires (valley),2,wires,high,p1.jpg,"close, ""fresh"""\n`)).toEqual({
      problems: [],
      notes: [{ id: 'i1-note-1', inspection: 'i1', from: 12.5, to: 12.5, kind: 'broken-wires-valley', kindAsWritten: 'broken wires (valley)', value: 2, unit: 'wires', severity: 'high', photo: 'p1.jpg', remark: 'close, "fresh"' }],
    });
  });

  it.each([
    ['Broken_Wires', 'broken-wires'], ['crown breaks', 'broken-wires'], ['Drahtbrüche', 'broken-wires'], ['broken wires at socket', 'broken-wires-termination'], ['diameter', 'diameter'], ['Durchmesser', 'diameter'],
    ['lay length', 'lay-length'], ['internal corrosion', 'corrosion-internal'], ['rust', 'corrosion-external'], ['corrosion_external', 'corrosion-external'], ['outer wire wear', 'outer-wire-wear'], ['waviness', 'waviness'], ['bird-cage', 'distortion'],
    ['grease', 'lubrication'], ['lightning mark', 'heat'], ['end attachment', 'end-attachment'], ['opened', 'opened'], ['loose wire', 'loose-wire'], ['photo', 'photo'], ['paint spot', 'other'],
  ])('takes %s for %s', (written, kind) => expect(notesOf(`${HEADER}\n1,${written},,,,,\n`).notes[0]).toMatchObject({ kind, kindAsWritten: written }));

  it('reads lengths, decimal commas, semicolons and UTF-16', () => {
    const { notes, problems } = readNotes(encode('from_m;to_m;kind;value\n1,5;3,25;Verschleiß;0,4\n', 'utf-16le-bom'), 'notes.csv', 'i1');
    expect(problems).toEqual([]);
    expect(notes[0]).toMatchObject({ from: 1.5, to: 3.25, kind: 'outer-wire-wear', value: 0.4 });
  });

  it('takes two diameters at right angles for two readings of one place', () => {
    const { notes, problems } = notesOf(`${HEADER}\n7,diameter,31.9/32.1,mm,,,oval\n8,Durchmesser,"31,8 x 32,2",mm,,,\n9,diameter,32.0,mm,,,\n`);
    expect(problems).toEqual([]);
    expect(notes.map((note) => [note.id, note.from, note.value, note.remark])).toEqual([['i1-note-1', 7, 31.9, 'oval'], ['i1-note-2', 7, 32.1, 'oval'], ['i1-note-3', 8, 31.8, ''], ['i1-note-4', 8, 32.2, ''], ['i1-note-5', 9, 32, '']]);
    expect(notesOf(`${HEADER}\n7,broken wires,3/4,wires,,,\n8,diameter,31.9/x,mm,,,\n`).problems.map((each) => each.line)).toEqual([2, 3]);
  });

  it('gives each faulty row a problem with its line, and keeps the rest', () => {
    const { notes, problems } = notesOf(`${HEADER}\n1,diameter,39.5,mm,,,\nx,diameter,39,mm,,,\n,heat,,,,,\n4,,,,,,\n5,heat,hot,,,,\n6,photo,,,,../../x.jpg,\n`);
    expect(notes).toHaveLength(1);
    expect(problems.map((each) => [each.line, each.column])).toEqual([[3, 'position'], [4, 'position_m'], [5, 'kind'], [6, 'value'], [7, 'photo']]);
  });

  it('refuses a file without a header, an empty one and a binary one', () => {
    expect(notesOf('1,2,3\n').problems[0].what).toContain('no header');
    expect(readNotes(new Uint8Array(0), 'n', 'i').problems).toHaveLength(1);
    expect(readNotes(new Uint8Array(300), 'n', 'i').problems[0].what).toContain('binary');
  });
});

describe('blind lengths and coverage', () => {
  const at = (name: string, position_m: number, more = {}) => ({ name, position_m, ...more });
  const plain = (found: { where: { from: number; to: number } }[]) => found.map(({ where }) => [where.from, where.to]);

  it('takes half a metre at sockets and clamps, and nothing at splices, sheaves and markers', () => {
    expect(plain(blindLengths([at('socket at car 1', 0), at('clamp', 40), at('long splice', 50), at('sheave', 60), at('paint marker', 70)], 100, false))).toEqual([[0, 0.5], [39.5, 40.5]]);
  });
  it('lets the landmark say its own length', () => {
    expect(plain(blindLengths([at('socket', 100, { blind_m: 2 }), { name: 'saddle', from_m: 10, to_m: 14 }, at('marker', 20, { blind_m: 0 })], 100, false))).toEqual([[98, 100], [10, 14]]);
  });
  it('wraps over the origin of an endless rope', () => {
    expect(plain(blindLengths([at('grip', 0.2)], 100, true)).map((each) => each.map((x) => Math.round(x * 10) / 10))).toEqual([[0, 0.7], [99.7, 100]]);
  });
  it('knows splices with their tucks as features', () => expect(knownFeatures([{ name: 'splice', from_m: 10, to_m: 40 }])).toEqual([{ from: 10, to: 40 }]));

  it('dates every length that the newest inspection left out', () => {
    const span = (from: number, to: number) => ({ from: ropePosition(from), to: ropePosition(to) });
    const surveys = [{ date: '2022-01-01', covered: [span(1, 100)] }, { date: '2023-01-01', covered: [span(2, 50)] }, { date: '2024-01-01', covered: [span(10, 40), span(60, 90)] }];
    expect(neverInspected(surveys, { ropeLength: 100, loopLength: null })).toEqual([
      { where: span(0, 1), lastSeen: null }, { where: span(1, 2), lastSeen: '2022-01-01' }, { where: span(2, 10), lastSeen: '2023-01-01' },
      { where: span(40, 50), lastSeen: '2023-01-01' }, { where: span(50, 60), lastSeen: '2022-01-01' }, { where: span(90, 100), lastSeen: '2022-01-01' },
    ]);
    expect(neverInspected([], { ropeLength: 10, loopLength: null })).toEqual([{ where: span(0, 10), lastSeen: null }]);
  });

  describe('slivers of grids', () => {
    const span = (from: number, to: number) => ({ from: ropePosition(from), to: ropePosition(to) });
    const survey = (date: string, step: number, ...covered: { from: RopePosition; to: RopePosition }[]) => ({ date, covered, measured: { step } });
    const extent = { ropeLength: 100, loopLength: null };
    const pieces = (...surveys: ReturnType<typeof survey>[]) => neverInspected(surveys, extent).map(({ where, lastSeen }) => [where.from, where.to, lastSeen]);

    it('reports no length shorter than a step at the ends or between covered lengths', () => {
      expect(pieces(survey('2024-01-01', 0.02, span(0.01, 50), span(50.004, 99.993)))).toEqual([]);
    });
    it('reports a gap of one missing sample, shortened by the map', () => {
      expect(pieces(survey('2024-01-01', 0.02, span(0, 50), span(50.0195, 100)))).toEqual([[50, 50.0195, null]]);
    });
    it('dates a real gap whole, however the grids of older inspections end', () => {
      expect(pieces(survey('2023-01-01', 0.02, span(0, 59.992)), survey('2024-01-01', 0.005, span(0, 40), span(60, 100)))).toEqual([[40, 60, '2023-01-01']]);
      expect(pieces(survey('2023-01-01', 0.02, span(59.99, 100)), survey('2024-01-01', 0.005, span(0, 40), span(60, 100)))).toEqual([[40, 60, null]]);
    });
    it('never takes a short gap for seen because an older grid was coarse', () => {
      expect(pieces(survey('2023-01-01', 0.02, span(0, 40), span(60, 100)), survey('2024-01-01', 0.005, span(0, 50), span(50.006, 100)))).toEqual([[50, 50.006, null]]);
      expect(pieces(survey('2023-01-01', 0.02, span(0, 100)), survey('2024-01-01', 0.005, span(0, 50), span(50.006, 100)))).toEqual([[50, 50.006, '2023-01-01']]);
    });
  });
});
