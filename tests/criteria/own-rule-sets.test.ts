import { expect, test } from 'vitest';
import { changedCopy, ownRuleSets } from '../../analysis/criteria/own-rule-sets.ts';
import { chooseRuleSets } from '../../analysis/criteria/choose-rule-sets.ts';
import { findClause } from '../../analysis/criteria/rule-set.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { completeGeometry } from '../../analysis/rope/complete-geometry.ts';
import type { JournalEntry } from '../../analysis/rope/journal.ts';

const shipped = RULE_SETS.find((set) => set.id === 'ropeway-area-italy-2016')!;
const geometry = completeGeometry({ id: 'SYN', diameter_mm: 32, construction: '6x19S-FC' });
const act = { at: '2026-01-01T00:00:00Z', who: 'A. Tester' };
const entry = (set: unknown): JournalEntry => ({ ...act, kind: 'rule-set', set: set as Record<string, unknown> });

test('a copy with one limit changed says so in the clause and in the set, and leaves the shipped set alone', () => {
  const copy = changedCopy(shipped, 'own-area', 'Own area limits', { 'area-6d': 5, 'area-30d': 10 }, 'stricter after an incident');
  expect(findClause([copy], 'own-area', 'area-6d')).toMatchObject({ limit: { kind: 'number', value: 5 }, provenance: 'user' });
  expect(findClause([copy], 'own-area', 'area-30d')).toMatchObject({ limit: { value: 10 }, provenance: 'published' });
  expect(copy.changed).toEqual({ from: 'ropeway-area-italy-2016', clauses: ['area-6d'], note: 'stricter after an incident' });
  expect(copy.scope.proposedFor).toEqual([]);
  expect(findClause([shipped], shipped.id, 'area-6d')?.limit).toEqual({ kind: 'number', value: 6 });
});

test('the newest set of a name holds, and one that is no rule set is never used', () => {
  const first = changedCopy(shipped, 'own-area', 'Own', { 'area-6d': 5 }, 'one');
  const second = changedCopy(first, 'own-area', 'Own', { 'area-30d': 8 }, 'two');
  expect(second.changed?.clauses).toEqual(['area-6d', 'area-30d']);
  const sets = ownRuleSets([entry(first), entry({ id: 'broken', title: 'no clauses' }), entry(second)]);
  expect(sets).toEqual([second]);
});

test('a chosen changed set is used and its reason names what was changed and from what', () => {
  const own = changedCopy(shipped, 'own-area', 'Own', { 'area-6d': 5 }, 'stricter');
  const { sets, reasons } = chooseRuleSets('funicular haul rope', geometry, ['own-area'], ownRuleSets([entry(own)]));
  expect(sets.map((set) => set.id)).toEqual(['own-area']);
  expect(reasons[0].reason).toContain('a copy of ropeway-area-italy-2016 changed by the user (area-6d): stricter');
});
