import { clauseSchema, ruleSetSchema } from './rule-set.ts';
import type { Clause, RuleSet } from './rule-set.ts';

export interface RuleSetChanges {
  readonly id: string;
  readonly title?: string;
  readonly note: string;
  /** By clause id: the fields that change. */
  readonly clauses?: Readonly<Record<string, Partial<Omit<Clause, 'id' | 'provenance'>>>>;
  readonly removed?: readonly string[];
  readonly added?: readonly Omit<Clause, 'provenance'>[];
}

/**
 * A copy of a set with changes. Changed and added clauses carry the provenance `user`, whatever they were before;
 * the copy says which shipped set it came from first, which clauses differ and why. Throws where the result is no valid set.
 */
export function copyRuleSet(set: RuleSet, changes: RuleSetChanges): RuleSet {
  const changed: string[] = [];
  const removed = new Set(changes.removed ?? []);
  const clauses: Clause[] = [];
  for (const clause of set.clauses) {
    if (removed.has(clause.id)) {
      changed.push(`${clause.id} removed`);
      continue;
    }
    const change = changes.clauses?.[clause.id];
    if (change === undefined) {
      clauses.push(clause);
      continue;
    }
    changed.push(clause.id);
    clauses.push(clauseSchema.parse({ ...clause, ...change, provenance: 'user', source: `changed by the user; was ${clause.limit.kind === 'number' ? `${clause.limit.value} ${clause.unit}, ` : ''}${clause.source}` }));
  }
  for (const id of [...Object.keys(changes.clauses ?? {}), ...removed]) {
    if (!set.clauses.some((clause) => clause.id === id)) throw new Error(`${set.id} has no clause ${id}`);
  }
  for (const clause of changes.added ?? []) {
    changed.push(`${clause.id} added`);
    clauses.push(clauseSchema.parse({ ...clause, provenance: 'user' }));
  }
  return ruleSetSchema.parse({
    ...set, id: changes.id, title: changes.title ?? `${set.title} (changed copy)`, clauses,
    scope: { ...set.scope, proposedFor: [] },
    changed: { from: set.changed?.from ?? set.id, clauses: [...new Set([...(set.changed?.clauses ?? []), ...changed])], note: changes.note },
  });
}
