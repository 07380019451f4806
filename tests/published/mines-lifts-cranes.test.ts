/**
 * Outside sources, figures as published: Russian and Chinese coal mine rules, South African Reg. 16.33, Quebec r.14 s.297,
 * Italian DPR 128/1959, California T8 7135, ISO 4344:2004 table as reprinted, ASME B30, WAC 296-874 [P];
 * Ontario Reg. 854 from memory and doubtful (!), WAC 296-24-294 and the lift diameter differ between sources (!).
 */
import { describe, expect, it } from 'vitest';
import { wearAdjustedBreakLimit } from '../../analysis/criteria/wear-factor.ts';
import { maximumInterval } from '../../analysis/criteria/maximum-interval.ts';
import { californiaSafetyFactors } from '../../analysis/criteria/minimum-strength.ts';
import { judge, shippedSet } from '../criteria/judge.ts';
import { evidenceOf, surveyOf } from '../criteria/rope-for-tests.ts';
import { count, EDGES, six } from './clause-edges.ts';

describe('limits, one step below and at the point where each is reached', () => {
  it.each(EDGES)('%s %s', async (set, clause, rope, below, at) => {
    // A set for rotation-resistant ropes is judged on such a rope.
    const geometry = clause === 'in-6d' || clause === 'in-30d' ? {} : { rotationResistant: false };
    expect((await judge(set, rope, below, geometry)).find(clause).reached).toBe(false);
    expect((await judge(set, rope, at, geometry)).find(clause).reached).toBe(true);
  });
  it('check value 28: a lift rope 8x19 with 31 breaks in a lay is scrap, with 20 to be replaced or watched', async () => {
    const [scrap, watch] = await Promise.all([31, 20].map((breaks) => judge('lift-8x19-fibre-core', six, count(breaks))));
    expect(scrap.find('spread-scrap')).toMatchObject({ reached: true, consequence: 'discard' });
    expect(watch.find('spread-scrap').reached).toBe(false);
    expect(watch.find('spread-watch')).toMatchObject({ reached: true, consequence: 'watch' });
  });
});

describe('check value 26: Russian wear-adjusted limit [P]', () => {
  it.each([[0, 10], [9.9, 10], [10, 8.5], [15, 7.5], [20, 7], [25, 6], [30, 5], [40, 0], [60, 0]])('wear %f %%', (wear, limit) => {
    expect(wearAdjustedBreakLimit(10, wear)).toBeCloseTo(limit, 12);
  });
});

describe('maximum intervals', () => {
  const with1 = evidenceOf({}, [surveyOf({ length: 1 })]);
  const none = evidenceOf({}, []);
  const months = (set: string, loss: number | null, evidence = with1) => maximumInterval(shippedSet(set), evidence, loss)?.months;
  /** First check, loss up to 12 %, up to 15 %, above 15 % [P; row labels partly inferred (!)]. */
  it.each([['zinc-vertical', 12, 6, 1, 0.5], ['bare-vertical', 6, 2, 1, 0.5], ['steep', 6, 2, 1, 0.5], ['inclined', 2, 1, 0.5, 0.25]] as const)('Russian table, %s', (row, first, low, middle, high) => {
    const set = `russia-coal-hoist-${row}`;
    expect(months(set, null, none)).toBe(first);
    expect([0, 12, 12.01, 15, 15.01, 40].map((loss) => months(set, loss))).toEqual([low, low, middle, middle, high, high]);
    expect(maximumInterval(shippedSet(set), with1, 13)!.provenance).toBe('disputed');
  });
  it('check value 27: zinc-coated vertical at 13 % one month, at 16 % half a month', () => {
    expect(months('russia-coal-hoist-zinc-vertical', 13)).toBe(1);
    expect(months('russia-coal-hoist-zinc-vertical', 16)).toBe(0.5);
  });
  it('check value 29: Quebec guide rope at 16 % three months; six before, twelve for the first [P]', () => {
    expect(months('quebec-guide-rope', 16)).toBe(3);
    expect(months('quebec-guide-rope', 15)).toBe(6);
    expect(months('quebec-guide-rope', null, none)).toBe(12);
  });
  it('takes the most demanding band where the loss could not be measured', () => {
    expect(months('quebec-guide-rope', null)).toBe(3);
    expect(months('russia-coal-hoist-zinc-vertical', null)).toBe(0.5);
  });
  it('30 CFR six months, European norm three years, Poland three years [P]', () => {
    for (const part of [56, 57, 75, 77]) expect(months(`cfr-30-part-${part}`, 0)).toBe(6);
    expect(months('ropeway-area-italy-2016', 0)).toBe(36);
    expect(months('poland-ropeway-interval', 0)).toBe(36);
  });
  it('Russian passenger ropeways: three years for the first fifteen, then yearly [P]', () => {
    const aged = (installed: string) => evidenceOf({ installed }, [surveyOf({ length: 1, date: '2026-03-31' })]);
    expect(months('russia-passenger-ropeway-interval', 0, aged('2012-01-01'))).toBe(36);
    expect(months('russia-passenger-ropeway-interval', 0, aged('2011-03-01'))).toBe(12);
    expect(months('russia-passenger-ropeway-interval', 0, with1)).toBe(12); // age not known
  });
  it('small Austrian ropeways: first test after six years, then the authority decides [P]', () => {
    expect(months('austria-small-ropeway-interval', null, none)).toBe(72);
    expect(maximumInterval(shippedSet('austria-small-ropeway-interval'), with1, 0)).toBeNull();
  });
});

describe('California T8 7135 safety factors [P]', () => {
  it.each([[500, 8, 6.4], [501, 7, 5.8], [999, 7, 5.8], [1000, 6, 5], [1999, 6, 5], [2000, 5, 4.3], [5000, 5, 4.3]])('%i ft', (feet, whenNew, atDiscard) => {
    expect(californiaSafetyFactors(feet)).toEqual({ whenNew, atDiscard });
  });
});
