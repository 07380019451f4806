import { describe, expect, it } from 'vitest';
import { ruleSetSchema } from '../../analysis/criteria/rule-set.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { copyRuleSet } from '../../analysis/criteria/user-rule-set.ts';

describe('shipped rule sets', () => {
  it('have names of their own', () => expect(new Set(RULE_SETS.map((set) => set.id)).size).toBe(RULE_SETS.length));
  it.each(RULE_SETS.map((set) => [set.id, set] as const))('%s says where each value comes from', (_id, set) => {
    expect(ruleSetSchema.safeParse(set).success).toBe(true);
    expect(set.clauses.length + set.intervals.length).toBeGreaterThan(0);
    for (const clause of set.clauses) {
      expect(clause.provenance).not.toBe('user');
      expect(clause.source.length).toBeGreaterThan(5);
      expect(clause.sentence).toMatch(/\.$/);
    }
  });
  it('mark what is only remembered or disputed', () => {
    for (const set of RULE_SETS) {
      const doubtful = set.clauses.some((clause) => clause.provenance === 'disputed') || set.intervals.some((rule) => rule.provenance === 'disputed');
      if (doubtful) expect(set.caution, set.id).toBeDefined();
    }
    expect(RULE_SETS.find((set) => set.id === 'iso-4309-rotation-resistant')!.clauses.every((clause) => clause.provenance === 'memory')).toBe(true);
  });
  it('survive being written out and read again', () => {
    for (const set of RULE_SETS) expect(ruleSetSchema.parse(JSON.parse(JSON.stringify(set)))).toEqual(set);
  });
});

describe('a user set', () => {
  const base = RULE_SETS.find((set) => set.id === 'vorarlberg-2000-haul')!;
  it('is refused with every fault named', () => {
    const faultsOf = (set: unknown) => ruleSetSchema.safeParse(set).error?.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`) ?? [];
    expect(faultsOf({ ...base, id: 'Not An Id', clauses: [{ ...base.clauses[0], comparator: '==', limit: { kind: 'number', value: -1 } }] }).join('\n')).toMatch(/id: [\s\S]*clauses\.0\.limit[\s\S]*clauses\.0\.comparator/);
    expect(faultsOf({ ...base, clauses: [base.clauses[0], base.clauses[0]] }).join()).toContain('clause area-6d is there twice');
    expect(faultsOf({ ...base, limitt: 3 })).toHaveLength(1);
    expect(faultsOf(base)).toEqual([]);
  });
  it('is a marked copy: what changed carries the provenance user, the rest keeps its own', () => {
    const copy = copyRuleSet(base, { id: 'mine', note: 'after the meeting', clauses: { 'area-6d': { limit: { kind: 'number', value: 5 } } }, removed: ['area-500d'] });
    expect(copy.clauses.map((clause) => [clause.id, clause.provenance])).toEqual([['area-6d', 'user'], ['area-40d', 'published']]);
    expect(copy.changed).toEqual({ from: 'vorarlberg-2000-haul', clauses: ['area-6d', 'area-500d removed'], note: 'after the meeting' });
    expect(copy.scope.proposedFor).toEqual([]);
    expect(base.clauses[0].provenance).toBe('published');
    expect(copy.clauses[0].source).toContain('changed by the user');
  });
  it('cannot change a clause that is not there, nor take an invalid value', () => {
    expect(() => copyRuleSet(base, { id: 'mine', note: '', clauses: { 'area-7d': { unit: '%' } } })).toThrow('no clause area-7d');
    expect(() => copyRuleSet(base, { id: 'mine', note: '', clauses: { 'area-6d': { limit: { kind: 'number', value: -3 } } } })).toThrow();
  });
});
