import { useState } from 'react';
import type { DroppedFile } from '../host/dropped-source.ts';
import { download } from '../state/keep-report.ts';
import { FILE_ROLES, recordOf, tablesAmong } from '../state/new-record.ts';
import type { RecordDraft, StatedFile } from '../state/new-record.ts';
import { openDropped } from '../state/open-rope.ts';
import { change } from '../state/store.ts';

const ROLE_WORDS: Record<StatedFile['role'], string> = { scan: 'a scan', notes: 'visual notes', neither: 'neither' };

/** Scans that came without a record: what they are, when they were taken, and of what rope, in one form. */
export function NewRecordScreen({ files }: { readonly files: readonly DroppedFile[] }) {
  const [draft, setDraft] = useState<RecordDraft>(() => ({ name: '', application: '', construction: '', diameter: '', length: '', files: tablesAmong(files.map(({ name, file }) => ({ name, modified: file.lastModified }))) }));
  const made = recordOf(draft);
  const text = 'record' in made ? JSON.stringify(made.record, null, 2) : null;
  const read = () => {
    if (text === null) return;
    change({ unrecorded: null });
    void openDropped([...files, { name: 'record.json', file: new File([text], 'record.json', { type: 'application/json' }) }]);
  };
  const setFile = (file: string, part: Partial<StatedFile>) => setDraft({ ...draft, files: draft.files.map((each) => (each.file === file ? { ...each, ...part } : each)) });
  return (
    <form className="new-record scrolls" aria-label="New record" onSubmit={(event) => { event.preventDefault(); read(); }}>
      <h1>Scans without a record</h1>
      <p>There is no <code>record.json</code> among these files. State what is known of the rope and when each file was taken; what is left empty is not guessed.</p>
      <div className="form form-line">
        <Field words="Name of the rope" value={draft.name} onValue={(name) => setDraft({ ...draft, name })} />
        <Field words="What it does" value={draft.application} hint="haul rope of a funicular" onValue={(application) => setDraft({ ...draft, application })} />
        <Field words="Construction" value={draft.construction} hint="6x19S-FC" onValue={(construction) => setDraft({ ...draft, construction })} />
        <Field words="Diameter, mm" value={draft.diameter} onValue={(diameter) => setDraft({ ...draft, diameter })} />
        <Field words="Length, m" value={draft.length} onValue={(length) => setDraft({ ...draft, length })} />
      </div>
      <table className="criteria">
        <thead><tr><th scope="col">File</th><th scope="col">Holds</th><th scope="col">Taken on</th></tr></thead>
        <tbody>{draft.files.map((each) => (
          <tr key={each.file}>
            <th scope="row">{each.file}</th>
            <td><select aria-label={`What ${each.file} holds`} value={each.role} onChange={(event) => setFile(each.file, { role: event.target.value as StatedFile['role'] })}>{FILE_ROLES.map((role) => <option key={role} value={role}>{ROLE_WORDS[role]}</option>)}</select></td>
            <td><input type="date" aria-label={`Date of ${each.file}`} value={each.date} onChange={(event) => setFile(each.file, { date: event.target.value })} /></td>
          </tr>
        ))}</tbody>
      </table>
      <p className="quiet">{'missing' in made ? made.missing : 'Scans of one date are runs of one inspection, and its notes stand beside them; photos are found by themselves. To keep decisions, save record.json beside the scans and open the folder.'}</p>
      <p className="start-actions">
        <button type="submit" className="button-strong" disabled={text === null}>Read these scans</button>
        <button type="button" disabled={text === null} onClick={() => { if (text !== null) download('record.json', text, 'application/json'); }}>Save record.json</button>
        <button type="button" onClick={() => change({ unrecorded: null })}>Back</button>
      </p>
    </form>
  );
}

function Field({ words, value, hint, onValue }: { readonly words: string; readonly value: string; readonly hint?: string; readonly onValue: (value: string) => void }) {
  return <label>{words}<input value={value} placeholder={hint} onChange={(event) => onValue(event.target.value)} /></label>;
}
