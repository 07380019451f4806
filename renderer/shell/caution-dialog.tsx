import { change } from '../state/store.ts';
import { dayOf, sentence, stretch } from '../text/format.ts';
import { Sheet } from '../ui/dialog.tsx';
import { useView } from '../jobs/use-inspections.ts';

/** Everything that the judgement rests on and does not cover, in full. */
export function CautionDialog() {
  const { assessment, life } = useView();
  return (
    <Sheet title="Summary and cautions" onClose={() => change({ dialog: null })} wide>
      <h3>Reasons</h3>
      <ul className="plain-list">{assessment.summary.reasons.map((each) => <li key={each}>{sentence(each)}</li>)}</ul>
      <h3>Next inspection</h3>
      <ul className="plain-list">{life.nextInspection.reasons.map((each) => <li key={each}>{sentence(each)}</li>)}</ul>
      <h3>NOT INSPECTED</h3>
      {assessment.not_inspected.length === 0 ? <p>Every recorded length was seen at least once.</p>
        : <ul className="plain-list">{assessment.not_inspected.map((each) => <li key={each.from_m}>{stretch(each.from_m, each.to_m)}{each.last_seen === null ? ', never seen' : `, last seen ${dayOf(each.last_seen)}`}</li>)}</ul>}
      <h3>Cautions</h3>
      <ol className="plain-list">{assessment.cautions.map((each) => <li key={each}>{each}</li>)}</ol>
    </Sheet>
  );
}
