import { useEffect, useState } from 'react';
import type { Answer } from '../../main/contract.ts';
import { openEntry, troubleOf } from '../state/open-rope.ts';
import { change, useApp } from '../state/store.ts';
import { Sheet } from '../ui/dialog.tsx';

/** The app's own folder chooser, for shells without native dialogs. */
export function BrowseDialog() {
  const host = useApp((state) => state.host);
  const [at, setAt] = useState<string | null>(null);
  const [seen, setSeen] = useState<Answer<'browse'> | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    host?.call('browse', { token: at }).then(
      (answer) => { if (!gone) { setSeen(answer); setFailure(null); } },
      (error: unknown) => { if (!gone) setFailure(troubleOf(error, '').remedy); },
    );
    return () => { gone = true; };
  }, [host, at]);
  const close = () => change({ dialog: null });
  return (
    <Sheet title="Open a rope folder" onClose={close}>
      {failure !== null && <p role="alert" className="remark">{failure}</p>}
      {seen === null ? <p className="empty">Reading…</p> : (
        <>
          <p className="browse-place"><code>{seen.here.place}</code></p>
          <div className="start-actions">
            <button type="button" disabled={seen.parent === null} onClick={() => setAt(seen.parent)}>Up one folder</button>
            <button type="button" className="button-strong" disabled={!seen.here.hasRecord} onClick={() => void openEntry(seen.here)}>Open this folder</button>
          </div>
          {!seen.here.hasRecord && <p className="quiet">This folder holds no record.json.</p>}
          <ul className="entries browse-entries scrolls">
            {seen.entries.map((each) => (
              <li key={each.token} className="entry">
                <button type="button" className="entry-open" onClick={() => (each.hasRecord ? void openEntry(each) : setAt(each.token))}><b>{each.label}</b>{each.hasRecord && <small>rope folder</small>}</button>
              </li>
            ))}
          </ul>
          {seen.entries.length === 0 && <p className="empty">No folders in here.</p>}
        </>
      )}
    </Sheet>
  );
}
