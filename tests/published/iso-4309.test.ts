/**
 * Outside source: the table of visible broken wires of ISO 4309 as printed in two public reprints (data/discard_rules_public.json
 * says where; licence: numbers kept as facts, the text is copyright). [P] published, [M] from memory, [D] derived.
 */
import { describe, expect, it } from 'vitest';
import { brokenWireLimits, ropeCategory } from '../../analysis/criteria/rope-category.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { brokenWireSeverity, combinedSeverity, diameterSeverity, severityOfGrade, severityWord, uniformDecrease } from '../../analysis/criteria/severity.ts';
import { isReached } from '../../analysis/criteria/compare.ts';
import { resolveLimit } from '../../analysis/criteria/resolve-limit.ts';
import { geometryOf } from '../criteria/rope-for-tests.ts';
import published from './data/discard_rules_public.json' with { type: 'json' };

const { rows } = published.iso_4309;

describe('table 3, single-layer and parallel-closed ropes [P]', () => {
  it('holds thirteen rows', () => expect(rows).toHaveLength(13));
  it.each(rows.map((row) => [row.rcn, row] as const))('every cell of category %i', (rcn, row) => {
    const [ord6, ord30, lang6, lang30, multi6, multi30] = row.limits;
    expect(brokenWireLimits(rcn, 'ordinary', 'M1-M4', 'single-layer')).toMatchObject({ over6d: ord6, over30d: ord30 });
    expect(brokenWireLimits(rcn, 'ordinary', 'unknown', 'single-layer')).toMatchObject({ over6d: ord6, over30d: ord30 });
    expect(brokenWireLimits(rcn, 'lang', 'M1-M4', 'single-layer')).toMatchObject({ over6d: lang6, over30d: lang30 });
    for (const lay of ['ordinary', 'lang'] as const) {
      for (const mechanism of ['M1-M4', 'M5-M8', 'unknown'] as const) expect(brokenWireLimits(rcn, lay, mechanism, 'multi-layer')).toMatchObject({ over6d: multi6, over30d: multi30 });
    }
    expect(brokenWireLimits(rcn, 'ordinary', 'M5-M8', 'single-layer')).toMatchObject({ over6d: 2 * ord6, over30d: 2 * ord30 });
    expect(brokenWireLimits(rcn, 'lang', 'M5-M8', 'single-layer')).toMatchObject({ over6d: 2 * lang6, over30d: 2 * lang30 });
    for (const wires of [row.n_min ?? 1, row.n_max]) expect(ropeCategory({ outerStrandWires: wires })!.rcn).toBe(String(rcn).padStart(2, '0'));
  });
  it('gives the second reprint in the four rows where it differs (!), and says that they are disputed', () => {
    for (const [rcn, six, thirty] of [[4, 10, 19], [5, 11, 22], [6, 13, 26], [7, 14, 29]]) {
      expect(brokenWireLimits(rcn, 'ordinary', 'M1-M4', 'multi-layer', 'second-reprint')).toMatchObject({ over6d: six, over30d: thirty, provenance: 'disputed' });
      expect(brokenWireLimits(rcn, 'ordinary', 'M1-M4', 'multi-layer').provenance).toBe('disputed');
    }
    expect(brokenWireLimits(8, 'ordinary', 'M1-M4', 'multi-layer').provenance).toBe('published');
  });
  it('goes on beyond the last row with shares of n [M]', () => {
    const category = ropeCategory({ outerStrandWires: 400 })!;
    expect(brokenWireLimits(category, 'ordinary', 'M1-M4', 'single-layer')).toMatchObject({ over6d: 16, over30d: 32, provenance: 'memory' });
    expect(brokenWireLimits(category, 'lang', 'M1-M4', 'single-layer')).toMatchObject({ over6d: 8, over30d: 16 });
    expect(brokenWireLimits(category, 'lang', 'M1-M4', 'multi-layer')).toMatchObject({ over6d: 32, over30d: 64 });
  });
});

