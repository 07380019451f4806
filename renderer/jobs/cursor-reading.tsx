import { profileAt } from '../../analysis/rope/profile-at.ts';
import { useApp } from '../state/store.ts';
import { useAnswer } from '../state/use-answer.ts';
import { dayOf, figure, fixed, metres } from '../text/format.ts';
import type { InspectionView } from '../workers/analysis-view.ts';
import { useInspections, useView } from './use-inspections.ts';

/** What stands under the cursor: its position from both ends, and every inspection's own values there. */
export function CursorReading() {
  const cursor = useApp((state) => state.cursor);
  if (cursor === null) return <p className="reading reading-empty">Click on a strip to put the cursor there; Shift with the arrow keys moves it.</p>;
  return <Reading at={cursor} />;
}

function Reading({ at }: { readonly at: number }) {
  const view = useView();
  const { shown, colours } = useInspections();
  const { answer } = useAnswer('reading', { at });
  const end = view.record.rope.length_m ?? view.extent.to;
  return (
    <div className="reading">
      <p className="reading-position"><b>{metres(at)}</b> from A{view.loopLength === null && <><br /><b>{metres(end - at)}</b> from B</>}</p>
      <div className="reading-scroll scrolls" tabIndex={0} role="region" aria-label="Values at the cursor">
        <table className="reading-values">
          <thead><tr><th scope="col">Inspection</th>{[...shown].reverse().map((each) => <th scope="col" key={each.id}><i className="swatch" style={{ background: colours.get(each.id) }} />{dayOf(each.date)}</th>)}</tr></thead>
          <tbody>
            <tr><th scope="row">Loss, %</th>{[...shown].reverse().map((each) => <td key={each.id}>{valueAt(each, at, answer?.find((one) => one.inspection === each.id)?.loss, each.hasLoss, answer === null, 2)}</td>)}</tr>
            <tr><th scope="row">LF</th>{[...shown].reverse().map((each) => <td key={each.id}>{valueAt(each, at, answer?.find((one) => one.inspection === each.id)?.fault, each.hasFault, answer === null, null)}</td>)}</tr>
            <tr><th scope="row">Position ±, m</th>{[...shown].reverse().map((each) => <td key={each.id}>{boundAt(each, at, end)}</td>)}</tr>
          </tbody>
        </table>
      </div>
    </div>
  );
}

function valueAt(inspection: InspectionView, at: number, value: number | null | undefined, hasChannel: boolean, asking: boolean, exact: number | null) {
  if (asking || value === undefined) return '…';
  if (!hasChannel) return <span className="quiet">no channel</span>;
  if (value === null) return <span className="not-inspected-word">NOT INSPECTED</span>;
  const seen = inspection.covered.some((each) => at >= each.from && at < each.to);
  return seen ? (exact === null ? figure(value) : fixed(value, exact)) : <span className="not-inspected-word">NOT INSPECTED</span>;
}

function boundAt(inspection: InspectionView, at: number, length: number): string {
  const bound = profileAt(inspection.mapUncertainty, at);
  if (bound === null) return '–';
  return bound >= length / 2 ? 'not known' : fixed(bound, bound < 1 ? 3 : 1);
}
