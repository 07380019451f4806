import type { JournalEntry } from '../rope/journal.ts';
import { ruleSetSchema } from './rule-set.ts';
import type { Clause, RuleSet } from './rule-set.ts';

/** Rule sets that users made for this rope, the newest of each name. One that is no rule set is left out: a choice that names it says that it is unknown. */
export function ownRuleSets(journal: readonly JournalEntry[]): RuleSet[] {
  const held = new Map<string, RuleSet>();
  for (const entry of journal) {
    if (entry.kind !== 'rule-set') continue;
    const read = ruleSetSchema.safeParse(entry.set);
    if (read.success) held.set(read.data.id, read.data);
  }
  return [...held.values()];
}

/**
 * A copy of a set with other limits, marked as changed: a clause whose limit differs carries the provenance `user`, and the set says which.
 * `limits` maps the id of a clause with a plain number to its new limit, in the clause's own unit.
 */
export function changedCopy(from: RuleSet, id: string, title: string, limits: Readonly<Record<string, number>>, note: string): RuleSet {
  const differs = (clause: Clause): boolean => clause.limit.kind === 'number' && limits[clause.id] !== undefined && limits[clause.id] !== clause.limit.value;
  const clauses = from.clauses.map((clause): Clause => (differs(clause)
    ? { ...clause, limit: { kind: 'number', value: limits[clause.id] }, provenance: 'user', source: `changed by the user; was ${clause.limit.kind === 'number' ? clause.limit.value : ''} ${clause.unit}, ${clause.source}` } : clause));
  const already = from.changed?.clauses ?? [];
  return ruleSetSchema.parse({
    ...from, id, title, clauses, scope: { ...from.scope, proposedFor: [] },
    changed: { from: from.changed?.from ?? from.id, clauses: [...new Set([...already, ...from.clauses.filter(differs).map((clause) => clause.id)])], note },
  });
}
