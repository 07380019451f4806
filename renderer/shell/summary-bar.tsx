import { commandNamed } from '../state/named-command.ts';
import { useApp } from '../state/store.ts';
import { dayOf, fixed } from '../text/format.ts';
import { SUMMARY_WORDS } from '../text/words.ts';
import { CommandButton } from '../ui/command-button.tsx';
import { Glyph } from '../ui/glyph.tsx';

const GLYPHS = { continue: 'stable', 'continue-shorter-interval': 'growing', refer: 'new', 'discard-criterion-reached': 'caution' } as const;

/** The judgement in one line, always in view, with its cautions. Advice to a competent person, never a release. */
export function SummaryBar() {
  const view = useApp((state) => state.view);
  const rope = useApp((state) => state.rope);
  if (view === null) return null;
  const { summary, cautions } = view.assessment;
  return (
    <section className={`summary summary-${summary.state}`} aria-label="Summary">
      <div className="summary-head">
        <p className="summary-state"><Glyph name={GLYPHS[summary.state]} size={15} /> {SUMMARY_WORDS[summary.state]}</p>
        <p className="advice">Advice to a competent person, not a release to service.</p>
      </div>
      <ul className="summary-reasons" title={summary.reasons.join('\n')}>{summary.reasons.slice(0, 2).map((each) => <li key={each}>{each}</li>)}</ul>
      <p className="summary-figure"><small>Next inspection by</small><b>{summary.next_inspection_by === null ? 'cannot be said' : dayOf(summary.next_inspection_by)}</b></p>
      <p className="summary-figure"><small><span className="hatch hatch-sample" aria-hidden="true" /> NOT INSPECTED</small><b>{fixed(summary.not_inspected_m, 1)} m</b></p>
      {rope !== null && !rope.writable && <p className="not-kept" title={rope.remark}>Decisions are not kept</p>}
      <CommandButton command={commandNamed('show-cautions')} className="cautions-button">{`${summary.reasons.length > 2 ? 'Reasons and cautions' : 'Cautions'} ${cautions.length}`}</CommandButton>
    </section>
  );
}