/** Construction: n, category by the printed note [D], category where Warrington-Seale strands are moved too (!). */
const CATEGORIES: [string, number, string, string][] = [
  ['6x7', 42, '01', '01'], ['6x19S', 114, '02', '02'], ['6x19W', 114, '04', '04'], ['6x25F', 114, '04', '04'], ['8x19S', 152, '04', '04'], ['8x25F', 152, '06', '06'],
  ['6x26WS', 156, '06', '04'], ['6x36WS', 216, '09', '07'], ['6x41WS', 246, '11', '09'], ['8x36WS', 288, '13', '11'],
];

describe('rope category number [D]', () => {
  it.each(CATEGORIES)('%s', (construction, wires, printed, cautious) => {
    const geometry = geometryOf({ construction, lay: 'ordinary' });
    expect(geometry.outerStrandWires).toBe(wires);
    for (const [set, rcn] of [['iso-4309-single-layer-drum', printed], ['iso-4309-cautious-category', cautious]]) {
      const clauses = RULE_SETS.find((each) => each.id === set)!.clauses;
      const expected = brokenWireLimits(rcn, 'ordinary', 'M1-M4', 'single-layer');
      expect(resolveLimit(clauses.find((each) => each.id === 'broken-wires-6d')!, geometry)).toMatchObject({ limit: expected.over6d });
      expect(resolveLimit(clauses.find((each) => each.id === 'broken-wires-30d')!, geometry)).toMatchObject({ limit: expected.over30d });
    }
  });
  it('check value 5: 6x19S 3 and 6; 6x36WS 9 and 18, cautious 7 and 14, class M6 18 and 36', () => {
    const limits = (set: string, construction: string) => ['broken-wires-6d', 'broken-wires-30d'].map((clause) => {
      const found = resolveLimit(RULE_SETS.find((each) => each.id === set)!.clauses.find((each) => each.id === clause)!, geometryOf({ construction, lay: 'ordinary' }));
      return 'limit' in found ? found.limit : found.needs;
    });
    expect(limits('iso-4309-single-layer-drum', '6x19S-FC')).toEqual([3, 6]);
    expect(limits('iso-4309-single-layer-drum', '6x36WS-IWRC')).toEqual([9, 18]);
    expect(limits('iso-4309-cautious-category', '6x36WS-IWRC')).toEqual([7, 14]);
    expect(limits('iso-4309-class-m5-m8', '6x36WS-IWRC')).toEqual([18, 36]);
  });
});

/** Category, outer strands, n from, n to, single-layer 6d 30d, multi-layer 6d 30d: the whole table is from memory [M]. */
const TABLE_4: [string, number, number, number, number, number, number, number][] = [
  ['21', 4, 1, 100, 2, 4, 2, 4], ['22', 3, 101, 400, 2, 4, 4, 8], ['22', 4, 101, 400, 2, 4, 4, 8], ['23-1', 12, 71, 100, 2, 4, 4, 8], ['23-2', 11, 101, 120, 3, 5, 5, 10], ['23-3', 16, 121, 140, 3, 5, 6, 11],
  ['24', 16, 141, 160, 3, 6, 6, 13], ['25', 16, 161, 180, 4, 7, 7, 14], ['26', 16, 181, 200, 4, 8, 8, 16], ['27', 16, 201, 220, 4, 9, 9, 18], ['28', 16, 221, 240, 5, 10, 10, 19],
  ['29', 16, 241, 260, 5, 10, 10, 21], ['30', 16, 261, 280, 6, 11, 11, 22], ['31', 16, 281, 300, 6, 12, 12, 24],
];

