import { useState } from 'react';
import type { RunPreview } from '../../analysis/intake/preview.ts';
import { makeRecipe } from '../../analysis/intake/preview.ts';
import type { RunColumns } from '../../analysis/rope/record.ts';
import { decide } from '../state/decide.ts';
import type { Omitted } from '../state/app-state.ts';
import { rememberRecipe } from '../state/recipes.ts';
import { useApp } from '../state/store.ts';
import { share } from '../text/format.ts';
import { UNITS, columnsOf, draftOf, faultOf } from './column-choice.ts';
import type { ColumnRole } from './column-choice.ts';

const ROLES: Record<ColumnRole, string> = { position: 'position', lma: 'LMA (loss of metal)', lf: 'LF (local faults)', speed: 'speed', time: 'time', unused: 'not used' };

const ROWS_SHOWN = 10;

interface ColumnFormProps {
  readonly file: string;
  readonly preview: RunPreview;
  /** Columns that the record or an earlier choice states, for taking a change back. */
  readonly former: RunColumns;
  /** Other files with the very same header. */
  readonly alike: readonly string[];
}

/** First rows as understood, a guess for every column with its reason, and corrections by hand. */
export function ColumnForm({ file, preview, former, alike }: ColumnFormProps) {
  const rope = useApp((state) => state.rope);
  const guesses = preview.understanding.columns;
  const [draft, setDraft] = useState(() => draftOf(guesses));
  const [recipe, setRecipe] = useState('');
  const [all, setAll] = useState(alike.length > 0);
  const fault = faultOf(draft);
  const setColumn = (index: number, role: ColumnRole, unit: string) => setDraft({ ...draft, columns: draft.columns.map((each, i) => (i === index ? { role, unit } : each)) });
  const keep = () => {
    const columns = columnsOf(draft, preview.names, preview.understanding.headerLine !== null);
    if (recipe.trim() !== '') rememberRecipe(makeRecipe(recipe.trim(), preview, columns));
    const files = all ? [file, ...alike] : [file];
    const named = recipe.trim() === '' ? {} : { recipe: recipe.trim() };
    void decide({
      label: `Columns of ${file} chosen`, rerun: true,
      entries: files.map((each): Omitted => ({ kind: 'column-choice', file: each, columns: columns as Record<string, unknown>, ...named })),
      inverse: files.map((each): Omitted => ({ kind: 'column-choice', file: each, columns: former as Record<string, unknown> })),
    });
  };
  return (
    <section className="column-form" aria-label={`Columns of ${file}`}>
      <div className="scrolls" tabIndex={0} role="region" aria-label="First rows as understood">
        <table className="first-rows">
          <thead>
            <tr><th scope="row">Column</th>{guesses.map((each) => <th scope="col" key={each.index}>{each.name || `column ${each.index + 1}`}</th>)}</tr>
            <tr><th scope="row">Is</th>{draft.columns.map((each, index) => <td key={index}><select aria-label={`What column ${index + 1} is`} value={each.role} onChange={(event) => { const role = event.target.value as ColumnRole; setColumn(index, role, UNITS[role][0]); }}>{(Object.keys(ROLES) as ColumnRole[]).map((role) => <option key={role} value={role}>{ROLES[role]}</option>)}</select></td>)}</tr>
            <tr><th scope="row">Unit</th>{draft.columns.map((each, index) => <td key={index}>{each.role === 'unused' ? '' : <select aria-label={`Unit of column ${index + 1}`} value={each.unit} onChange={(event) => setColumn(index, each.role, event.target.value)}>{[...new Set([each.unit, ...UNITS[each.role]])].map((unit) => <option key={unit} value={unit}>{unit === '' ? 'none' : unit}</option>)}</select>}</td>)}</tr>
            <tr><th scope="row">Why</th>{guesses.map((each) => <td key={each.index} className="why">{each.reason}{each.role !== 'unused' && <small> ({share(each.certainty)} sure)</small>}</td>)}</tr>
          </thead>
          <tbody>{preview.rows.slice(0, ROWS_SHOWN).map((row, index) => <tr key={index}><th scope="row" className="quiet">{index + 1}</th>{guesses.map((each) => <td key={each.index} className="number">{row[each.index] ?? ''}</td>)}</tr>)}</tbody>
        </table>
      </div>
      <div className="form form-line">
        {draft.columns.some((each) => each.role === 'lma') && <label>A loss is written<select value={draft.lossIs} onChange={(event) => setDraft({ ...draft, lossIs: event.target.value as typeof draft.lossIs })}><option value="found out">as found in the data</option><option value="positive">positive</option><option value="negative">negative</option></select></label>}
        {draft.columns.some((each) => each.role === 'position' && each.unit === 'counts') && <label>Pulses per metre<input className="short" inputMode="decimal" value={draft.pulsesPerMetre} onChange={(event) => setDraft({ ...draft, pulsesPerMetre: event.target.value })} /></label>}
        <label>Name of this recipe<input value={recipe} onChange={(event) => setRecipe(event.target.value)} placeholder="for example: blue head 2" /></label>
        {alike.length > 0 && <label className="check"><input type="checkbox" checked={all} onChange={(event) => setAll(event.target.checked)} />also for the {alike.length} other file{alike.length === 1 ? '' : 's'} with these columns</label>}
        <button type="button" className="button-strong" disabled={fault !== null} onClick={keep}>Use these columns</button>
      </div>
      {preview.problems.length > 0 && <ul className="remark">{preview.problems.map((each, index) => <li key={index}>{each.what}: {each.remedy}</li>)}</ul>}
      <p className="quiet">{fault ?? (rope?.writable === false ? rope.remark : 'The choice goes to the journal; the file itself is never changed. A named recipe is used without a question for later files with the same header.')}</p>
    </section>
  );
}
