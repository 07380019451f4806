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
      <p className="summary-state"><Glyph name={GLYPHS[summary.state]} size={15} /> {SUMMARY_WORDS[summary.state]}</p>
      <p className="summary-reason" title={summary.reasons.join('\n')}>{summary.reasons[0] ?? ''}{summary.reasons.length > 1 && <CommandButton command={commandNamed('show-cautions')} className="link">{`and ${summary.reasons.length - 1} more`}</CommandButton>}</p>
      <p><small>Next inspection by</small> <b>{summary.next_inspection_by === null ? 'cannot be said' : dayOf(summary.next_inspection_by)}</b></p>
      <p><span className="hatch hatch-sample" aria-hidden="true" /> <small>NOT INSPECTED</small> <b>{fixed(summary.not_inspected_m, 1)} m</b></p>
      <CommandButton command={commandNamed('show-cautions')} className="cautions-button">{`Cautions ${cautions.length}`}</CommandButton>
      <p className="advice">Advice to a competent person, not a release to service.{rope !== null && !rope.writable && <b title={rope.remark}> Decisions are not kept.</b>}</p>
    </section>
  );
}
