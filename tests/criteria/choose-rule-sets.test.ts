import { describe, expect, it } from 'vitest';
import { chooseRuleSets } from '../../analysis/criteria/choose-rule-sets.ts';
import { readDuty } from '../../analysis/criteria/duty.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { copyRuleSet } from '../../analysis/criteria/user-rule-set.ts';
import { geometryOf } from './rope-for-tests.ts';

const stranded = geometryOf({ construction: '6x36WS-FC' });
const steel = geometryOf({ construction: '6x36WS-IWRC' });
const locked = geometryOf({ construction: 'full-locked coil' });
const resistant = geometryOf({ construction: '18x7-FC' });

describe('duty in free text', () => {
  it.each([
    ['funicular', 'funicular'], ['Funicular haul rope', 'funicular'], ['inclined lift', 'funicular'], ['Inclined elevator, public', 'funicular'],
    ['ropeway haul', 'ropeway-haul'], ['ropeway track rope', 'ropeway-track'], ['ropeway tension rope', 'ropeway-tension'], ['carrying-hauling rope', 'ropeway-haul'],
    ['gondola', 'ropeway-haul'], ['chairlift', 'ropeway-haul'], ['chair lift, fixed grip', 'ropeway-haul'], ['ski lift', 'surface-lift'], ['forest ropeway', 'forest-ropeway'],
    ['mine hoist', 'mine-hoist'], ['Coal mine hoist', 'coal-mine-hoist'], ['shaft winding', 'mine-hoist'], ['guide rope, shaft 2', 'mine-guide'],
    ['crane', 'crane'], ['tower crane hoist rope', 'crane'], ['crane boom pendant', 'crane-standing'], ['elevator', 'lift'], ['passenger lift', 'lift'], ['lift', 'lift'],
    ['scaffold hoist', 'scaffold-hoist'], ['sling', 'sling'], ['', 'unknown'], ['bridge', 'unknown'],
  ])('%s', (text, duty) => expect(readDuty(text).duty).toBe(duty));
});

const proposed = (application: string, geometry = stranded) => chooseRuleSets(application, geometry, undefined, []).sets.map((set) => set.id);

describe('proposed sets', () => {
  it.each([
    ['funicular', stranded, ['hong-kong-265a', 'ropeway-area-italy-2016']],
    ['ropeway haul', stranded, ['ropeway-area-italy-2016']],
    ['ropeway track', locked, ['locked-coil-outer-wires', 'ropeway-area-italy-2016', 'vorarlberg-2000-track-locked']],
    ['ropeway track', steel, ['ropeway-area-italy-2016', 'vorarlberg-2000-track-stranded']],
    ['ropeway tension', stranded, ['ropeway-area-italy-2016', 'vorarlberg-2000-tension']],
    ['mine hoist', steel, ['cfr-30-part-57']], ['surface mine hoist', steel, ['cfr-30-part-56']], ['coal mine hoist', steel, ['cfr-30-part-75']], ['surface coal mine hoist', steel, ['cfr-30-part-77']],
    ['crane', steel, ['iso-4309-single-layer-drum']], ['crane', resistant, ['iso-4309-rotation-resistant']],
    ['crane, multi-layer drum', steel, ['iso-4309-multi-layer-drum']], ['crane, class M6', steel, ['iso-4309-class-m5-m8']], ['crane, class M6', resistant, ['iso-4309-rotation-resistant-m5-m8']],
    ['crane, multi-layer', resistant, ['iso-4309-rotation-resistant-multi-layer']],
    ['lift', geometryOf({ construction: '8x19S-FC' }), ['lift-8x19-fibre-core']], ['lift', geometryOf({ construction: '6x19S-FC' }), ['lift-6x19-fibre-core']],
    ['guide rope', locked, ['quebec-guide-rope']], ['', stranded, ['ropeway-area-italy-2016']],
  ])('%s', (application, geometry, ids) => expect(proposed(application, geometry).sort()).toEqual(ids));

  it('gives a reason for each, to be confirmed', () => {
    const { sets, reasons } = chooseRuleSets('ropeway track rope', locked, undefined, []);
    expect(reasons.map((each) => each.id)).toEqual(sets.map((set) => set.id));
    for (const each of reasons) expect(each.reason).toMatch(/track rope of a ropeway.*locked coil.*confirmed by the competent person/);
    expect(chooseRuleSets('', stranded, undefined, []).reasons[0].reason).toContain('does not say what the rope does');
  });
  it('finds a set for every duty', () => {
    for (const application of ['funicular', 'gondola', 'ropeway track', 'ropeway tension', 'ski lift', 'forest ropeway', 'mine hoist', 'coal mine hoist', 'guide rope', 'crane', 'crane pendant', 'lift', 'scaffold hoist', 'sling', '?']) {
      expect(proposed(application, steel).length).toBeGreaterThan(0);
    }
  });
});

describe('stated sets', () => {
  it('are taken as they are, once, with a word where they do not fit', () => {
    const { sets, reasons } = chooseRuleSets('funicular', locked, ['en-12927-6-stranded', 'en-12927-6-stranded'], []);
    expect(sets.map((set) => set.id)).toEqual(['en-12927-6-stranded']);
    expect(reasons[0].reason).toBe('named in the record or chosen by the competent person; it is not written for a rope of this make');
  });
  it('fall back to the proposal where none is known', () => {
    const { sets } = chooseRuleSets('funicular', stranded, ['mistyped'], []);
    expect(sets[0]).toMatchObject({ id: 'mistyped', unknown: true, clauses: [] });
    expect(sets.map((set) => set.id)).toContain('ropeway-area-italy-2016');
  });
  it('may be a set of the user, shown as changed', () => {
    const own = copyRuleSet(RULE_SETS.find((set) => set.id === 'ropeway-area-italy-2016')!, { id: 'our-funicular', note: 'stricter by decision of the operator', clauses: { 'area-6d': { limit: { kind: 'number', value: 5 } } } });
    const { sets, reasons } = chooseRuleSets('funicular', stranded, ['our-funicular'], [own]);
    expect(sets[0].clauses[0]).toMatchObject({ provenance: 'user', limit: { value: 5 } });
    expect(reasons[0].reason).toContain('a copy of ropeway-area-italy-2016 changed by the user (area-6d): stricter by decision of the operator');
  });
});
