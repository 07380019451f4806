import { useState } from 'react';
import { RULE_SETS } from '../../analysis/criteria/rule-sets/index.ts';
import { decide } from '../state/decide.ts';
import type { Omitted } from '../state/app-state.ts';
import { newestOf } from '../../analysis/rope/journal.ts';
import { change, store, useApp } from '../state/store.ts';
import { Sheet } from '../ui/dialog.tsx';
import { useView } from './use-inspections.ts';

/** The competent person confirms, once per rope, which rule sets it is held against, or picks others. */
export function RulesDialog() {
  const { criteria } = useView();
  const rope = useApp((state) => state.rope);
  const [picked, setPicked] = useState<readonly string[]>(criteria.ruleSets.map((each) => each.id));
  const [reason, setReason] = useState('');
  const turn = (id: string) => setPicked(picked.includes(id) ? picked.filter((each) => each !== id) : [...picked, id]);
  const wrong = picked.length === 0 ? 'Pick at least one rule set.' : reason.trim() === '' ? 'Say why these apply: it stands in the report.' : null;
  const keep = async () => {
    change({ dialog: null });
    const former = newestOf(store.getState().journal, 'rule-choice');
    const inverse: Omitted[] = [{ kind: 'rule-choice', rules: former?.rules ?? criteria.ruleSets.map((each) => each.id), reason: former?.reason ?? 'taken back: as chosen by the program' }];
    await decide({ label: 'Rule sets chosen', entries: [{ kind: 'rule-choice', rules: [...picked], reason: reason.trim() }], inverse, rerun: true });
  };
  return (
    <Sheet title="Rule sets for this rope" onClose={() => change({ dialog: null })} wide>
      <form className="form" onSubmit={(event) => { event.preventDefault(); if (wrong === null) void keep(); }}>
        <div className="rule-sets scrolls" tabIndex={0} role="group" aria-label="Rule sets">
          {RULE_SETS.map((set) => (
            <label key={set.id} className="rule-set">
              <input type="checkbox" checked={picked.includes(set.id)} onChange={() => turn(set.id)} />
              <span><b>{set.title}</b> <small>{set.edition}</small><br /><small className="quiet">{criteria.ruleSets.find((each) => each.id === set.id)?.reason ?? set.scope.text}{set.caution === undefined ? null : ` Caution: ${set.caution}`}</small></span>
            </label>
          ))}
        </div>
        <label>Reason<textarea rows={2} value={reason} onChange={(event) => setReason(event.target.value)} placeholder="for example: haul rope of a funicular under the national form" /></label>
        <p className="quiet">{wrong ?? (rope?.writable === false ? rope.remark : 'Compare every limit with the edition in force. Kept in the journal with who and when.')}</p>
        <button type="submit" className="button-strong" disabled={wrong !== null}>Confirm these rule sets</button>
      </form>
    </Sheet>
  );
}
