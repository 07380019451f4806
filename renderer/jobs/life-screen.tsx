import type { Forecast } from '../../analysis/life/forecast.ts';
import { showLength } from '../state/show.ts';
import { change, useApp } from '../state/store.ts';
import { LifeChart } from '../strip/life-chart.tsx';
import { dayOf, figure, sentence, stretch } from '../text/format.ts';
import { plain } from '../text/words.ts';
import { Panel } from '../ui/panel.tsx';
import { ChanceBefore } from './chance-before.tsx';
import { ForecastDates, forecastKey, useChosenForecast } from './life-panel.tsx';
import { IntervalShare } from './interval-share.tsx';
import { useView } from './use-inspections.ts';

const KEY = 'Points are measurements with two sigma; dashed the trend with its 10–90 % band; dotted the dates at which the limit is reached with 10, 50 and 90 % probability.';

/** When each criterion would be reached, as far as the measurements can say, and when to look again. */
export function LifeScreen() {
  const { forecasts, chosen } = useChosenForecast();
  const view = useView();
  const theme = useApp((state) => state.theme);
  return (
    <div className="life-screen">
      <section className="life-list scrolls" aria-label="Forecasts" tabIndex={0}>
        <NextInspection />
        {forecasts.length === 0 ? <p className="empty">No criterion has a series of measurements to go by.</p> : (
          <table className="criteria">
            <caption className="hidden-words">Forecasts, the earliest first</caption>
            <thead><tr><th scope="col">Criterion and place</th><th scope="col" className="number">10 %</th><th scope="col" className="number">50 %</th><th scope="col" className="number">90 %</th></tr></thead>
            <tbody>{forecasts.map((each) => <ForecastRow key={forecastKey(each)} forecast={each} chosen={each === chosen} />)}</tbody>
          </table>
        )}
      </section>
      <section className="life-detail" aria-label="Chosen forecast">
        {chosen === null ? <p className="empty">Nothing to draw.</p> : (
          <Panel name="The life chart">
            <h2>{plain(chosen.clause)} <small>{stretch(chosen.where.from, chosen.where.to)}</small></h2>
            <p className="quiet">{view.criteria.ruleSets.find((each) => each.id === chosen.ruleSet)?.title ?? chosen.ruleSet}</p>
            <LifeChart forecast={chosen} theme={theme} height={360} />
            <p className="quiet chart-key">{chosen.band.length === 0 ? 'Points are measurements with two sigma.' : KEY}</p>
            <ForecastDates forecast={chosen} />
            <ChanceBefore forecast={chosen} />
            <SeriesTable forecast={chosen} />
          </Panel>
        )}
      </section>
    </div>
  );
}

function NextInspection() {
  const { life } = useView();
  const { by, reasons, advice, intervalShare } = life.nextInspection;
  const now = useView().assessment.summary.state === 'discard-criterion-reached';
  return (
    <section className="next-inspection" aria-label="Next inspection">
      <p className="next-by">Next inspection <b>{now ? 'before further use' : by === null ? 'cannot be dated' : `by ${dayOf(by)}`}</b></p>
      <ul className="plain-list">{reasons.map((each) => <li key={each}>{sentence(each)}</li>)}</ul>
      {advice !== '' && <p className="quiet">{advice}</p>}
      <IntervalShare key={intervalShare} share={intervalShare} />
    </section>
  );
}

function ForecastRow({ forecast, chosen }: { readonly forecast: Forecast; readonly chosen: boolean }) {
  const { date, notBefore } = forecast;
  const choose = () => { change({ clause: forecastKey(forecast) }); showLength(forecast.where.from, forecast.where.to); };
  const refused = date.low === null && date.median === null && date.high === null;
  return (
    <tr className={chosen ? 'criterion chosen' : 'criterion'} onClick={choose}>
      <th scope="row"><button type="button" className="row-button" aria-current={chosen} onClick={(event) => { event.stopPropagation(); choose(); }}>{plain(forecast.clause)}</button><small>{stretch(forecast.where.from, forecast.where.to)}</small></th>
      {refused
        ? <td colSpan={3}><b>{notBefore === null ? 'no date' : `not before ${dayOf(notBefore)}`}</b> <small>{forecast.reason}</small></td>
        : forecast.model === 'reached' ? <td colSpan={3} className="number"><b className="reached-on">reached {date.low !== null && dayOf(date.low)}</b></td>
        : [date.low, date.median, date.high].map((each, index) => <td key={index} className="number">{each === null ? '–' : dayOf(each)}</td>)}
    </tr>
  );
}

function SeriesTable({ forecast }: { readonly forecast: Forecast }) {
  if (forecast.series.length === 0) return null;
  return (
    <div className="scrolls" tabIndex={0} role="region" aria-label="Measurements behind the forecast">
      <table className="series">
        <thead><tr><th scope="row">Inspection</th>{forecast.series.map((point) => <th scope="col" key={point.inspection}>{dayOf(point.date)}</th>)}</tr></thead>
        <tbody><tr><th scope="row">{forecast.unit}</th>{forecast.series.map((point) => <td key={point.inspection}>{figure(point.value)} <small>± {figure(2 * point.uncertainty)}</small></td>)}</tr></tbody>
      </table>
    </div>
  );
}
