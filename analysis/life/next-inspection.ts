import { maximumInterval } from '../criteria/maximum-interval.ts';
import type { CriterionResult, Evidence } from '../criteria/criterion.ts';
import type { RuleSet } from '../criteria/rule-set.ts';
import type { MeasuredWindow } from './candidate-places.ts';
import { dateOfYear, monthsAfter, yearOfDate } from './dates.ts';
import type { Forecast, NextInspection } from './forecast.ts';
import type { PassageForecast } from './passage/forecast-passage.ts';

/** A forecast with what lies behind it. */
export interface PressingPlace {
  readonly forecast: Forecast;
  readonly passage: PassageForecast;
  readonly window: MeasuredWindow;
}

interface IntervalOptions {
  readonly sets: readonly RuleSet[];
  readonly asOf: string;
  readonly intervalFactor: number;
}

/**
 * When to inspect next: no later than `intervalFactor` of the time from the newest inspection to the earliest low bound (the practice
 * of inspecting within half of the remaining life, [memory] API 510 and 570), and no later than any rule set asks. Never a day before the
 * newest inspection: what is due by then is due at once, and the reasons say so. Null only where no inspection or nothing sets a date.
 */
export function nextInspection(evidence: Evidence, results: readonly CriterionResult[], places: readonly PressingPlace[], options: IntervalOptions): NextInspection {
  const intervalShare = options.intervalFactor;
  if (evidence.surveys.length === 0) return { by: null, reasons: ['at once: no inspection could be used, and nothing is known of this rope'], intervalShare, advice: 'A first inspection of the whole rope.' };
  const due: { by: string; reason: string }[] = [...reachedNow(results, options), ...rulesAsk(evidence, results, options)];
  const earliest = earliestBound(places);
  if (earliest !== null && !results.some((each) => each.reached)) due.push(halfOfLife(earliest, options));
  due.sort((a, b) => (a.by < b.by ? -1 : 1));
  const reasons = due.map((each) => each.reason);
  if (earliest === null) reasons.push('no criterion has a forecast or a bound: fewer than two inspections of any place that can be judged');
  if (due.length === 0) reasons.push('no rule set gives an interval and no growth could be judged: the competent person sets the date');
  return { by: due.length > 0 ? due[0].by : null, reasons, intervalShare, advice: adviceOf(places, options) };
}

function reachedNow(results: readonly CriterionResult[], { asOf }: IntervalOptions): { by: string; reason: string }[] {
  const reached = results.filter((each) => each.reached);
  if (reached.length === 0) return [];
  return [{ by: asOf.slice(0, 10), reason: `at once: ${reached.length === 1 ? 'a criterion is' : `${reached.length} criteria are`} reached: to be examined before further use` }];
}

function rulesAsk(evidence: Evidence, results: readonly CriterionResult[], options: IntervalOptions): { by: string; reason: string }[] {
  const losses = results.filter((each) => each.measure === 'area-reduction').map((each) => each.value);
  const worst = losses.length > 0 ? Math.max(...losses) : null;
  return options.sets.flatMap((set) => {
    const asked = maximumInterval(set, evidence, worst);
    if (asked === null) return [];
    const by = monthsAfter(options.asOf, asked.months);
    return [{ by, reason: `${set.title}: within ${asked.months} months, by ${by} (${asked.provenance}): ${asked.sentence}` }];
  });
}

/** The place whose limit could be reached first, by its 10 % point or by the bound where no growth was found. */
function earliestBound(places: readonly PressingPlace[]): { place: PressingPlace; at: string } | null {
  let found: { place: PressingPlace; at: string } | null = null;
  for (const place of places) {
    const at = place.forecast.date.low ?? place.forecast.notBefore;
    if (at !== null && (found === null || at < found.at)) found = { place, at };
  }
  return found;
}

function halfOfLife({ place, at }: { place: PressingPlace; at: string }, { asOf, intervalFactor }: IntervalOptions): { by: string; reason: string } {
  const last = yearOfDate(asOf);
  const left = Math.max(0, yearOfDate(at) - last);
  const by = dateOfYear(last + intervalFactor * left);
  const { clause, where } = place.forecast;
  if (left === 0) return { by, reason: `at once: the earliest low bound (${at}, ${clause}, ${where.from.toFixed(1)} to ${where.to.toFixed(1)} m) is not after the newest inspection` };
  return { by, reason: `within ${intervalFactor} of the ${left.toFixed(1)} years to the earliest low bound (${at}, ${clause}, ${where.from.toFixed(1)} to ${where.to.toFixed(1)} m): by ${by}` };
}

/** Share of the time to the middle of the forecast at which a further inspection is tried. */
const TRIED = [0.15, 0.3, 0.5, 0.7];

/** An interval longer than this is no time that anyone plans with: years. */
const LONGEST_SAID = 100;
/** An interval that keeps more than this share of its width is not narrowed. */
const MOST_KEPT = 0.9;

function lengthOfTime(years: number): string {
  return years < 1 ? `${Math.max(1, Math.round(years * 365.25))} days` : `${years.toFixed(1)} years`;
}

/** Which further inspection would narrow the most pressing interval most, judged from the forecast's own futures. */
function adviceOf(places: readonly PressingPlace[], { asOf }: IntervalOptions): string {
  const open = places.filter((each) => each.passage.expectedWidth !== null && each.passage.low !== null && each.passage.model !== 'reached');
  if (open.length === 0) return 'A second inspection of the same lengths with the same head and setting is what allows growth to be judged.';
  const first = open.reduce((a, b) => (b.passage.low! < a.passage.low! ? b : a));
  const { low, median, high, expectedWidth } = first.passage;
  const last = yearOfDate(asOf);
  const now = expectedWidth!(last, Infinity);
  const { series, where } = first.window;
  const noise = series[series.length - 1].uncertainty;
  const middle = median ?? high ?? low!;
  const options = TRIED.map((share) => ({ t: last + share * (middle - last), width: 0 })).map((each) => ({ ...each, width: expectedWidth!(each.t, noise) }));
  const repeat = expectedWidth!(last, noise);
  const best = options.reduce((a, b) => (b.width < a.width ? b : a));
  const soonest = options.find((each) => each.width < 0.75 * now) ?? best;
  const stretch = `${where.from.toFixed(1)} to ${where.to.toFixed(1)} m`;
  if (now > LONGEST_SAID) return `The interval of ${stretch} reaches beyond ${LONGEST_SAID} years: too little has grown to say more. A further inspection of it about ${dateOfYear(soonest.t)} tells most.`;
  if (Math.min(soonest.width, repeat) > MOST_KEPT * now) return `No single further inspection narrows the interval of ${stretch} (${lengthOfTime(now)}) by much: how growth itself scatters sets it.`;
  const gain = (width: number) => `from ${lengthOfTime(now)} to about ${lengthOfTime(width)}`;
  if (repeat < 0.8 * now) return `Repeat runs over ${stretch} now would be expected to narrow the interval ${gain(repeat)}; an inspection about ${dateOfYear(soonest.t)} ${gain(soonest.width)}.`;
  return `A further inspection of ${stretch} about ${dateOfYear(soonest.t)} would be expected to narrow the interval ${gain(soonest.width)}; repeat runs now only ${gain(repeat)}.`;
}
