import { useMemo } from 'react';
import type { Forecast } from '../../analysis/life/forecast.ts';
import { showLength } from '../state/show.ts';
import { change, useApp } from '../state/store.ts';
import { LifeChart } from '../strip/life-chart.tsx';
import { counted, dayOf, grouped, sentence, stretch } from '../text/format.ts';
import { plain } from '../text/words.ts';
import { keyOf } from './criteria-table.tsx';
import { useView } from './use-inspections.ts';

export const forecastKey = (forecast: Forecast): string => `${keyOf(forecast)} ${forecast.where.from}`;

/** Forecasts, the earliest low date first; refused ones after them. */
function orderedForecasts(forecasts: readonly Forecast[]): Forecast[] {
  const early = (each: Forecast) => Date.parse(each.date.low ?? each.notBefore ?? '9999-01-01');
  return [...forecasts].sort((a, b) => early(a) - early(b));
}

/** The forecast in question: the one chosen, else that of the chosen criterion, else the most pressing. */
export function useChosenForecast(): { forecasts: Forecast[]; chosen: Forecast | null } {
  const { life } = useView();
  const clause = useApp((state) => state.clause);
  const forecasts = useMemo(() => orderedForecasts(life.forecasts), [life]);
  const chosen = forecasts.find((each) => forecastKey(each) === clause) ?? forecasts.find((each) => keyOf(each) === clause) ?? forecasts[0] ?? null;
  return { forecasts, chosen };
}

/** Remaining life of the most pressing place, with a choice of the others. */
export function LifePanel() {
  const theme = useApp((state) => state.theme);
  const { forecasts, chosen } = useChosenForecast();
  if (chosen === null) return <p className="empty">No criterion has a series of measurements from which its remaining life could be judged.</p>;
  return (
    <div className="life-panel">
      <label className="field-label">Criterion and place
        <select value={forecastKey(chosen)} onChange={(event) => change({ clause: event.target.value })}>
          {forecasts.map((each) => <option key={forecastKey(each)} value={forecastKey(each)}>{plain(each.clause)}, {stretch(each.where.from, each.where.to)}</option>)}
        </select>
      </label>
      <LifeChart forecast={chosen} theme={theme} height={230} />
      <ForecastDates forecast={chosen} />
      <button type="button" onClick={() => showLength(chosen.where.from, chosen.where.to)}>Show this place on the strips</button>
    </div>
  );
}

/** The dates of a forecast, or why there are none. */
export function ForecastDates({ forecast }: { readonly forecast: Forecast }) {
  const { date, trips, notBefore } = forecast;
  const refused = date.low === null && date.median === null && date.high === null;
  const cell = (at: string | null, count: number | null) => <td>{at === null ? '–' : dayOf(at)}{count !== null && <small> at {grouped(count)} trips</small>}</td>;
  return (
    <div className={refused ? 'forecast forecast-refused' : 'forecast'}>
      {refused
        ? <p><b>{notBefore === null ? 'No date can be given.' : `Not before ${dayOf(notBefore)} (90 %).`}</b> {sentence(forecast.reason)}</p>
        : (
          <>
            {forecast.model === 'reached' ? <p className="reached-on"><b>Reached{date.low !== null && ` on ${dayOf(date.low)}`}</b>{trips.low !== null && `, at ${grouped(trips.low)} trips`}</p> : <table className="dates">
              <thead><tr><th scope="col">10 %</th><th scope="col">50 %</th><th scope="col">90 %</th></tr></thead>
              <tbody><tr>{cell(date.low, trips.low)}{cell(date.median, trips.median)}{cell(date.high, trips.high)}</tr></tbody>
            </table>}
            {forecast.model === 'reached' ? <p><b>{sentence(forecast.reason)}</b></p> : <p className="quiet">{sentence(forecast.model)} {counted(forecast.inspectionsUsed, 'inspection')}. {sentence(forecast.reason)}</p>}
          </>
        )}
      <p className="quiet">Void after any extraordinary event; near a limit shorten the interval whatever a forecast says.</p>
    </div>
  );
}
