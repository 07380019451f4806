import { useMemo, useState } from 'react';
import { ownRuleSets } from '../../analysis/criteria/own-rule-sets.ts';
import type { RuleSet } from '../../analysis/criteria/rule-set.ts';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { newestOf } from '../../analysis/rope/journal.ts';
import type { Omitted } from '../state/app-state.ts';
import { decide } from '../state/decide.ts';
import { change, store, useApp } from '../state/store.ts';
import { sentence } from '../text/format.ts';
import { Sheet } from '../ui/dialog.tsx';
import { CopyRules } from './copy-rules.tsx';
import { useView } from './use-inspections.ts';

/** The competent person confirms, once per rope, which rule sets it is held against, picks others, or changes a copy. */
export function RulesDialog() {
  const { criteria } = useView();
  const journal = useApp((state) => state.journal);
  const [picked, setPicked] = useState<readonly string[]>(criteria.ruleSets.map((each) => each.id));
  const [copying, setCopying] = useState<RuleSet | null>(null);
  const sets = useMemo(() => inOrder(ownRuleSets(journal), criteria.ruleSets.map((each) => each.id)), [journal, criteria]);
  const close = () => change({ dialog: null });
  if (copying !== null) {
    const taken = sets.map((each) => each.id);
    return <Sheet title={`Change a copy of: ${copying.title}`} onClose={close} wide><CopyRules set={copying} taken={taken} onDone={(id) => { setCopying(null); if (id !== null) setPicked([...picked.filter((each) => each !== copying.id), id]); }} /></Sheet>;
  }
  const turn = (id: string) => setPicked(picked.includes(id) ? picked.filter((each) => each !== id) : [...picked, id]);
  return (
    <Sheet title="Rule sets for this rope" onClose={close} wide>
      <div className="rule-sets scrolls" tabIndex={0} role="group" aria-label="Rule sets">
        {sets.map((set) => <RuleSetRow key={set.id} set={set} on={picked.includes(set.id)} onTurn={() => turn(set.id)} onCopy={() => setCopying(set)} />)}
      </div>
      <Confirm picked={picked} />
    </Sheet>
  );
}

/** Sets in use first, then a user's own, then the shipped ones. */
function inOrder(own: readonly RuleSet[], used: readonly string[]): RuleSet[] {
  const all = [...own, ...RULE_SETS.filter((set) => !own.some((each) => each.id === set.id))];
  return [...all.filter((set) => used.includes(set.id)), ...all.filter((set) => !used.includes(set.id))];
}

function RuleSetRow({ set, on, onTurn, onCopy }: { readonly set: RuleSet; readonly on: boolean; readonly onTurn: () => void; readonly onCopy: () => void }) {
  const { criteria } = useView();
  const reason = criteria.ruleSets.find((each) => each.id === set.id)?.reason;
  return (
    <div className="rule-set-row">
      <label className="rule-set">
        <input type="checkbox" checked={on} onChange={onTurn} />
        <span>
          <b>{set.title}</b> <small>{set.edition}</small>{set.changed !== undefined && <span className="badge badge-user">changed: {set.changed.clauses.join(', ') || 'no clause'}</span>}<br />
          <small className="quiet">{sentence(reason ?? set.scope.text)}{set.caution === undefined || reason?.includes(set.caution) === true ? null : ` Caution: ${set.caution}`}</small>
        </span>
      </label>
      <button type="button" onClick={onCopy} aria-label={`Change a copy of ${set.title}`}>Change a copy…</button>
    </div>
  );
}

function Confirm({ picked }: { readonly picked: readonly string[] }) {
  const { criteria } = useView();
  const rope = useApp((state) => state.rope);
  const [reason, setReason] = useState('');
  const wrong = picked.length === 0 ? 'Pick at least one rule set.' : reason.trim() === '' ? 'Say why these apply: it stands in the report.' : null;
  const keep = async () => {
    change({ dialog: null });
    const former = newestOf(store.getState().journal, 'rule-choice');
    const inverse: Omitted[] = [{ kind: 'rule-choice', rules: former?.rules ?? criteria.ruleSets.map((each) => each.id), reason: former?.reason ?? 'taken back: as chosen by the program' }];
    await decide({ label: 'Rule sets chosen', entries: [{ kind: 'rule-choice', rules: [...picked], reason: reason.trim() }], inverse, rerun: true });
  };
  return (
    <form className="form" onSubmit={(event) => { event.preventDefault(); if (wrong === null) void keep(); }}>
      <label>Reason<textarea rows={2} value={reason} onChange={(event) => setReason(event.target.value)} placeholder="for example: haul rope of a funicular under the national form" /></label>
      <p className="quiet">{wrong ?? (rope?.writable === false ? rope.remark : 'Compare every limit with the edition in force. Kept in the journal with who and when.')}</p>
      <button type="submit" className="button-strong" disabled={wrong !== null}>Confirm these rule sets</button>
    </form>
  );
}
