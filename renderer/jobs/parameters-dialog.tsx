import { useState } from 'react';
import { CONDITION_PARAMETERS } from '../../analysis/condition/parameters.ts';
import { INTERVAL_SHARE } from '../../analysis/life/interval-share.ts';
import { newestOf } from '../../analysis/rope/journal.ts';
import { decide } from '../state/decide.ts';
import { change, useApp } from '../state/store.ts';
import { sentence } from '../text/format.ts';
import { typedNumber } from '../text/typed-number.ts';
import { Sheet } from '../ui/dialog.tsx';

interface Row { readonly name: string; readonly value: number; readonly unit: string; readonly reason: string }

const ROWS: readonly Row[] = [
  ...Object.entries(CONDITION_PARAMETERS).map(([name, { value, unit, reason }]) => ({ name, value, unit, reason })),
  { name: INTERVAL_SHARE.name, value: INTERVAL_SHARE.value, unit: '1', reason: INTERVAL_SHARE.reason },
];

/** Every setting of the analysis with its usual value and why; a change is kept in the journal and stands in the assessment. */
export function ParametersDialog() {
  const held = useApp((state) => newestOf(state.journal, 'parameters')?.values) ?? {};
  const rope = useApp((state) => state.rope);
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>({});
  const numbers = Object.entries(texts).map(([name, text]) => [name, typedNumber(text)] as const);
  const bad = numbers.find(([, value]) => !(value > 0));
  const wanted = { ...held, ...Object.fromEntries(numbers) };
  const same = ROWS.every(({ name, value }) => (wanted[name] ?? value) === (held[name] ?? value));
  const close = () => change({ dialog: null });
  const keep = (values: Record<string, number>) => {
    close();
    void decide({ label: 'Parameters of the analysis changed', entries: [{ kind: 'parameters', values }], inverse: [{ kind: 'parameters', values: { ...held } }], rerun: true });
  };
  return (
    <Sheet title="Parameters of the analysis" onClose={close} wide>
      <form className="form" onSubmit={(event) => { event.preventDefault(); if (bad === undefined && !same) keep(wanted); }}>
        <div className="scrolls parameter-table" tabIndex={0} role="region" aria-label="Parameters">
          <table className="criteria">
            <thead><tr><th scope="col">Parameter</th><th scope="col">Value</th><th scope="col">Unit</th><th scope="col">Usual</th></tr></thead>
            <tbody>{ROWS.map((row) => {
              const now = texts[row.name] ?? String(held[row.name] ?? row.value);
              return (
                <tr key={row.name}>
                  <th scope="row">{words(row.name)}<small>{sentence(row.reason)}</small></th>
                  <td><input className="short" inputMode="decimal" aria-label={words(row.name)} value={now} onChange={(event) => setTexts({ ...texts, [row.name]: event.target.value })} /></td>
                  <td>{row.unit === '1' ? '–' : row.unit}</td>
                  <td>{row.value}{Number(now.replace(',', '.')) !== row.value && <span className="badge badge-user">changed</span>}</td>
                </tr>
              );
            })}</tbody>
          </table>
        </div>
        <p className="quiet">{bad !== undefined ? `${words(bad[0])}: write a number above 0.` : rope?.writable === false ? rope.remark : 'A change is kept in the journal with who and when, and stands in the assessment. The whole analysis is run again.'}</p>
        <p className="start-actions">
          <button type="submit" className="button-strong" disabled={bad !== undefined || same}>Use these and analyse again</button>
          <button type="button" disabled={ROWS.every(({ name, value }) => (held[name] ?? value) === value)} onClick={() => keep({})}>Back to the usual values</button>
        </p>
      </form>
    </Sheet>
  );
}

/** `faultBaselineLength` as a reader would say it. */
function words(name: string): string {
  const text = name.replace(/([A-Z0-9]+m?)/g, (part) => ` ${part.toLowerCase()}`).trim();
  return text[0].toUpperCase() + text.slice(1);
}
