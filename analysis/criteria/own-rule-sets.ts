import type { JournalEntry } from '../rope/journal.ts';
import { ruleSetSchema } from './rule-set.ts';
import type { RuleSet } from './rule-set.ts';
import { copyRuleSet } from './user-rule-set.ts';

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
 * A copy of a set with other limits, marked as changed. `limits` maps the id of a clause with a plain number to its new
 * limit, in the clause's own unit; a limit that is what it was changes nothing.
 */
export function changedCopy(from: RuleSet, id: string, title: string, limits: Readonly<Record<string, number>>, note: string): RuleSet {
  const differing = from.clauses.filter((clause) => clause.limit.kind === 'number' && limits[clause.id] !== undefined && limits[clause.id] !== clause.limit.value);
  return copyRuleSet(from, { id, title, note, clauses: Object.fromEntries(differing.map((clause) => [clause.id, { limit: { kind: 'number' as const, value: limits[clause.id] } }])) });
}
