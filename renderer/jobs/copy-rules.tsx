import { useState } from 'react';
import { changedCopy } from '../../analysis/criteria/own-rule-sets.ts';
import type { Clause, RuleSet } from '../../analysis/criteria/rule-set.ts';
import { decide } from '../state/decide.ts';
import { useApp } from '../state/store.ts';
import { figure } from '../text/format.ts';
import { COMPARATOR_SIGNS, plain } from '../text/words.ts';
import { ProvenanceBadge } from '../ui/provenance-badge.tsx';

interface CopyRulesProps {
  readonly set: RuleSet;
  /** Ids that are in use: a copy never replaces a shipped set. */
  readonly taken: readonly string[];
  /** The id of the new set, or null where the user thought better of it. */
  readonly onDone: (id: string | null) => void;
}

/** A copy of a rule set with limits of one's own. It is marked as changed wherever it appears. */
export function CopyRules({ set, taken, onDone }: CopyRulesProps) {
  const rope = useApp((state) => state.rope);
  const [title, setTitle] = useState(`${set.title} (changed)`);
  const [note, setNote] = useState('');
  const [limits, setLimits] = useState<Readonly<Record<string, string>>>({});
  const numbers = Object.entries(limits).map(([id, text]) => [id, Number(text.replace(',', '.'))] as const);
  const bad = numbers.find(([id, value]) => limits[id].trim() === '' || !Number.isFinite(value) || value < 0);
  const wrong = bad !== undefined ? `The limit of ${plain(bad[0])} must be a number, 0 or more.` : title.trim() === '' ? 'Give the copy a name.' : note.trim() === '' ? 'Say why it was changed: it stands beside every use of the set.' : null;
  const keep = async () => {
    const copy = changedCopy(set, freeId(title, taken), title.trim(), Object.fromEntries(numbers), note.trim());
    const kept = await decide({ label: `Rule set ${copy.id} made`, entries: [{ kind: 'rule-set', set: copy as unknown as Record<string, unknown> }], inverse: [], rerun: false });
    if (kept) onDone(copy.id);
  };
  return (
    <form className="form" onSubmit={(event) => { event.preventDefault(); if (wrong === null) void keep(); }}>
      <label className="form-full">Name of the copy<input value={title} onChange={(event) => setTitle(event.target.value)} /></label>
      <div className="scrolls rule-limits" tabIndex={0} role="region" aria-label="Limits">
        <table className="criteria">
          <thead><tr><th scope="col">Clause</th><th scope="col">Limit</th><th scope="col">Source</th></tr></thead>
          <tbody>{set.clauses.map((clause) => <LimitRow key={clause.id} clause={clause} text={limits[clause.id]} onText={(text) => setLimits({ ...limits, [clause.id]: text })} />)}</tbody>
        </table>
      </div>
      <label className="form-full">Why it is changed<textarea rows={2} value={note} onChange={(event) => setNote(event.target.value)} /></label>
      <p className="quiet">{wrong ?? (rope?.writable === false ? rope.remark : 'The copy goes to the journal of this rope. Confirm it in the next step to use it.')}</p>
      <p className="start-actions"><button type="submit" className="button-strong" disabled={wrong !== null}>Keep the copy</button><button type="button" onClick={() => onDone(null)}>Back to the rule sets</button></p>
    </form>
  );
}

function LimitRow({ clause, text, onText }: { readonly clause: Clause; readonly text: string | undefined; readonly onText: (text: string) => void }) {
  return (
    <tr>
      <th scope="row">{plain(clause.id)}<small>{clause.sentence}</small></th>
      <td>{clause.limit.kind === 'number'
        ? <label className="limit-field"><span aria-hidden="true">{COMPARATOR_SIGNS[clause.comparator]}</span><input className="short" inputMode="decimal" aria-label={`Limit of ${plain(clause.id)}, ${clause.unit || 'no unit'}`} value={text ?? figure(clause.limit.value)} onChange={(event) => onText(event.target.value)} /> {clause.unit}</label>
        : <small>from a table; not changed here</small>}</td>
      <td><ProvenanceBadge provenance={clause.provenance} /> <small className="quiet">{clause.source}</small></td>
    </tr>
  );
}

function freeId(title: string, taken: readonly string[]): string {
  const base = `own-${title.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 48)}`.replace(/-$/, '');
  if (!taken.includes(base)) return base;
  let number = 2;
  while (taken.includes(`${base}-${number}`)) number += 1;
  return `${base}-${number}`;
}
