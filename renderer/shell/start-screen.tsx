import { useRef } from 'react';
import type { FolderEntry } from '../../main/contract.ts';
import { named } from '../host/read-drop.ts';
import { commandNamed } from '../state/named-command.ts';
import { openDropped, openEntry, refreshLists, troubleOf } from '../state/open-rope.ts';
import { change, store, useApp } from '../state/store.ts';
import { dayOf } from '../text/format.ts';
import { CommandButton } from '../ui/command-button.tsx';

/** Where work begins: open a rope folder, go on with a recent one, or look at a sample. */
export function StartScreen() {
  const host = useApp((state) => state.host);
  const recent = useApp((state) => state.recent);
  const samples = useApp((state) => state.samples);
  return (
    <div className="start">
      <section className="start-open">
        <h1>Open a rope folder</h1>
        <p>A rope folder holds <code>record.json</code> and the scan files, notes and photos that it names. Nothing in it is changed: decisions go to a journal beside the record.</p>
        <div className="start-actions">
          {host?.hasShell === true && <CommandButton command={commandNamed('open-folder')} className="button-strong">Open a rope folder…</CommandButton>}
          <PickFiles strong={host?.hasShell !== true} />
        </div>
        <p className="drop-here">or drop the folder, or scan files alone, anywhere on this window</p>
        {host?.hasShell === false && <p className="remark">This page stands alone, without the Strandbook program: folders can be dropped or picked, and decisions hold until the page closes.</p>}
      </section>
      {recent.length > 0 && (
        <section aria-labelledby="recent-title">
          <h2 id="recent-title">Recent ropes</h2>
          <ul className="entries">{recent.map((each) => <EntryRow key={each.token} entry={each} remark={`opened ${dayOf(each.openedAt)}`} forget />)}</ul>
        </section>
      )}
      {samples.length > 0 && (
        <section aria-labelledby="samples-title">
          <h2 id="samples-title">Sample ropes <span className="synthetic">SYNTHETIC</span></h2>
          <p className="quiet">Generated for trying out. They describe no real rope.</p>
          <ul className="entries">{samples.map((each) => <EntryRow key={each.token} entry={each} remark="generated" />)}</ul>
        </section>
      )}
    </div>
  );
}

function EntryRow({ entry, remark, forget = false }: { readonly entry: FolderEntry; readonly remark: string; readonly forget?: boolean }) {
  const drop = () => {
    const { host } = store.getState();
    if (host === null) return;
    host.call('forgetRecent', { token: entry.token }).then(refreshLists, (error: unknown) => change({ trouble: troubleOf(error, `${entry.label} stays in the list`) }));
  };
  return (
    <li className="entry">
      <button type="button" className="entry-open" onClick={() => void openEntry(entry)}><b>{entry.label}</b><span className="quiet">{entry.place}</span><small>{remark}</small></button>
      {forget && <button type="button" className="button-plain" onClick={drop} aria-label={`Take ${entry.label} off this list`} title="Take off this list">✕</button>}
    </li>
  );
}

/** The browser's own folder picker: files are read in the page. */
function PickFiles({ strong }: { readonly strong: boolean }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className={strong ? 'button-strong' : undefined} onClick={() => input.current?.click()}>Read a folder in this page…</button>
      <input ref={(element) => { input.current = element; element?.setAttribute('webkitdirectory', ''); }} type="file" multiple hidden aria-label="Rope folder to read in this page" onChange={(event) => {
        const files = [...(event.target.files ?? [])].map(named);
        event.target.value = '';
        if (files.length > 0) void openDropped(files);
      }} />
    </>
  );
}
