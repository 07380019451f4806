import { change, useApp } from '../state/store.ts';
import { dayOf, grouped } from '../text/format.ts';
import { useInspections, useView } from './use-inspections.ts';

/** One switch for each inspection, in its colour: on is drawn, off is not. */
export function InspectionLegend() {
  const { inspections, assessment } = useView();
  const hidden = useApp((state) => state.hidden);
  const { colours } = useInspections();
  const turn = (id: string) => change({ hidden: hidden.includes(id) ? hidden.filter((each) => each !== id) : [...hidden, id] });
  const unused = assessment.inspections.filter((each) => !each.used);
  return (
    <div className="legend" role="group" aria-label="Inspections drawn">
      {inspections.map((each) => (
        <button key={each.id} type="button" className="legend-switch" aria-pressed={!hidden.includes(each.id)} onClick={() => turn(each.id)} title={`Inspection ${each.id}${each.trips === null ? '' : `, after ${grouped(each.trips)} trips`}`}>
          <i className="swatch" style={{ background: colours.get(each.id) }} />{dayOf(each.date)}
        </button>
      ))}
      {unused.map((each) => <span key={each.id} className="legend-unused" title="No usable run: see Intake">{dayOf(each.date)} not used</span>)}
    </div>
  );
}
