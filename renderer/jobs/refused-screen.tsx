import { useMemo } from 'react';
import { commandNamed } from '../state/named-command.ts';
import { useApp } from '../state/store.ts';
import { CommandButton } from '../ui/command-button.tsx';
import { Panel } from '../ui/panel.tsx';
import { ColumnForm } from './column-form.tsx';
import { alikeFiles, statedColumns, useHeads } from './use-heads.ts';

/** A folder that could not be assessed as it is: every fault has its line, and files whose columns are unclear can be set right here. */
export function RefusedScreen() {
  const rope = useApp((state) => state.rope);
  const refused = useApp((state) => state.refused);
  const journal = useApp((state) => state.journal);
  const files = useMemo(() => [...new Set(refused.map((each) => each.file))].filter((file) => file !== 'record.json' && rope?.files.some((each) => each.name === file)), [refused, rope]);
  const heads = useHeads(files, null);
  return (
    <div className="refused scrolls" tabIndex={0} role="region" aria-label="Files to set right">
      <h2>{rope?.label} could not be assessed yet</h2>
      <p>Correct the files and read the folder again, or tell the program here what the columns are. Nothing was written.</p>
      <p className="start-actions"><CommandButton command={commandNamed('analyse-again')} className="button-strong" /><CommandButton command={commandNamed('close-rope')} /></p>
      {files.map((file) => {
        const head = heads.get(file);
        return (
          <section key={file} aria-label={file}>
            <h3>{file}</h3>
            {head === undefined ? <p className="empty">Reading…</p> : 'refusal' in head ? <p className="remark">{head.refusal}</p>
              : <Panel name={`The columns of ${file}`}><ColumnForm key={`${file} ${journal.length}`} file={file} preview={head.preview} former={statedColumns(file, null, journal) ?? {}} alike={alikeFiles(heads, file)} /></Panel>}
          </section>
        );
      })}
    </div>
  );
}
