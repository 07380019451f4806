import { commandNamed } from '../state/named-command.ts';
import { useApp } from '../state/store.ts';
import { dayOf, fixed } from '../text/format.ts';
import { SUMMARY_WORDS } from '../text/words.ts';
import { CommandButton } from '../ui/command-button.tsx';
import { Glyph } from '../ui/glyph.tsx';
import type { AnalysisView } from '../workers/analysis-view.ts';

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
      <ul className="summary-reasons" title={summary.reasons.join('\n')}>{summary.reasons.slice(0, 2).map((each) => <li key={each}>{headOf(each)}</li>)}</ul>
      <p className="summary-figure"><small>{summary.state === 'discard-criterion-reached' ? 'Next inspection' : 'Next inspection by'}</small><b>{nextOf(view)}</b></p>
      <p className="summary-figure"><small><span className="hatch hatch-sample" aria-hidden="true" /> NOT INSPECTED</small><b>{summary.not_inspected_m > 0 && summary.not_inspected_m < 0.05 ? 'less than 0.1' : fixed(summary.not_inspected_m, 1)} m</b></p>
      {rope !== null && !rope.writable && <p className="not-kept" title={rope.remark}>Decisions are not kept</p>}
      <CommandButton command={commandNamed('show-cautions')} className="cautions-button">{`${summary.reasons.length > 2 ? 'Reasons and cautions' : 'Cautions'} ${cautions.length}`}</CommandButton>
    </section>
  );
}

/** A criterion that is reached explains itself after a colon: the bar names it, the cautions hold the rest. */
const headOf = (reason: string): string => / reached$/.test(reason.split(': ')[0]) ? reason.split(': ')[0] : reason;

function nextOf({ assessment: { summary } }: AnalysisView): string {
  if (summary.state === 'discard-criterion-reached') return 'before further use';
  return summary.next_inspection_by === null ? 'cannot be said' : dayOf(summary.next_inspection_by);
}
