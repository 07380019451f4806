import { useMemo, useState } from 'react';
import type { Assessment } from '../../analysis/assessment/schema.ts';
import type { RunView } from '../workers/analysis-view.ts';
import { useApp } from '../state/store.ts';
import { useAnswer } from '../state/use-answer.ts';
import { ChannelStrip } from '../strip/channel-strip.tsx';
import { Ruler } from '../strip/ruler.tsx';
import { counted, dayOf, fixed, grouped, metres } from '../text/format.ts';
import { plain } from '../text/words.ts';
import { showLength } from '../state/show.ts';
import { change } from '../state/store.ts';
import { commandNamed } from '../state/named-command.ts';
import { CommandButton } from '../ui/command-button.tsx';
import { Panel } from '../ui/panel.tsx';
import { useWidth } from '../ui/use-width.ts';
import { LoosePhotos } from './loose-photos.tsx';
import { ColumnForm } from './column-form.tsx';
import { alikeFiles, statedColumns, useHeads } from './use-heads.ts';
import { useView } from './use-inspections.ts';

/** Stands for the photos where a file is picked; no file of a folder has an empty name. */
const PHOTOS = '';

/** Every file: what was understood and why, what is wrong with it, what it saw, and corrections by hand. */
export function IntakeScreen() {
  const view = useView();
  const files = useMemo(() => view.record.inspections.flatMap((each) => each.runs.map((run) => ({ file: run.file, inspection: each.id, date: each.date }))), [view]);
  const [picked, setPicked] = useState<string | null>(null);
  const photos = view.assessment.photos;
  const file = files.find((each) => each.file === picked) ?? (picked === PHOTOS || files.length === 0 ? null : files[0]);
  return (
    <div className="intake-screen">
      <nav className="intake-files scrolls" aria-label="Scan files">
        <ul>{files.map((each) => <li key={each.file}><FileRow {...each} chosen={each.file === file?.file} onPick={() => setPicked(each.file)} /></li>)}</ul>
        {files.length === 0 && <p className="empty">The record names no scan file. Add inspections with their runs to record.json.</p>}
        <PhotosRow photos={photos} chosen={file === null} onPick={() => setPicked(PHOTOS)} />
        <p className="intake-more"><CommandButton command={commandNamed('show-parameters')} /></p>
      </nav>
      <section className="intake-detail scrolls" tabIndex={0} aria-label={file === null ? 'Photos' : `File ${file.file}`}>
        <Panel name="This file">{file === null ? <LoosePhotos /> : <FileDetail key={file.file} file={file.file} all={files.map((each) => each.file)} inspection={file.inspection} />}</Panel>
      </section>
    </div>
  );
}

function PhotosRow({ photos, chosen, onPick }: { readonly photos: Assessment['photos']; readonly chosen: boolean; readonly onPick: () => void }) {
  const waiting = photos.filter((each) => each.position_m === null).length;
  return (
    <button type="button" className="file-row" aria-current={chosen} onClick={onPick}>
      <b>Photos</b>
      <small>{photos.length === 0 ? 'none without a note' : `${photos.length} without a note, ${waiting === 0 ? 'all placed' : `${waiting} to place`}`}</small>
    </button>
  );
}

function FileRow({ file, date, chosen, onPick }: { readonly file: string; readonly date: string; readonly chosen: boolean; readonly onPick: () => void }) {
  const { runs } = useView();
  const run = runs.find((each) => each.file === file);
  const warnings = run?.quality.filter((each) => each.level !== 'info').length ?? 0;
  return (
    <button type="button" className="file-row" aria-current={chosen} onClick={onPick}>
      <b>{file}</b>
      <small>{dayOf(date)}: {run === undefined ? 'not used: rejected' : run.rejected ? 'rejected' : `${grouped(run.rows)} rows, ${warnings === 0 ? 'no warning' : counted(warnings, 'warning')}`}</small>
    </button>
  );
}

function FileDetail({ file, all, inspection }: { readonly file: string; readonly all: readonly string[]; readonly inspection: string }) {
  const view = useView();
  const journal = useApp((state) => state.journal);
  const heads = useHeads(all, view.record);
  const head = heads.get(file);
  const run = view.runs.find((each) => each.file === file);
  const recorded = statedColumns(file, view.record, journal) ?? {};
  return (
    <>
      <h2>{file}</h2>
      {run && <RunFacts run={run} />}
      {run && <RunPreview run={run} />}
      {run && <Findings run={run} inspection={inspection} />}
      {!run && <UnusedFindings inspection={inspection} />}
      <h3>First rows as understood</h3>
      {head === undefined ? <p className="empty">Reading…</p> : 'refusal' in head ? <p className="remark">{head.refusal}</p> : (
        <>
          <ColumnForm key={`${file} ${journal.length}`} file={file} preview={head.preview} former={recorded} alike={alikeFiles(heads, file)} />
          <ul className="plain-list quiet">{(run?.understanding.decisions ?? head.preview.understanding.decisions).map((each, index) => <li key={index}>{each}</li>)}</ul>
        </>
      )}
    </>
  );
}

