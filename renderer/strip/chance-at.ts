import type { Forecast } from '../../analysis/life/forecast.ts';

/** Probability (0..1) that the limit is reached before a date, read between the dates of the forecast's table; null where none can be given. */
export function chanceAt({ chance }: Pick<Forecast, 'chance'>, date: string): number | null {
  const at = Date.parse(date);
  if (chance.length === 0 || !Number.isFinite(at)) return null;
  const after = chance.findIndex((point) => Date.parse(point.date) >= at);
  if (after < 0) return null;
  if (after === 0) return chance[0].share;
  const [left, right] = [chance[after - 1], chance[after]];
  const [t0, t1] = [Date.parse(left.date), Date.parse(right.date)];
  return left.share + ((right.share - left.share) * (at - t0)) / Math.max(1, t1 - t0);
}
