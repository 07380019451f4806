import type { Assessment } from '../../../analysis/assessment/schema.ts';
import { zoneShape } from './damage.ts';
import type { TrueZone } from './damage.ts';
import type { Tally } from './figures.ts';
import type { RopeWorld } from './rope-world.ts';
import type { Trial } from './run-world.ts';

const DAY = 86_400_000;
const YEAR = 365.25 * DAY;

/** Forecast dates of growing zones against the day on which their true law reaches the limit. */
export function scoreLife({ world, assessment }: Trial, tally: Tally, name: string): void {
  const first = Date.parse(world.visits[0].date) - world.visits[0].years * YEAR;
  const newest = world.visits[world.visits.length - 1].years;
  const count = world.visits.length;
  for (const zone of world.zones) {
    const entries = assessment.life.filter((each) => each.from_m < zone.to && each.to_m > zone.from && each.unit === '%');
    // One forecast a place: the lowest limit that is still ahead. Further limits of the same place would count the same luck again.
    const ahead = entries.map((entry) => ({ entry, years: reaches(world, zone, entry) })).filter(({ years }) => years !== null && years > newest + 0.05 && zone.law.depth(newest) >= 0.8);
    const nearest = ahead.sort((a, b) => a.years! - b.years!)[0];
    if (nearest) scoreEntry(nearest.entry, first + nearest.years! * YEAR, first + newest * YEAR, count, world.seed, tally, name);
  }
}

/** Years at which the mean loss over the entry's own window reaches its limit, the rope's own unevenness there included. */
function reaches(world: RopeWorld, zone: TrueZone, entry: Assessment['life'][number]): number | null {
  let shape = 0;
  let character = 0;
  let count = 0;
  for (let x = entry.from_m; x <= entry.to_m + 1e-9; x += 0.02) {
    shape += zoneShape(zone, x);
    character += world.lossCharacter.at(x);
    count += 1;
  }
  return shape < 0.3 * count ? null : zone.law.reaches((entry.limit - (world.lossCharacterSize * character) / count) / (shape / count));
}

function scoreEntry(entry: Assessment['life'][number], truth: number, now: number, count: number, seed: number, tally: Tally, name: string): void {
  const bucket = count >= 8 ? '8' : count >= 6 ? '6-7' : count >= 4 ? '4-5' : String(count);
  if (entry.date_low === null || entry.date_median === null) {
    tally.hit(`${name} stated`, false);
    tally.blame(`${name} not stated`, seed, entry.reason);
    return;
  }
  tally.hit(`${name} stated`, true);
  const inside = Date.parse(entry.date_low) <= truth + DAY && (entry.date_high === null || Date.parse(entry.date_high) >= truth - DAY);
  tally.hit(`${name} coverage`, inside);
  tally.hit(`${name} coverage ${bucket}`, inside);
  const ahead = truth - now;
  tally.add(`${name} error`, Math.abs(Date.parse(entry.date_median) - truth) / ahead);
  const straight = straightLine(entry.series, entry.limit);
  if (straight !== null) {
    tally.add(`${name} straight line error`, Math.abs(straight - truth) / ahead);
    tally.add(`${name} error beside a straight line`, Math.abs(Date.parse(entry.date_median) - truth) / ahead);
  }
  tally.add(`${name} width`, (Date.parse(entry.date_high ?? entry.date_median) - Date.parse(entry.date_low)) / ahead);
  if (!inside) tally.blame(`${name} outside ${Date.parse(entry.date_low) > truth ? 'too late' : 'too early'}`, seed, `${entry.rule_set} ${entry.clause} true ${new Date(truth).toISOString().slice(0, 10)} said ${entry.date_low}..${entry.date_high} model ${entry.model} series ${entry.series.map((point) => `${point.value.toFixed(2)}±${point.uncertainty.toFixed(2)}`).join(' ')} limit ${entry.limit}`);
}

/** Day on which an ordinary least-squares line through one place's own points reaches the limit; null where it falls. */
export function straightLine(series: readonly { readonly date: string; readonly value: number }[], limit: number): number | null {
  if (series.length < 2) return null;
  const times = series.map((point) => Date.parse(point.date));
  const meanTime = times.reduce((a, b) => a + b, 0) / times.length;
  const meanValue = series.reduce((sum, point) => sum + point.value, 0) / series.length;
  let upper = 0;
  let lower = 0;
  series.forEach((point, i) => {
    upper += (times[i] - meanTime) * (point.value - meanValue);
    lower += (times[i] - meanTime) ** 2;
  });
  if (!(upper > 0)) return null;
  return meanTime + ((limit - meanValue) * lower) / upper;
}
