import { useState } from 'react';
import type { Forecast } from '../../analysis/life/forecast.ts';
import { chanceAt } from '../strip/chance-at.ts';
import { dayOf } from '../text/format.ts';

/** Probability that the limit is reached before a date that the user picks. */
export function ChanceBefore({ forecast }: { readonly forecast: Forecast }) {
  const last = forecast.series.at(-1)?.date ?? '';
  const [date, setDate] = useState('');
  const asked = date === '' ? yearAfter(last) : date;
  return (
    <div className="chance">
      <label>Chance that the limit is reached before<input type="date" value={asked} min={last.slice(0, 10)} onChange={(event) => setDate(event.target.value)} /></label>
      <output aria-live="polite">{inWords(forecast, asked, last)}</output>
    </div>
  );
}

function yearAfter(date: string): string {
  const at = new Date(date);
  if (!Number.isFinite(at.getTime())) return '';
  at.setUTCFullYear(at.getUTCFullYear() + 1);
  return at.toISOString().slice(0, 10);
}

function inWords(forecast: Forecast, date: string, last: string): string {
  if (forecast.model === 'reached') return 'it is reached already';
  if (Date.parse(date) < Date.parse(last)) return `the forecast begins at the newest inspection, ${dayOf(last)}`;
  const chance = chanceAt(forecast, date);
  if (chance === null) return forecast.chance.length === 0 ? 'cannot be said: no forecast' : 'cannot be said: the date lies too far ahead';
  if (chance < 0.01) return 'less than 1 %';
  return chance > 0.99 ? 'more than 99 %' : `${Math.round(100 * chance)} %${forecast.date.low === null ? ', from the bound alone' : ', if the growth goes on'}`;
}