describe('table 4, rotation-resistant ropes [M]', () => {
  it.each(TABLE_4)('category %s with %i outer strands', (rcn, outerStrands, from, to, six, thirty, multi6, multi30) => {
    for (const outerStrandWires of [from, to]) {
      const category = ropeCategory({ outerStrandWires, outerStrands, rotationResistant: true })!;
      expect(category.rcn).toBe(rcn);
      for (const lay of ['ordinary', 'lang'] as const) {
        expect(brokenWireLimits(category, lay, 'M1-M4', 'single-layer')).toMatchObject({ over6d: six, over30d: thirty, provenance: 'memory' });
        expect(brokenWireLimits(category, lay, 'M1-M4', 'multi-layer')).toMatchObject({ over6d: multi6, over30d: multi30 });
        expect(brokenWireLimits(category, lay, 'M5-M8', 'multi-layer')).toMatchObject({ over6d: multi6, over30d: multi30 });
      }
    }
  });
  it('goes on beyond 300 wires and has no row between', () => {
    const category = ropeCategory({ outerStrandWires: 350, outerStrands: 18, rotationResistant: true })!;
    expect(brokenWireLimits(category, 'lang', 'M1-M4', 'single-layer')).toMatchObject({ over6d: 7, over30d: 14 });
    expect(brokenWireLimits(category, 'lang', 'M1-M4', 'multi-layer')).toMatchObject({ over6d: 14, over30d: 28 });
    expect(ropeCategory({ outerStrandWires: 60, outerStrands: 12, rotationResistant: true })).toBeNull();
  });
  it('finds 18x7 (84 wires outside) in 23-1', () => {
    const geometry = geometryOf({ construction: '18x7-FC' });
    expect(geometry.rotationResistant).toBe(true);
    expect(ropeCategory({ outerStrandWires: geometry.outerStrandWires!, outerStrands: geometry.outerStrands, rotationResistant: true })!.rcn).toBe('23-1');
  });
});

describe('severity [definitions P, bands M]', () => {
  const BANDS = { fibre: [6, 7, 8, 9, 10], steel: [3.5, 4.5, 5.5, 6.5, 7.5], 'rotation-resistant': [1, 2, 3, 4, 5] } as const;
  it.each(['fibre', 'steel', 'rotation-resistant'] as const)('every band edge of %s', (core) => {
    BANDS[core].forEach((edge, index) => {
      expect(diameterSeverity(edge, core)).toBe(20 * (index + 1));
      expect(diameterSeverity(edge - 0.001, core)).toBe(20 * index);
    });
    expect(diameterSeverity(0, core)).toBe(0);
    expect(diameterSeverity(30, core)).toBe(100);
  });
  it.each([[40, 'steel', 41.2, 38.5, 6.75, 80], [22, 'steel', 22.6, 21.0, 7.27, 80], [26, 'fibre', 26.4, 24.0, 9.23, 80]] as const)('d %f %s core, %f to %f [D]', (d, core, reference, measured, percent, severity) => {
    const decrease = uniformDecrease(reference, measured, d);
    expect(decrease).toBeCloseTo(percent, 2);
    expect(diameterSeverity(decrease, core)).toBe(severity);
  });
  it('keeps a band edge that floating point misses: 20 to 18.8 on a fibre core of 20 mm is 6 %', () => {
    expect(diameterSeverity(uniformDecrease(20, 18.8, 20), 'fibre')).toBe(20);
  });
  it('adds severities at one place [D]', () => {
    expect(combinedSeverity([brokenWireSeverity(2, 5), 20, 0])).toEqual({ sum: 60, discard: false, word: 'high' });
    expect(combinedSeverity([brokenWireSeverity(2, 5), 60])).toEqual({ sum: 100, discard: true, word: 'discard' });
    expect(combinedSeverity([40, 20, 0]).sum).toBe(60);
    expect(combinedSeverity([40, 60]).discard).toBe(true);
  });
  it('says a severity in words', () => {
    expect([0, 20, 40, 60, 80, 100].map(severityWord)).toEqual(['none', 'slight', 'medium', 'high', 'very high', 'discard']);
  });
  it('reads grades of corrosion, and never takes an unknown word for none [M]', () => {
    expect(severityOfGrade('superficial')).toBe(0);
    expect(severityOfGrade('rough to the touch')).toBe(60);
    expect(severityOfGrade('heavily pitted, slack wires')).toBe(100);
    expect(severityOfGrade('40 %')).toBe(40);
    expect(severityOfGrade('as last time')).toBeNull();
    expect(severityOfGrade('')).toBeNull();
  });
  it('check value 6: three of three is discard, two of three 67 %', () => {
    expect(isReached(3, '>=', 3, true)).toBe(true);
    expect(isReached(2, '>=', 3, true)).toBe(false);
    expect(Math.round(brokenWireSeverity(2, 3))).toBe(67);
  });
});
