import { commandNamed } from '../state/named-command.ts';
import { newestOf } from '../../analysis/rope/journal.ts';
import { useApp } from '../state/store.ts';
import { Ruler } from '../strip/ruler.tsx';
import { ShareStrip } from '../strip/share-strip.tsx';
import { StripField } from '../strip/strip-field.tsx';
import { barOf } from '../strip/strip-scale.ts';
import { Lane } from '../strip/lanes.tsx';
import { dayOf, sentence } from '../text/format.ts';
import { plain } from '../text/words.ts';
import { CommandButton } from '../ui/command-button.tsx';
import { Panel } from '../ui/panel.tsx';
import { useWidth } from '../ui/use-width.ts';
import { CriteriaTable, keyOf, orderedResults } from './criteria-table.tsx';
import { ZoomBar } from './rope-screen.tsx';
import { useView } from './use-inspections.ts';

/** Discard criteria clause by clause, and how near the rope is to each along its length. */
export function CriteriaScreen() {
  return (
    <div className="criteria-screen">
      <Panel name="The share of limit"><ShareOfLimit /></Panel>
      <div className="criteria-below scrolls" tabIndex={0} role="region" aria-label="Criteria">
        <RuleSets />
        <Panel name="The criteria table"><CriteriaTable full /></Panel>
        <NotEvaluated />
      </div>
    </div>
  );
}

function ShareOfLimit() {
  const view = useView();
  const window = useApp((state) => state.window);
  const theme = useApp((state) => state.theme);
  const clause = useApp((state) => state.clause);
  const { width, ref } = useWidth();
  const first = orderedResults(view.criteria.results)[0];
  const chosen = clause ?? (first ? keyOf(first) : null);
  const governing = view.criteria.results.find((each) => keyOf(each) === chosen);
  return (
    <section className="criteria-strip" aria-label="Share of limit along the rope">
      <div className="strip-bar"><p className="chosen-clause">{chosen === null ? 'No clause evaluated' : <><b>{governing ? plain(governing.clause) : plain(chosen)}</b> {view.criteria.ruleSets.find((each) => each.id === governing?.ruleSet)?.title} <span className="quiet">drawn strong, all others thin</span></>}</p><ZoomBar /></div>
      <div ref={ref}>
        <StripField window={window} notInspected={view.assessment.not_inspected} label="Share of limit by rope position">
          <Ruler window={window} width={width} title={view.loopLength === null ? 'from A, m' : 'position, m'} />
          <ShareStrip strips={view.criteria.strips} chosen={chosen} window={window} height={170} theme={theme} />
          <Lane title="Worst place" height={20}>{governing && <i className="governing" style={barOf(governing.where.from, governing.where.to, window, 0.5) ?? undefined} />}</Lane>
        </StripField>
      </div>
    </section>
  );
}

function RuleSets() {
  const { criteria } = useView();
  const journal = useApp((state) => state.journal);
  const confirmed = newestOf(journal, 'rule-choice');
  return (
    <section className="rule-sets-used" aria-label="Rule sets used">
      <div className="list-head"><h2>Rule sets</h2><CommandButton command={commandNamed('choose-rules')} /></div>
      <ul className="plain-list">{criteria.ruleSets.map((each) => <li key={each.id}><b>{each.title}</b>, {each.edition}. <span className="quiet">{sentence(each.reason)}</span></li>)}</ul>
      <p className={confirmed ? 'quiet' : 'remark'}>{confirmed ? `Confirmed by ${confirmed.who} on ${dayOf(confirmed.at)}: ${confirmed.reason}` : 'Not yet confirmed by a competent person for this rope.'}</p>
    </section>
  );
}

function NotEvaluated() {
  const { criteria } = useView();
  if (criteria.notEvaluated.length === 0) return null;
  return (
    <section aria-labelledby="not-evaluated">
      <h2 id="not-evaluated">Could not be evaluated</h2>
      <p className="quiet">A clause in this list is neither reached nor not reached.</p>
      <table className="criteria">
        <thead><tr><th scope="col">Clause</th><th scope="col">What it needs</th><th scope="col">Rule set</th></tr></thead>
        <tbody>{criteria.notEvaluated.map((each, index) => <tr key={index}><th scope="row">{plain(each.clause)}</th><td>{each.needs}</td><td><small>{each.ruleSet}</small></td></tr>)}</tbody>
      </table>
    </section>
  );
}