function RunFacts({ run }: { readonly run: RunView }) {
  const { understanding } = run;
  const seen = run.covered.reduce((sum, each) => sum + each.to - each.from, 0);
  const delimiter = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar', ' ': 'blanks' }[understanding.delimiter] ?? understanding.delimiter;
  return (
    <dl className="facts facts-row">
      <div><dt>Rows</dt><dd>{grouped(run.rows)}{run.rowsRejected > 0 && `, ${grouped(run.rowsRejected)} rejected`}</dd></div>
      <div><dt>In the file</dt><dd>{fixed(run.from, 2)} – {fixed(run.to, 2)} m</dd></div>
      <div><dt>Sampled every</dt><dd>{fixed(run.step * 1000, 1)} mm</dd></div>
      <div><dt>Seen</dt><dd>{metres(seen, 100)}</dd></div>
      <div><dt>Encoding</dt><dd>{understanding.encoding}</dd></div>
      <div><dt>Written with</dt><dd>{delimiter}, decimal {understanding.decimalMark === '.' ? 'point' : 'comma'}</dd></div>
      <div><dt>Direction</dt><dd>{run.statedDirection ?? 'found out'}{run.positionsFell && ', positions fall'}</dd></div>
      {run.clock !== null && <div><dt>Clock</dt><dd>{run.clock}</dd></div>}
      <div><dt>SHA-256</dt><dd><code title={run.sha256}>{run.sha256.slice(0, 12)}…</code></dd></div>
    </dl>
  );
}

/** The file in its own positions, before anything is aligned. */
function RunPreview({ run }: { readonly run: RunView }) {
  const theme = useApp((state) => state.theme);
  const { width, ref } = useWidth();
  const { answer } = useAnswer('run', { file: run.file, pixels: Math.round(width * 1.4) });
  const window = useMemo(() => ({ from: run.from, to: Math.max(run.to, run.from + 0.1) }), [run]);
  const colour = theme === 'light' ? '#31688e' : '#6ece58';
  const lines = useMemo(() => (['loss', 'fault'] as const).map((which) => [{ name: run.file, points: answer?.[which] ?? null, colour, width: 1.2 }]), [answer, colour, run]);
  return (
    <div ref={ref} className="run-preview">
      <Ruler window={window} width={width} title="file, m" />
      <ChannelStrip title="LMA" unit="%" lines={lines[0]} window={window} height={90} theme={theme} leastSpan={1.5} label={`LMA of ${run.file} by its own position`} />
      <ChannelStrip title="LF" unit={run.faultUnit} lines={lines[1]} window={window} height={80} theme={theme} leastSpan={1e-6} label={`LF of ${run.file} by its own position`} />
    </div>
  );
}

function Findings({ run, inspection }: { readonly run: RunView; readonly inspection: string }) {
  const { inspections } = useView();
  const placed = inspections.find((each) => each.id === inspection)?.quality ?? [];
  if (run.quality.length === 0) return <p>No finding on the quality of this run.</p>;
  return (
    <>
      <h3>Quality</h3>
      <ul className="findings">
        {run.quality.map((each, index) => {
          const there = placed.find((one) => one.code === each.code && one.message === each.message);
          return (
            <li key={index} className={`finding-level-${each.level}`}>
              <b>{each.level}</b> <span>{plain(each.code)}</span> <span>{each.message}</span>
              <span className="quiet">{fixed(each.where.from, 1)} – {fixed(each.where.to, 1)} m in the file</span>
              {there && <button type="button" className="link" onClick={() => { change({ screen: 'rope' }); showLength(there.where.from, there.where.to); }}>show on the rope</button>}
            </li>
          );
        })}
      </ul>
    </>
  );
}

function UnusedFindings({ inspection }: { readonly inspection: string }) {
  const { assessment } = useView();
  const findings = assessment.inspections.find((each) => each.id === inspection)?.quality ?? [];
  return (
    <>
      <p className="remark">No run of this inspection could be used: it is part of no judgement.</p>
      <ul className="findings">{findings.map((each, index) => <li key={index} className={`finding-level-${each.level}`}><b>{each.level}</b> <span>{plain(each.code)}</span> <span>{each.message}</span></li>)}</ul>
    </>
  );
}
